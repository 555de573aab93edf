import type { Readings } from './read-run.ts';
import type { Run } from './run.ts';

/** Energy of a power channel over a run, beside a counter of energy where there is one. */
export interface Energy {
  readonly channel: string;
  /** Integral over time by the trapezoidal rule [J]. */
  readonly energy: number;
  /** The counter's difference from first to last row [J]; null without a counter. */
  readonly counter: number | null;
  readonly counterChannel: string | null;
  /** (integral − counter)/counter [1]. */
  readonly closure: number | null;
}

/** Integrates every power channel and holds it against the run's energy counter. Rows with a missing reading are bridged. */
export function energyOf(run: Run, readings: Readings): Energy[] {
  const { time } = readings;
  const counterChannel = run.channels.find(({ kind, count }) => kind === 'energy' && count > 1);
  const counter = counterChannel ? difference(readings.channels.get(counterChannel.name)!) : null;
  return run.channels
    .filter(({ kind, count }) => kind === 'power' && count > 1)
    .map(({ name }) => {
      const energy = integral(time, readings.channels.get(name)!);
      return {
        channel: name,
        energy,
        counter,
        counterChannel: counterChannel?.name ?? null,
        closure: counter ? energy / counter - 1 : null,
      };
    });
}

function integral(time: Float64Array, values: Float64Array): number {
  let sum = 0;
  let before = -1;
  for (let i = 0; i < time.length; i++) {
    if (Number.isNaN(values[i])) continue;
    if (before >= 0) sum += ((values[i] + values[before]) / 2) * (time[i] - time[before]);
    before = i;
  }
  return sum;
}

function difference(values: Float64Array): number {
  const known = values.filter((value) => !Number.isNaN(value));
  return known[known.length - 1] - known[0];
}
