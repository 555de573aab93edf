import { type Blocks, blockMeans } from './blocks.ts';
import { changePoints } from './change-points.ts';

/** A stretch of a recording over which one channel keeps its level. */
export interface Level {
  /** Mean over the stretch [unit of the channel]. */
  readonly mean: number;
  /** [s], as the times given. */
  readonly from: number;
  readonly to: number;
}

/** A channel is looked at in means over this time at least [s]: less than the transition that is to be seen, more than one reading. */
const blockSeconds = 0.25;

/** However long the recording, it is looked at in no more blocks than this: the search takes up to the square of it. */
const mostBlocks = 10_000;

/** Blocks that a segment must hold, so that it has a variance. */
const leastBlocks = 4;

/** Levels closer than this share of the whole range are one level (common practice, no source). */
const oneLevel = 0.03;

/** Noise below this share of the range says nothing: a reading that repeats has none at all. */
const quietest = 0.002;

/**
 * Penalty of a further segment, in units of ln n. A mean, a variance and a place cost 3 by the Bayesian information criterion;
 * more is asked for because blocks of a switched load aren't independent.
 */
const penaltyOfSegment = 12;

/** Levels of a channel, one after the other without gaps, transitions among them as short ones. */
export function levelsOf(time: Float64Array, values: Float64Array): Level[] {
  const end = time[time.length - 1];
  const blocks = blockMeans(time, values, blockLength(time));
  const { mean } = blocks;
  const range = rangeOf(mean);
  if (!(range > 0)) return [{ mean: mean[0], from: time[0], to: end }];
  const penalty = penaltyOfSegment * Math.log(mean.length);
  const starts = mergeAlike(mean, changePoints(mean, penalty, leastBlocks, quietest * range), oneLevel * range);
  const edges = starts.map((_, k) => (k === 0 ? time[0] : edgeBetween(k, starts, blocks, time, values)));
  return starts.map((start, k) => ({
    mean: meanBetween(mean, start, starts[k + 1] ?? mean.length),
    from: edges[k],
    to: edges[k + 1] ?? end,
  }));
}

/** Length of the blocks that a recording is looked at in [s]. */
export function blockLength(time: Float64Array): number {
  return Math.max(blockSeconds, (time[time.length - 1] - time[0]) / mostBlocks);
}

/** Where two levels meet, to the reading: the split around the edge found in blocks that leaves the least squares about the means on either side. */
function edgeBetween(
  k: number,
  starts: readonly number[],
  blocks: Blocks,
  time: Float64Array,
  values: Float64Array,
): number {
  const at = (block: number) => time[0] + block * blocks.length;
  const [before, rough, after] = [at(starts[k - 1]), at(starts[k]), at(starts[k + 1] ?? blocks.mean.length)];
  const reach = leastBlocks * blocks.length;
  const first = lowerBound(time, Math.max(before, rough - reach));
  const last = lowerBound(time, Math.min(after, rough + reach));
  const left = meanBetween(values, lowerBound(time, before), first);
  const right = meanBetween(values, last, lowerBound(time, after));
  if (Number.isNaN(left) || Number.isNaN(right)) return rough;
  let excess = 0;
  let least = 0;
  let split = first;
  for (let i = first; i < last; i++) {
    if (Number.isNaN(values[i])) continue;
    excess += (values[i] - left) ** 2 - (values[i] - right) ** 2;
    if (excess < least) {
      least = excess;
      split = i + 1;
    }
  }
  return time[Math.min(split, time.length - 1)];
}

/** Joins neighbouring levels that differ by less than `least`, the closest pair first. */
function mergeAlike(mean: Float64Array, found: readonly number[], least: number): number[] {
  const starts = [...found];
  for (;;) {
    const levels = starts.map((start, k) => meanBetween(mean, start, starts[k + 1] ?? mean.length));
    let closest = -1;
    let nearest = least;
    for (let k = 1; k < levels.length; k++) {
      const step = Math.abs(levels[k] - levels[k - 1]);
      if (step < nearest) {
        nearest = step;
        closest = k;
      }
    }
    if (closest < 0) return starts;
    starts.splice(closest, 1);
  }
}

/** Mean of the numbers in a stretch; NaN where there is none. */
function meanBetween(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(values[i])) continue;
    sum += values[i];
    count++;
  }
  return sum / count;
}

/** Greatest minus least. */
export function rangeOf(values: Float64Array): number {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < least) least = value;
    if (value > greatest) greatest = value;
  }
  return greatest - least;
}

/** First index whose time isn't before `at`. */
export function lowerBound(time: Float64Array, at: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (time[middle] < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
