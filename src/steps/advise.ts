import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { Refusal } from '../fault/fault.ts';
import { type Advice, advise, adviseTogether } from '../metrology/advice.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import { kinds } from '../quantity/kind.ts';
import type { Study } from '../study/study.ts';
import { beside } from './beside.ts';
import { candidatesOf, type StudyCandidate } from './candidates.ts';
import { figure } from './figure.ts';
import { planStep, stepOf } from './plan.ts';
import type { Figure } from './step-plan.ts';

/** One measurement, and what it would do for a margin. */
export interface AdvisedMeasurement {
  readonly id: string;
  readonly title: string;
  readonly by: string;
  readonly source: StudyCandidate['source'];
  /** Standard uncertainty that the measurement would have. */
  readonly attains: Figure;
  /** Time it takes [h]. */
  readonly hours: number;
  /** Standard uncertainty of the margin before and after. */
  readonly uNow: Figure;
  readonly uAfter: Figure;
  /** Part of the margin's variance that goes away [1]. */
  readonly reduction: number;
  /** Probability that the limit is exceeded: now, and after a reading that bears out the best values [1]. */
  readonly exceedNow: number;
  readonly exceedBorneOut: number;
  /** Chance that the reading leaves it below 2.5 % [1]. */
  readonly clears: number;
}

/** What to measure before a step. */
export interface StepAdvice {
  readonly step: string;
  /** The step whose board is there to be measured. */
  readonly present: string;
  readonly limit: { readonly id: string; readonly title: string };
  readonly margin: Figure;
  /** Measurements that were looked at. */
  readonly considered: number;
  /** All of them, the one that takes off most per hour first. */
  readonly measurements: readonly AdvisedMeasurement[];
  /** The best, and the best after it: both together are what the last one's `uAfter` says. */
  readonly together: readonly AdvisedMeasurement[];
}

/**
 * What to measure before a step, for the margin that binds there or for another one: every uncertain number, every instrument and every place that
 * could be read at the step before, by what it takes off the margin's variance per hour. First order around the best values.
 * Null where the step has no margin: no solution, or no known limit of that name.
 */
export function adviseStep(study: Study, stepId: string, limitId?: string): StepAdvice | null {
  const place = study.steps.indexOf(stepOf(study, stepId));
  const plan = planStep(study, stepId, { samples: 0, seed: 1 });
  const margin = plan.margins.find(({ id }) => id === (limitId ?? plan.binding));
  if (!margin) return null;
  const next = boardOf(study, place);
  const present = boardOf(study, Math.max(0, place - 1));
  const both = beside(next, present);
  const sens = sensitivities(both);
  const candidates = candidatesOf(study, next, present, both);
  const { marginOutput } = next.limits.find(({ id }) => id === margin.id)!;
  const output = next.outputs[marginOutput];
  const list = advise(both, output.id, candidates, sens);
  const together = adviseTogether(both, output.id, candidates, sens, 2);
  if (!list || !together) return null;
  const written = (advice: Advice<StudyCandidate>) => write(advice, both, output);
  return {
    step: stepId,
    present: present.step.id,
    limit: { id: margin.id, title: margin.title },
    margin: margin.margin,
    considered: candidates.length,
    measurements: list.map(written),
    together: together.map(written),
  };
}

function boardOf(study: Study, place: number): BoardModel {
  const assembly = assembleBoard(study.steps[place]);
  if (!assembly.ok) throw new Refusal(assembly.faults);
  return assembly.board;
}

function write(
  { candidate, uNow, uAfter, reduction, exceed }: Advice<StudyCandidate>,
  both: ReturnType<typeof beside>,
  output: { readonly kind: BoardModel['outputs'][number]['kind']; readonly unit: string },
): AdvisedMeasurement {
  const { id, title, by, source, u, effort, what } = candidate;
  const found =
    'input' in what
      ? both.inputs.find((input) => input.id === what.input)!
      : both.outputs.find((each) => each.id === what.output)!;
  const size = (value: number, of: typeof output) => {
    const difference = of.kind === 'temperature' ? ('temperature-difference' as const) : of.kind;
    const unit = of.kind === 'temperature' ? kinds[difference].siUnit : of.unit;
    return figure(Number(value.toPrecision(2)), null, difference, unit);
  };
  return {
    id,
    title,
    by,
    source,
    attains: size(u, found),
    hours: effort,
    uNow: size(uNow, output),
    uAfter: size(uAfter, output),
    reduction,
    exceedNow: exceed!.now,
    exceedBorneOut: exceed!.borneOut,
    clears: exceed!.clears,
  };
}
