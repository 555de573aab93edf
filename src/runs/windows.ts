import { meanOf } from '../metrology/mean.ts';
import { resolutionOf } from '../metrology/resolution.ts';
import { meanOfSeries } from '../metrology/series.ts';
import { writeValue } from '../quantity/write.ts';
import { blockMeans } from './blocks.ts';
import { blockLength, levelsOf, lowerBound, rangeOf } from './levels.ts';
import type { Readings } from './read-run.ts';
import type { Channel, Run } from './run.ts';
import { type Settling, settlingOf } from './settling.ts';

/** What one channel shows at the end of a window. SI where its unit is known. */
export interface WindowValue extends Settling {
  readonly mean: number;
  /** Standard uncertainty of the mean from the readings alone, not from the sensor; null where nothing can be said. */
  readonly u: number | null;
  readonly readings: number;
  /** Independent readings that these are worth: neighbours are alike. */
  readonly independent: number;
  /** Mean over the whole window. */
  readonly wholeMean: number;
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
  /** By channel; one that has no reading at the end of the window isn't in it. */
  readonly channels: Readonly<Record<string, WindowValue>>;
}

/** Values are taken from the last seconds of a window [s]. */
export const averagedSeconds = 10;

/** A window keeps this much away from a change of level on either side [s]: sensors lag, and rows may be late. */
const guardSeconds = 1;

/** A stretch shorter than this, guards included, is a transition, not a level [s]. */
const shortestLevel = 5;

/** A level within this share of the range above the lowest counts as idle. */
const idleShare = 0.1;

/**
 * Change still to come that counts as none: in kelvins for temperatures, or what rounding leaves uncertain in their mean whatever comes; as
 * a share of the mean or one step of the readings for everything else (common practice, no source).
 */
const allowedKelvins = 0.25;
const allowedShare = 0.02;

/**
 * The channel whose level tells the windows apart: of the powers with at least half of the widest range the fastest, which is the one that
 * moves most from one short mean to the next as a share of its range. Null where no channel is a power.
 */
export function levelChannel(run: Run, readings: Readings): Channel | null {
  const powers = run.channels.filter(({ kind, count }) => kind === 'power' && count > 1);
  const judged = powers.map((channel) => {
    const { mean } = blockMeans(readings.time, readings.channels.get(channel.name)!, blockLength(readings.time));
    const range = rangeOf(mean);
    let moved = 0;
    for (let b = 1; b < mean.length; b++) moved += Math.abs(mean[b] - mean[b - 1]) || 0;
    return { channel, range, speed: range > 0 ? moved / range : 0 };
  });
  const widest = Math.max(...judged.map(({ range }) => range));
  const main = judged.filter(({ range }) => range >= widest / 2);
  return main.length === 0 ? null : main.reduce((a, b) => (b.speed > a.speed ? b : a)).channel;
}

/** The windows of a recording, each at one level of the channel; the transitions between them belong to none. */
export function windowsOf(run: Run, readings: Readings, level: Channel): Window[] {
  const { time } = readings;
  const found = levelsOf(time, readings.channels.get(level.name)!);
  const levels = found.filter(({ from, to }) => to - from >= shortestLevel);
  const lowest = Math.min(...levels.map(({ mean }) => mean));
  const highest = Math.max(...levels.map(({ mean }) => mean));
  const counts = { idle: 0, load: 0 };
  const resolutions = new Map(run.channels.map(({ name }) => [name, resolutionOf(readings.channels.get(name) ?? [])]));
  return levels.map(({ from, to, mean }): Window => {
    const word = mean - lowest > idleShare * (highest - lowest) ? 'load' : 'idle';
    counts[word]++;
    const start = from > time[0] ? from + guardSeconds : from;
    const end = to < time[time.length - 1] ? to - guardSeconds : to;
    const [first, last] = [lowerBound(time, start), lowerBound(time, end + 1e-9)];
    const averaged = Math.min(averagedSeconds, end - start);
    const channels: Record<string, WindowValue> = {};
    for (const channel of run.channels) {
      const values = readings.channels.get(channel.name)?.subarray(first, last);
      const resolution = resolutions.get(channel.name)!;
      const value = values && windowValue(time.subarray(first, last), values, averaged, channel, resolution);
      if (value) channels[channel.name] = value;
    }
    const title = `${word}, ${Number(mean.toPrecision(3))} W`;
    return { id: `${word}-${counts[word]}`, title, from: start, to: end, averaged, channels };
  });
}

function windowValue(
  time: Float64Array,
  values: Float64Array,
  averaged: number,
  channel: Channel,
  resolution: number | null,
): WindowValue | null {
  const isThere = (_: number, i: number) => !Number.isNaN(values[i]);
  const [times, whole] = [time.filter(isThere), values.filter(isThere)];
  const tail = whole.subarray(lowerBound(times, time[time.length - 1] - averaged));
  if (tail.length === 0) return null;
  const { mean, uMean, n, nEffective } = meanOfSeries(tail, resolution);
  const wholeMean = meanOf(whole);
  const share = Math.max(allowedShare * Math.abs(mean), resolution ?? 0);
  const rounding = (resolution ?? 0) / Math.sqrt(12);
  const allowed = channel.kind === 'temperature' ? Math.max(allowedKelvins, rounding) : share;
  const say = (amount: number, u?: number | null) => sayChange(amount, u ?? null, channel);
  const settling = settlingOf(times, whole, { averaged, allowed, resolution, say });
  return { mean, u: uMean, readings: n, independent: nEffective, wholeMean, ...settling };
}

/** A change of a channel in words, kelvins for a temperature; two digits where nothing is known of its uncertainty. */
function sayChange(amount: number, u: number | null, { kind, unit }: Channel): string {
  if (amount === 0 && u === null) return '0';
  if (kind === null) return `${amount.toPrecision(2)}${u === null ? '' : ` ± ${u.toPrecision(2)}`}`;
  const temperature = kind === 'temperature';
  const differenceKind = temperature ? 'temperature-difference' : kind;
  const text = writeValue(amount, u ?? Math.abs(amount) / 4, temperature ? 'K' : unit, differenceKind);
  return u === null ? text.split(' ±')[0] : text;
}
