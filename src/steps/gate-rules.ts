import type { Study } from '../study/study.ts';

/** How much risk a step may carry, and what has to be known before it. */
export interface GateRules {
  /** Largest probability of exceeding one limit [1]. */
  readonly perLimit: number;
  /** Largest probability of exceeding any limit [1]. */
  readonly together: number;
  /** Largest probability of exceeding the limit of a temperature that no instrument watches: nobody would notice that the model is wrong there [1]. */
  readonly unwatched: number;
  /** Different loads at which the baseline has to be steady. */
  readonly loads: number;
  /** Longest age of a calibration [d]. */
  readonly calibrationDays: number;
  /** Whether an instrument whose calibration has no date is a reason to hold: it is where the study asks for an age. */
  readonly undatedHolds: boolean;
}

/** One per cent a limit, five together, a tenth of a per cent where nobody looks; two loads, a year (common practice, no source). */
export const usualRules: GateRules = {
  perLimit: 0.01,
  together: 0.05,
  unwatched: 0.001,
  loads: 2,
  calibrationDays: 365,
  undatedHolds: false,
};

/** The rules as the study states them, the usual ones where it doesn't. */
export function rulesOf({ gate }: Study): GateRules {
  if (!gate) return usualRules;
  return {
    perLimit: gate['per-limit']?.value ?? usualRules.perLimit,
    together: gate.together?.value ?? usualRules.together,
    unwatched: gate.unwatched?.value ?? usualRules.unwatched,
    loads: gate.loads ?? usualRules.loads,
    calibrationDays: gate['calibration-days'] ?? usualRules.calibrationDays,
    undatedHolds: gate['calibration-days'] !== undefined,
  };
}
