import type { Readings } from './read-run.ts';
import type { Run } from './run.ts';

/** Energy of a power channel over a run, beside a counter of energy where there is one. */
export interface Energy {
  readonly channel: string;
  /** Integral over time by the trapezoidal rule [J]. */
  readonly energy: number;
  /** Standard uncertainty by what may have happened between readings [J]; the sensor's own error and a lag of its averaging aren't in it. */
  readonly u: number;
  readonly counterChannel: string | null;
  /** The counter's difference from first to last row [J]; null without a counter. */
  readonly counter: number | null;
  /** Standard uncertainty by the counter's steps at the two ends [J]. */
  readonly uCounter: number | null;
  /** (integral − counter)/counter [1]. */
  readonly closure: number | null;
  readonly uClosure: number | null;
}

/** Integrates every power channel and holds it against the run's energy counter. Rows with a missing reading are bridged. */
export function energyOf(run: Run, readings: Readings): Energy[] {
  const { time } = readings;
  const counterChannel = run.channels.find(({ kind, count }) => kind === 'energy' && count > 1)?.name ?? null;
  const counter = counterChannel === null ? null : counted(readings.channels.get(counterChannel)!);
  return run.channels
    .filter(({ kind, count }) => kind === 'power' && count > 1)
    .map(({ name }): Energy => {
      const { energy, u } = integral(time, readings.channels.get(name)!);
      if (!counter || counter.energy === 0)
        return {
          channel: name,
          energy,
          u,
          counterChannel: null,
          counter: null,
          uCounter: null,
          closure: null,
          uClosure: null,
        };
      return {
        channel: name,
        energy,
        u,
        counterChannel,
        counter: counter.energy,
        uCounter: counter.u,
        closure: energy / counter.energy - 1,
        uClosure: Math.hypot(u, counter.u) / Math.abs(counter.energy),
      };
    });
}

/**
 * Integral of power over time [J] by the trapezoidal rule, and its standard uncertainty: u² = Σ (Δp·δ)²/12.
 *
 * Δp: from one reading to the next, δ: time between them. In between, the power may have changed at any moment, so the error of that stretch lies
 * within ±Δp·δ/2 with equal probability (GUM 4.3.7). A reading that repeats in several rows was refreshed less often than it was written down: δ is
 * then at least the usual time between changes.
 */
function integral(time: Float64Array, power: Float64Array): { energy: number; u: number } {
  const rows = [...power.keys()].filter((i) => !Number.isNaN(power[i]));
  const pairs = rows.slice(1).map((row, k) => ({ row, before: rows[k], change: power[row] - power[rows[k]] }));
  const changed = pairs.filter(({ change }) => change !== 0).map(({ row }) => time[row]);
  const spacings = changed
    .slice(1)
    .map((at, k) => at - changed[k])
    .sort((a, b) => a - b);
  const refresh = spacings[Math.floor(spacings.length / 2)] ?? 0;
  let energy = 0;
  let variance = 0;
  for (const { row, before, change } of pairs) {
    const step = time[row] - time[before];
    energy += ((power[row] + power[before]) / 2) * step;
    variance += (change * Math.max(step, refresh)) ** 2 / 12;
  }
  return { energy, u: Math.sqrt(variance) };
}

/** A counter's difference from its first to its last reading, each known to one of its steps. */
function counted(values: Float64Array): { energy: number; u: number } {
  const known = values.filter((value) => !Number.isNaN(value));
  const last = known.length - 1;
  let [i, j] = [0, last];
  while (i < last && known[i] === known[0]) i++;
  while (j > 0 && known[j] === known[last]) j--;
  return { energy: known[last] - known[0], u: Math.hypot(known[i] - known[0], known[last] - known[j]) / Math.sqrt(12) };
}
