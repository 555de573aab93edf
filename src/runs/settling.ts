import { blockMeans } from './blocks.ts';

/** Whether a channel has reached its end value in a window, and how far it still had to go. */
export interface Settling {
  readonly settled: boolean;
  /** Change still to come at the middle of the averaged stretch [unit of the channel]; null where the window is too short to tell. */
  readonly remaining: number | null;
  /** Time constant of the approach [s]; null where none shows. */
  readonly timeConstant: number | null;
  /** The same in words. */
  readonly why: string;
}

/** A window shorter than this says nothing about settling [s]. */
const shortest = 15;

/**
 * Fits y = end + a·exp(−t/τ) to block means of a window (linear in end and a for each τ of a grid) and asks how much of it is still to come
 * in the middle of the last `averaged` seconds; for an approach slower than half the window, how much it moved in the second half.
 * Settled: less than `allowed`.
 */
export function settlingOf(
  time: Float64Array,
  values: Float64Array,
  averaged: number,
  allowed: number,
  say: (amount: number) => string,
): Settling {
  const length = time[time.length - 1] - time[0];
  if (length < shortest)
    return { settled: false, remaining: null, timeConstant: null, why: `the window is shorter than ${shortest} s` };
  const { time: middle, mean } = blockMeans(time, values, Math.max(0.5, length / 60));
  const at = length - Math.min(averaged, length) / 2;
  let best = { squares: flatSquares(mean), amplitude: 0, constant: Number.POSITIVE_INFINITY };
  const flat = best.squares;
  for (let constant = 0.5; constant <= 4 * length; constant *= 1.12) {
    const found = fitApproach(middle, mean, time[0], constant);
    if (found.squares < best.squares) best = { ...found, constant };
  }
  // An approach that explains little is noise: the window is flat as far as it can tell.
  const blocks = mean.length;
  if (!(flat - best.squares > (8 * best.squares) / Math.max(1, blocks - 3)))
    return { settled: true, remaining: 0, timeConstant: null, why: 'no drift shows against the noise' };
  const slow = best.constant >= length / 2;
  // The end of a slow approach can't be told; what can be told is how much it moved over the second half of the window.
  const remaining = slow
    ? best.amplitude * (Math.exp(-length / 2 / best.constant) - Math.exp(-length / best.constant))
    : best.amplitude * Math.exp(-at / best.constant);
  const settled = Math.abs(remaining) < allowed;
  const size = say(Math.abs(remaining));
  const why = slow
    ? `${settled ? 'moved by only' : 'still drifting:'} ${size} in the second half of the window`
    : `${settled ? 'within' : 'still'} ${size} ${settled ? 'of' : 'from'} its end value (time constant ${best.constant.toFixed(1)} s)`;
  return { settled, remaining, timeConstant: best.constant, why };
}

function flatSquares(values: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Least squares for end value and amplitude at one time constant. */
function fitApproach(time: Float64Array, values: Float64Array, start: number, constant: number) {
  const n = values.length;
  let shapes = 0;
  let shapeSquares = 0;
  let sum = 0;
  let products = 0;
  for (let i = 0; i < n; i++) {
    const shape = Math.exp(-(time[i] - start) / constant);
    shapes += shape;
    shapeSquares += shape * shape;
    sum += values[i];
    products += shape * values[i];
  }
  const spread = shapeSquares - (shapes * shapes) / n;
  if (!(spread > 1e-12)) return { squares: Number.POSITIVE_INFINITY, amplitude: 0 };
  const amplitude = (products - (shapes * sum) / n) / spread;
  const end = (sum - amplitude * shapes) / n;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (values[i] - end - amplitude * Math.exp(-(time[i] - start) / constant)) ** 2;
  return { squares, amplitude };
}
