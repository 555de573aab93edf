import { Refusal } from '../fault/fault.ts';
import { normalQuantile } from '../metrology/normal-quantile.ts';
import { normalBelow } from '../metrology/probability.ts';
import type { Study } from '../study/study.ts';
import { type AdvisedMeasurement, adviseStep } from './advise.ts';
import type { GateVerdict } from './gate.ts';
import { rulesOf } from './gate-rules.ts';
import type { Learnt } from './learn.ts';

/** What a measurement would do about a limit that is too likely exceeded. */
export interface GateAdvice {
  readonly limit: string;
  /** The one that would do most for its effort among those that are enough, else the one that helps most; null where none helps. */
  readonly measurement: AdvisedMeasurement | null;
  /** Probability of exceeding, as the gate counted it [1]. */
  readonly now: number;
  /** The same after a reading that bears out the best values: as many standard uncertainties of the margin, each as much smaller as the measurement makes them [1]. */
  readonly after: number;
  /** Whether the limit would then be kept as surely as the rules want it, if the reading bears out the best values. */
  readonly enough: boolean;
}

/** Limits that are looked at: advice about the fifth is of no use before the first four are settled. */
const MOST = 4;

/**
 * For each limit that holds a step because it is too likely exceeded: the measurement that would change it, the likeliest first. Where only all
 * together are too likely exceeded, for the likeliest of them.
 */
export function adviseGate(
  study: Study,
  stepId: string,
  { reasons, limits }: GateVerdict,
  learnt: Learnt | null,
): ReadonlyMap<string, GateAdvice> {
  const held = reasons.filter(({ code }) => code === 'gate/too-likely').map(({ data }) => String(data.limit));
  const likeliest = [...limits.keys()].toSorted((a, b) => limits.get(b)!.probability - limits.get(a)!.probability);
  if (held.length === 0 && reasons.some(({ code }) => code === 'gate/too-likely-together')) held.push(likeliest[0]);
  held.sort((a, b) => likeliest.indexOf(a) - likeliest.indexOf(b));
  const usable = learnt?.fit.ending === 'converged' ? learnt : undefined;
  return new Map(
    held.slice(0, MOST).flatMap((limit): [string, GateAdvice][] => {
      const list = measurementsFor(study, stepId, limit, usable);
      if (!list) return [];
      const { perLimit } = rulesOf(study);
      const now = limits.get(limit)!.probability;
      const helping = list
        .map((measurement) => ({ measurement, after: borneOut(now, measurement) }))
        .filter(({ after }) => after < HELPS * now);
      const enough = helping.find(({ after }) => after <= perLimit);
      const [best] = helping.toSorted((a, b) => a.after - b.after);
      const { measurement, after } = enough ?? best ?? { measurement: null, after: now };
      return [[limit, { limit, measurement, now, after, enough: enough !== undefined }]];
    }),
  );
}

/** A probability that falls by less isn't worth a sentence [1]. */
const HELPS = 0.9;

function borneOut(now: number, { uNow, uAfter }: AdvisedMeasurement): number {
  return normalBelow((normalQuantile(now) * uNow.value) / uAfter.value);
}

function measurementsFor(study: Study, stepId: string, limit: string, learnt: Learnt | undefined) {
  try {
    return adviseStep(study, stepId, { limit, learnt })?.measurements ?? null;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
