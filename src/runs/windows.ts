import { resolutionOf } from '../metrology/resolution.ts';
import { meanOfSeries } from '../metrology/series.ts';
import { writeValue } from '../quantity/write.ts';
import { blockMeans } from './blocks.ts';
import { changePoints, noiseOf } from './change-points.ts';
import type { Readings } from './read-run.ts';
import type { Channel, Run } from './run.ts';
import { settlingOf } from './settling.ts';

/** What one channel shows at the end of a window. SI where its unit is known. */
export interface WindowValue {
  readonly mean: number;
  /** Standard uncertainty of the mean from the readings alone; null where nothing can be said. */
  readonly u: number | null;
  readonly readings: number;
  /** Independent readings that these are worth: neighbours are alike. */
  readonly independent: number;
  readonly settled: boolean;
  readonly why: string;
}

/** A stretch of a recording at one level of load. */
export interface Window {
  readonly id: string;
  readonly title: string;
  /** [s] since the first row. */
  readonly from: number;
  readonly to: number;
  /** The values belong to these last seconds of it [s]. */
  readonly averaged: number;
  readonly channels: Readonly<Record<string, WindowValue>>;
}

/** Values are taken from the last seconds of a window [s]. */
export const averagedSeconds = 10;

/** Levels are told apart in means over this time at least [s]; a window keeps as much away from either edge. */
const blockSeconds = 1;

/** A stretch shorter than this is a transition, not a level [s]. */
const shortestLevel = 5;

/** Levels closer than this share of the whole range are one level. */
const oneLevel = 0.03;

/** A level within this share of the range above the lowest counts as idle. */
const idleShare = 0.1;

/** Change still to come that counts as none: in kelvins for temperatures, as a share of the mean for everything else (common practice, no source). */
const allowedKelvins = 0.25;
const allowedShare = 0.02;

/** The channel whose level tells the windows apart: the power that is quietest against its own range. Null where no channel is a power. */
export function levelChannel(run: Run, readings: Readings): Channel | null {
  const powers = run.channels.filter(({ kind, count }) => kind === 'power' && count > 1);
  const loudness = ({ name, least, greatest }: Channel) => {
    const { mean } = blockMeans(readings.time, readings.channels.get(name)!, blockSeconds);
    return noiseOf(mean) / Math.max(greatest! - least!, Number.MIN_VALUE);
  };
  return powers.length === 0 ? null : powers.reduce((a, b) => (loudness(b) < loudness(a) ? b : a));
}

/** The windows of a recording, each at one level of the channel; the transitions between them belong to none. */
export function windowsOf(run: Run, readings: Readings, level: Channel): Window[] {
  const { time } = readings;
  const duration = time[time.length - 1] - time[0];
  const blocks = blockMeans(time, readings.channels.get(level.name)!, Math.max(blockSeconds, duration / 3000));
  const range = Math.max(...blocks.mean) - Math.min(...blocks.mean);
  const noise = Math.max(noiseOf(blocks.mean), 1e-3 * range);
  const penalty = 6 * noise * noise * Math.log(Math.max(2, blocks.mean.length));
  const starts = mergeAlike(blocks.mean, changePoints(blocks.mean, penalty, 1), oneLevel * range);
  const stretches = starts.map((start, k) => {
    const end = starts[k + 1] ?? blocks.mean.length;
    const edges = [start > 0, end < blocks.mean.length];
    return {
      mean: meanBetween(blocks.mean, start, end),
      from: time[0] + (start + Number(edges[0])) * blocks.length,
      to: edges[1] ? time[0] + (end - 1) * blocks.length : time[time.length - 1],
    };
  });
  const levels = stretches.filter(({ from, to }) => to - from >= shortestLevel);
  const lowest = Math.min(...levels.map(({ mean }) => mean));
  const counts = { idle: 0, load: 0 };
  const resolutions = new Map(run.channels.map(({ name }) => [name, resolutionOf(readings.channels.get(name) ?? [])]));
  return levels.map(({ from, to, mean }): Window => {
    const word = mean - lowest > idleShare * range ? 'load' : 'idle';
    counts[word]++;
    const [first, end] = [lowerBound(time, from), lowerBound(time, to + 1e-9)];
    const averaged = Math.min(averagedSeconds, to - from);
    const channels: Record<string, WindowValue> = {};
    for (const channel of run.channels) {
      const values = readings.channels.get(channel.name)?.subarray(first, end);
      if (values && channel.count > 0)
        channels[channel.name] = windowValue(
          time.subarray(first, end),
          values,
          averaged,
          channel,
          resolutions.get(channel.name)!,
        );
    }
    const shown = writeValue(channels[level.name].mean, 0.5, 'W', 'power').split(' ±')[0];
    return { id: `${word}-${counts[word]}`, title: `${word}, ${shown}`, from, to, averaged, channels };
  });
}

function windowValue(
  time: Float64Array,
  values: Float64Array,
  averaged: number,
  channel: Channel,
  resolution: number | null,
): WindowValue {
  const last = lowerBound(time, time[time.length - 1] - averaged);
  const tail = values.subarray(last).filter((value) => !Number.isNaN(value));
  if (tail.length === 0)
    return { mean: Number.NaN, u: null, readings: 0, independent: 0, settled: false, why: 'no reading here' };
  const { mean, uMean, n, nEffective } = meanOfSeries(tail, resolution);
  const temperature = channel.kind === 'temperature';
  const allowed = temperature ? allowedKelvins : allowedShare * Math.abs(mean);
  const say = (amount: number) =>
    channel.kind === null
      ? amount.toPrecision(2)
      : writeValue(
          amount,
          amount / 10,
          temperature ? 'K' : channel.unit,
          temperature ? 'temperature-difference' : channel.kind,
        ).split(' ±')[0];
  const { settled, why } = settlingOf(time, values, averaged, allowed, say);
  return { mean, u: uMean, readings: n, independent: nEffective, settled, why };
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

function meanBetween(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i];
  return sum / (to - from);
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
