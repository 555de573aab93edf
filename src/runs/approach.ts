import { autocorrelationTime } from '../metrology/autocorrelation.ts';
import { meanOf } from '../metrology/mean.ts';
import { blockMeans } from './blocks.ts';

/** How far a channel is from where it goes. */
export interface Approach {
  /** [unit of the channel] */
  readonly remaining: number;
  /** [s]; null where nothing but noise shows. */
  readonly timeConstant: number | null;
  /** Seconds over which the channel moved by `remaining`, where its end value can't be told; null where it can. */
  readonly movedOver: number | null;
  /** The approach itself [unit of the channel] at a time [s]. */
  readonly at: (time: number) => number;
}

/**
 * Fits y = end + a·exp(−t/τ) to block means (linear in end and a for each τ of a grid). What is still to come in the middle of the last
 * `averaged` seconds; for an approach slower than half the stretch, whose end can't be told, how much it moved in the second half:
 * twice the difference between the means of its last two quarters.
 */
export function approachOf(time: Float64Array, values: Float64Array, averaged: number): Approach {
  const length = time[time.length - 1] - time[0];
  const { time: middle, mean } = blockMeans(time, values, Math.max(0.5, length / 60));
  const flat = flatSquares(mean);
  let best = { squares: flat, amplitude: 0, end: 0, constant: Number.POSITIVE_INFINITY };
  const look = (from: number, to: number, factor: number) => {
    for (let constant = from; constant <= to; constant *= factor) {
      const found = fitApproach(middle, mean, time[0], constant);
      if (found.squares < best.squares) best = { ...found, constant };
    }
  };
  look(0.5, 4 * length, 1.12);
  if (best.amplitude !== 0) look(best.constant / 1.12, best.constant * 1.12, 1.005);
  const { squares, amplitude, end, constant } = best;
  const start = time[0];
  const at = (moment: number) => end + amplitude * Math.exp(-(moment - start) / constant);
  const rests = mean.map((value, b) => value - at(middle[b]));
  const independent = mean.length / autocorrelationTime(rests);
  const level = meanOf(mean);
  // An approach that explains little is noise: two numbers more have to earn a ratio of variances of 4 each (about 98 %), among as many
  // blocks as are independent of their neighbours.
  if (!(flat - squares > (8 * squares) / Math.max(1, independent - 3)))
    return { remaining: 0, timeConstant: null, movedOver: null, at: () => level };
  if (constant < length / 2) {
    const remaining = -amplitude * Math.exp(-(length - Math.min(averaged, length) / 2) / constant);
    return { remaining, timeConstant: constant, movedOver: null, at };
  }
  const quarter = Math.max(1, Math.floor(mean.length / 4));
  const [third, fourth] = [mean.subarray(-2 * quarter, -quarter), mean.subarray(-quarter)];
  return { remaining: 2 * (meanOf(fourth) - meanOf(third)), timeConstant: constant, movedOver: length / 2, at };
}

function flatSquares(values: Float64Array): number {
  const mean = meanOf(values);
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
  if (!(spread > 1e-12)) return { squares: Number.POSITIVE_INFINITY, amplitude: 0, end: 0 };
  const amplitude = (products - (shapes * sum) / n) / spread;
  const end = (sum - amplitude * shapes) / n;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (values[i] - end - amplitude * Math.exp(-(time[i] - start) / constant)) ** 2;
  return { squares, amplitude, end };
}
