import { autocorrelationTime } from '../metrology/autocorrelation.ts';
import { meanOf } from '../metrology/mean.ts';
import { rCritical, rTest } from '../metrology/r-test.ts';
import { trend } from '../metrology/series.ts';
import { type Approach, approachOf } from './approach.ts';
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
 * Settled means: less than what is allowed is still to come in the middle of the averaged seconds. Three things have to show it.
 *
 * 1. The approach to an end value, by the whole window and by its second half alone; the worse of the two counts. A heat path has a fast
 *    part that hides a slow one; the second half shows it.
 * 2. The drift that this approach leaves in the second half. One that shows counts with what it moved in that half; what it may move in the
 *    averaged seconds, its 95 % included, has to be allowed as well. A drift known so badly that more may hide in it shows nothing.
 * 3. No jump at the end, by the R-test.
 *
 * Neighbouring readings are alike: each counts with as many as are independent. Readings are to be numbers.
 */
export function settlingOf(time: Float64Array, values: Float64Array, rule: SettlingRule): Settling {
  const { averaged, allowed, resolution, say } = rule;
  const length = lengthOf(time);
  if (length < shortest) {
    const why = `the window is shorter than ${shortest} s`;
    return { settled: false, remaining: null, timeConstant: null, drift: null, uDrift: null, why };
  }
  const half = lowerBound(time, time[0] + length / 2);
  const late = [time.subarray(half), values.subarray(half)] as const;
  const approach = [approachOf(time, values, averaged)];
  const end = lowerBound(time, time[0] + 0.75 * length);
  if (lengthOf(late[0]) >= shortest && !isLoneStep(time.subarray(end), values.subarray(end), resolution))
    approach.push(approachOf(...late, averaged));
  const slope = trend(late[1], late[0], resolution);
  const { unexplained, reach } = leastUnexplained(approach, ...late, resolution);
  if (Math.abs(unexplained) > reach)
    approach.push({ ...approach[0], remaining: (unexplained * length) / 2, timeConstant: null, movedOver: length / 2 });
  const worst = farthest(approach);
  const arrived = Math.abs(worst.remaining) <= allowed;
  const canTell = (Math.abs(unexplained) + reach) * averaged <= allowed;
  const jump = jumpOf(time, values, approach[0], averaged);
  const jumped = Math.abs(jump) > allowed;
  const found = jumped && arrived ? `changed by ${say(jump)} at the end` : sayApproach(worst, arrived, rule);
  const known = slope ? `; drift ${say(60 * slope.slope, slope.uSlope && 60 * slope.uSlope)} a minute` : '';
  return {
    settled: arrived && canTell && !jumped,
    remaining: worst.remaining,
    timeConstant: worst.timeConstant,
    drift: slope?.slope ?? null,
    uDrift: slope?.uSlope ?? null,
    why: (arrived && !jumped && !canTell ? 'too short or too noisy to tell' : found) + known,
  };
}

/** The slope that an approach leaves in a stretch, and how far it may be from that: of the approach that leaves the least. */
function leastUnexplained(
  approaches: readonly Approach[],
  time: Float64Array,
  values: Float64Array,
  resolution: number | null,
): { unexplained: number; reach: number } {
  const left = approaches.map(({ at }) => {
    const rest = trend(
      values.map((value, i) => value - at(time[i])),
      time,
      resolution,
    );
    return { unexplained: rest?.slope ?? 0, reach: rest?.reach ?? 0 };
  });
  return left.reduce((a, b) => (Math.abs(b.unexplained) < Math.abs(a.unexplained) ? b : a));
}

function farthest(approaches: readonly Approach[]): Approach {
  return approaches.reduce((a, b) => (Math.abs(b.remaining) > Math.abs(a.remaining) ? b : a));
}

/**
 * How far the R-test's filtered end is from the mean of the second half, in what the approach leaves [unit of the channel]; 0 where the
 * test finds no change, or can't tell. In means over twice the time that neighbours are alike before the averaged seconds, because it asks
 * for independent readings.
 */
function jumpOf(time: Float64Array, values: Float64Array, { at }: Approach, averaged: number): number {
  const rests = values.map((value, i) => value - at(time[i]));
  const before = rests.subarray(0, lowerBound(time, time[time.length - 1] - averaged));
  const alike = (autocorrelationTime(before) * lengthOf(time)) / Math.max(1, values.length - 1);
  const { mean } = blockMeans(time, rests, Math.max(0.5, 2 * alike));
  const test = rTest(mean);
  if (test === null || test.ratio < rCritical.rare) return 0;
  return test.filtered - meanOf(mean.subarray(-Math.floor(mean.length / 2)));
}

function sayApproach(
  { remaining, timeConstant, movedOver }: Approach,
  settled: boolean,
  { allowed, say }: SettlingRule,
): string {
  if (timeConstant === null && movedOver === null) return 'flat within its noise';
  const least = allowed / 100;
  const size = Math.abs(remaining) < least ? `less than ${say(least)}` : say(Math.abs(remaining));
  if (movedOver !== null)
    return `${settled ? 'moved by' : 'still moving:'} ${size} in the last ${movedOver.toFixed(0)} s`;
  return `${settled ? 'within' : 'still'} ${size} ${settled ? 'of' : 'from'} its end value, time constant ${timeConstant!.toFixed(1)} s`;
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
