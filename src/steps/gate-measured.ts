import type { BoardModel } from '../board/assemble.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import type { GateRules } from './gate-rules.ts';
import { AMBIENT, type MeasuredWindow } from './learn.ts';

/** Loads nearer together than this share of the greatest power count as one [1]. Common practice, no source. */
const SAME_LOAD = 0.05;

/** What is missing among the recordings: a baseline at enough loads, and the standing step itself. */
export function missingWindows(
  study: Study,
  standing: string,
  windows: readonly MeasuredWindow[],
  { loads: wanted }: GateRules,
): Fault[] {
  const first = study.steps[0].id;
  const baseline = differentLoads(steadyPowers(study, windows, first).steady);
  const faults = baseline < wanted ? [refuse('gate/baseline-short', { step: first, loads: baseline, wanted })] : [];
  const { steady, all } = steadyPowers(study, windows, standing);
  const [full, most] = [Math.max(...all), Math.max(...steady)];
  if (steady.length === 0) {
    if (standing !== first) faults.push(refuse('gate/standing-unmeasured', { step: standing }));
  } else if (most < (1 - SAME_LOAD) * full)
    faults.push(
      refuse('gate/full-load-unsettled', {
        step: standing,
        full: figure(full, null, 'power', 'W').text,
        most: figure(most, null, 'power', 'W').text,
      }),
    );
  return faults;
}

/** Powers of a step's windows that are steady themselves, all of them and those in which a temperature has settled too [W]. */
function steadyPowers(study: Study, windows: readonly MeasuredWindow[], step: string) {
  const power = study.instruments[study.learning?.['power-channel'] ?? '']?.channel;
  const temperatures = Object.values(study.instruments).flatMap(({ channel, shows }) =>
    shows.startsWith('heat.nodes.') && shows !== AMBIENT ? [channel] : [],
  );
  const here = windows.filter(({ step: at = study.steps[0].id, channels }) => at === step && channels[power]?.settled);
  const steady = here.filter(({ channels }) => temperatures.some((channel) => channels[channel]?.settled));
  const powers = (list: readonly MeasuredWindow[]) => list.map(({ channels }) => channels[power].mean);
  return { all: powers(here), steady: powers(steady) };
}

function differentLoads(powers: readonly number[]): number {
  const sorted = powers.toSorted((a, b) => a - b);
  const apart = SAME_LOAD * (sorted.at(-1) ?? 0);
  let loads = 0;
  let from = Number.NEGATIVE_INFINITY;
  for (const power of sorted)
    if (power - from > apart) {
      loads++;
      from = power;
    }
  return loads;
}

/** Limits beyond which an instrument has read where the board stands, whether it had settled there or not: nothing is left to predict. */
export function readBeyond(
  study: Study,
  board: BoardModel,
  standing: string,
  windows: readonly MeasuredWindow[],
): Fault[] {
  const { y } = evaluateAt(board, startValues(board));
  const here = windows.filter(({ step = study.steps[0].id }) => step === standing);
  return board.limits.flatMap(({ id: limit, title, of, side, valueOutput, thresholdOutput }) => {
    const { kind, unit } = board.outputs[valueOutput];
    const written = (value: number) => figure(value, null, kind, unit).text;
    return Object.entries(study.instruments).flatMap(([instrument, { channel, shows }]) => {
      const means = shows === of ? here.flatMap(({ channels }) => channels[channel]?.mean ?? []) : [];
      const worst = side === 'under' ? Math.max(...means) : Math.min(...means);
      const threshold = y[thresholdOutput];
      const isBeyond = side === 'under' ? worst > threshold : worst < threshold;
      if (means.length === 0 || !isBeyond) return [];
      const data = { limit, title, instrument, step: standing, read: written(worst), allowed: written(threshold) };
      return [refuse('gate/read-beyond', data)];
    });
  });
}

/**
 * Instruments whose calibration is too old on a day, lies after it, or has no date where the study asks for an age. `undated`: those without a
 * date where it doesn't.
 */
export function calibrationFaults(
  study: Study,
  today: string,
  rules: GateRules,
): { faults: Fault[]; undated: string[] } {
  const faults: Fault[] = [];
  const undated: string[] = [];
  for (const [instrument, { calibrated }] of Object.entries(study.instruments)) {
    if (calibrated === undefined) {
      undated.push(instrument);
      continue;
    }
    const days = daysBetween(calibrated, today);
    const data = { instrument, calibrated, today, days, allowed: rules.calibrationDays };
    if (days < 0) faults.push(refuse('gate/calibration-to-come', data));
    else if (days > rules.calibrationDays) faults.push(refuse('gate/calibration-old', data));
  }
  if (!rules.undatedHolds) return { faults, undated };
  const unknown = undated.map((instrument) =>
    refuse('gate/calibration-unknown', { instrument, allowed: rules.calibrationDays }),
  );
  return { faults: [...faults, ...unknown], undated: [] };
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
