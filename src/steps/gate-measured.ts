import { type Fault, refuse } from '../fault/fault.ts';
import type { Study } from '../study/study.ts';
import type { GateRules } from './gate-rules.ts';
import type { MeasuredWindow } from './learn.ts';

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
  const at = (step: string) => steadyPowers(study, windows, step);
  const loads = differentLoads(at(first));
  const faults = loads < wanted ? [refuse('gate/baseline-short', { step: first, loads, wanted })] : [];
  if (standing !== first && at(standing).length === 0)
    faults.push(refuse('gate/standing-unmeasured', { step: standing }));
  return faults;
}

/** Powers of a step's steady windows in which something else has settled too [W]. */
function steadyPowers(study: Study, windows: readonly MeasuredWindow[], step: string): number[] {
  const power = study.instruments[study.learning?.['power-channel'] ?? '']?.channel;
  return windows.flatMap(({ step: at = study.steps[0].id, channels }) => {
    const measured = channels[power];
    const others = Object.entries(channels).some(([channel, { settled }]) => channel !== power && settled);
    return at === step && measured?.settled && others ? [measured.mean] : [];
  });
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
