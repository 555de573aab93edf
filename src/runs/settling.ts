import { meanOf } from '../metrology/mean.ts';
import { trend } from '../metrology/series.ts';
import { blockMeans } from './blocks.ts';
import { lowerBound, rangeOf } from './levels.ts';

/** Whether a channel has reached its end value in a window, and how far it still had to go. */
export interface Settling {
  readonly settled: boolean;
  /** Change still to come at the middle of the averaged stretch [unit of the channel]; null where the window is too short to tell. */
  readonly remaining: number | null;
  /** Time constant of the approach [s]; null where none shows. */
  readonly timeConstant: number | null;
  /** Slope over the second half of the window, with its standard uncertainty [unit of the channel per second]; null where none can be told. */
  readonly drift: number | null;
  readonly uDrift: number | null;
  /** The same in words. */
  readonly why: string;
}

/** A window shorter than this says nothing about settling [s]. */
const shortest = 15;

/** How settling is judged. */
export interface SettlingRule {
  /** Seconds at the end that the mean is taken over. */
  readonly averaged: number;
  /** Change still to come that counts as none [unit of the channel]. */
  readonly allowed: number;
  /** Step of the readings [unit of the channel]; null where none is known. */
  readonly resolution: number | null;
  /** An amount of the channel in words; its uncertainty where it is given. */
  readonly say: (amount: number, u?: number | null) => string;
}

/**
 * Settled means: less than what is allowed is still to come in the middle of the averaged seconds, judged by the whole window and by its second
 * half alone; the worse of the two counts. A heat path has a fast part that hides a slow one; the second half shows it. Where the drift is known so
 * badly that more than what is allowed may hide in the averaged seconds, nothing has been shown and the channel hasn't settled.
 * Readings are to be numbers.
 */
export function settlingOf(time: Float64Array, values: Float64Array, rule: SettlingRule): Settling {
  const length = lengthOf(time);
  if (length < shortest) {
    const why = `the window is shorter than ${shortest} s`;
    return { settled: false, remaining: null, timeConstant: null, drift: null, uDrift: null, why };
  }
  const half = lowerBound(time, time[0] + length / 2);
  const late = [time.subarray(half), values.subarray(half)] as const;
  const slope = trend(late[1], late[0], rule.resolution);
  const drift =
    slope === null ? '' : `; drift ${rule.say(60 * slope.slope, slope.uSlope && 60 * slope.uSlope)} a minute`;
  const approach = [approachOf(time, values, rule.averaged)];
  const end = lowerBound(time, time[0] + 0.75 * length);
  if (lengthOf(late[0]) >= shortest && !isLoneStep(time.subarray(end), values.subarray(end), rule.resolution))
    approach.push(approachOf(...late, rule.averaged));
  const worst = approach.reduce((a, b) => (Math.abs(b.remaining) > Math.abs(a.remaining) ? b : a));
  const arrived = Math.abs(worst.remaining) <= rule.allowed;
  const canTell = (slope?.uSlope ?? 0) * rule.averaged <= rule.allowed;
  return {
    settled: arrived && canTell,
    remaining: worst.remaining,
    timeConstant: worst.timeConstant,
    drift: slope?.slope ?? null,
    uDrift: slope?.uSlope ?? null,
    why: (arrived && !canTell ? 'too short or too noisy to tell' : sayApproach(worst, arrived, rule)) + drift,
  };
}

interface Approach {
  /** [unit of the channel] */
  readonly remaining: number;
  /** [s]; null where nothing but noise shows. */
  readonly timeConstant: number | null;
  /** Seconds over which the channel moved by `remaining`, where its end value can't be told; null where it can. */
  readonly movedOver: number | null;
}

/**
 * Fits y = end + a·exp(−t/τ) to block means (linear in end and a for each τ of a grid). What is still to come in the middle of the last
 * `averaged` seconds; for an approach slower than half the stretch, whose end can't be told, how much it moved in the second half:
 * twice the difference between the means of its last two quarters.
 */
function approachOf(time: Float64Array, values: Float64Array, averaged: number): Approach {
  const length = lengthOf(time);
  const { time: middle, mean } = blockMeans(time, values, Math.max(0.5, length / 60));
  const flat = flatSquares(mean);
  let best = { squares: flat, amplitude: 0, constant: Number.POSITIVE_INFINITY };
  const look = (from: number, to: number, factor: number) => {
    for (let constant = from; constant <= to; constant *= factor) {
      const found = fitApproach(middle, mean, time[0], constant);
      if (found.squares < best.squares) best = { ...found, constant };
    }
  };
  look(0.5, 4 * length, 1.12);
  if (best.amplitude !== 0) look(best.constant / 1.12, best.constant * 1.12, 1.005);
  const { squares, amplitude, constant } = best;
  // An approach that explains little is noise: two numbers more have to earn a ratio of variances of 4 each (about 98 %).
  if (!(flat - squares > (8 * squares) / Math.max(1, mean.length - 3)))
    return { remaining: 0, timeConstant: null, movedOver: null };
  if (constant < length / 2) {
    const remaining = -amplitude * Math.exp(-(length - Math.min(averaged, length) / 2) / constant);
    return { remaining, timeConstant: constant, movedOver: null };
  }
  const quarter = Math.max(1, Math.floor(mean.length / 4));
  const [third, fourth] = [mean.subarray(-2 * quarter, -quarter), mean.subarray(-quarter)];
  return { remaining: 2 * (meanOf(fourth) - meanOf(third)), timeConstant: constant, movedOver: length / 2 };
}

function sayApproach(
  { remaining, timeConstant, movedOver }: Approach,
  settled: boolean,
  { allowed, say }: SettlingRule,
): string {
  if (timeConstant === null) return 'flat within its noise';
  const least = allowed / 100;
  const size = Math.abs(remaining) < least ? `less than ${say(least)}` : say(Math.abs(remaining));
  if (movedOver !== null)
    return `${settled ? 'moved by' : 'still moving:'} ${size} in the last ${movedOver.toFixed(0)} s`;
  return `${settled ? 'within' : 'still'} ${size} ${settled ? 'of' : 'from'} its end value, time constant ${timeConstant.toFixed(1)} s`;
}

/**
 * Readings on a grid that change by one step of it, with or without a flicker on the way, say only that: the true change may be anything up to
 * two steps. Noise that flickers all the time is another matter: its mean moves smoothly.
 */
function isLoneStep(time: Float64Array, values: Float64Array, resolution: number | null): boolean {
  if (resolution === null || rangeOf(values) > 1.5 * resolution) return false;
  const flickering = new Set<number>();
  for (let i = 1; i < values.length; i++)
    if (values[i] !== values[i - 1]) flickering.add(Math.floor(time[i] - time[0]));
  return flickering.size < lengthOf(time) / 2;
}

function lengthOf(time: Float64Array): number {
  return time.length === 0 ? 0 : time[time.length - 1] - time[0];
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
  if (!(spread > 1e-12)) return { squares: Number.POSITIVE_INFINITY, amplitude: 0 };
  const amplitude = (products - (shapes * sum) / n) / spread;
  const end = (sum - amplitude * shapes) / n;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (values[i] - end - amplitude * Math.exp(-(time[i] - start) / constant)) ** 2;
  return { squares, amplitude };
}
