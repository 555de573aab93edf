import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { Refusal } from '../fault/fault.ts';
import { type Advice, advise, adviseTogether } from '../metrology/advice.ts';
import { tryAdvice } from '../metrology/advice-trial.ts';
import { margins } from '../metrology/margin.ts';
import type { Model, Output } from '../metrology/model.ts';
import { withPosterior } from '../metrology/posterior.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import type { Study } from '../study/study.ts';
import { beside } from './beside.ts';
import { candidatesOf, type StudyCandidate } from './candidates.ts';
import { figure } from './figure.ts';
import { readInstrument } from './instrument.ts';
import type { Learnt } from './learn.ts';
import { stepOf } from './plan.ts';
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
  /** Whether it starts from what the runs have taught, not only from what is stated. */
  readonly learnt: boolean;
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
export function adviseStep(study: Study, stepId: string, asked: Asked = {}): StepAdvice | null {
  const question = questionOf(study, stepId, asked);
  if (!question) return null;
  const { limit, both, output, sens, candidates, present, joint } = question;
  const list = advise(both, output.id, candidates, sens, joint);
  const together = adviseTogether(both, output.id, candidates, sens, 2, joint);
  if (!list || !together) return null;
  const written = (advice: Advice<StudyCandidate>) => write(advice, both, output);
  return {
    step: stepId,
    present: present.step.id,
    learnt: joint !== undefined,
    limit: { id: limit.id, title: limit.title },
    margin: figure(limit.margin, limit.u, output.kind, output.unit),
    considered: candidates.length,
    measurements: list.map(written),
    together: together.map(written),
  };
}

/** A measurement tried on drawn boards: how uncertain the margin was afterwards, and how far off it really was. */
export interface TriedMeasurement {
  readonly trials: number;
  /** Boards without a solution or a fit. */
  readonly failed: number;
  readonly seed: number;
  readonly uAfter: Figure;
  readonly errorBefore: Figure;
  readonly errorAfter: Figure;
}

/** Tries one of the advised measurements by brute force. Null where there's no such measurement. */
export function tryMeasurement(
  study: Study,
  { step, limit }: StepAdvice,
  measurement: string,
  options: { readonly seed: number; readonly trials: number; readonly learnt?: Learnt },
): TriedMeasurement | null {
  const question = questionOf(study, step, { limit: limit.id, learnt: options.learnt });
  const candidate = question?.candidates.find(({ id }) => id === measurement);
  if (!question || !candidate) return null;
  const { both, output, joint } = question;
  const { trials, failed, ...found } = tryAdvice(both, output.id, candidate, options, joint);
  return {
    trials,
    failed,
    seed: options.seed,
    uAfter: sizeOf(found.uAfter, output),
    errorBefore: sizeOf(found.errorBefore, output),
    errorAfter: sizeOf(found.errorAfter, output),
  };
}

/** What is asked about a step, beside its name. */
export interface Asked {
  /** Limit by its id; the one most likely exceeded when left out. */
  readonly limit?: string;
  /** What the runs have taught; only what is stated when left out. */
  readonly learnt?: Learnt;
}

/** The margin that is asked about, the two boards, and everything that could be measured. */
function questionOf(study: Study, stepId: string, { limit: wanted, learnt }: Asked) {
  const place = study.steps.indexOf(stepOf(study, stepId));
  const next = boardOf(study, place);
  const present = boardOf(study, Math.max(0, place - 1));
  const instruments = Object.entries(study.instruments).map(([id, entry]) => readInstrument(present, id, entry));
  const stated = beside(next, present, instruments);
  const both = learnt ? withPosterior(stated, learnt.fit) : stated;
  const joint = learnt?.fit.joint;
  const sens = sensitivities(both);
  const list = (margins(both, sens, undefined, joint) ?? []).map((margin) => {
    const { id, title } = next.limits.find(({ marginOutput }) => next.outputs[marginOutput].id === margin.id)!;
    return { id, title, margin: margin.margin, u: margin.u, exceed: margin.exceed, output: margin.id };
  });
  list.sort((a, b) => b.exceed - a.exceed || a.margin / a.u - b.margin / b.u);
  const limit = wanted === undefined ? list[0] : list.find(({ id }) => id === wanted);
  if (!limit) return null;
  const output = next.outputs[next.indexOfOutput(limit.output)];
  return { limit, present, both, sens, joint, output, candidates: candidatesOf(study, next, present, both) };
}

function boardOf(study: Study, place: number): BoardModel {
  const assembly = assembleBoard(study.steps[place]);
  if (!assembly.ok) throw new Refusal(assembly.faults);
  return assembly.board;
}

function write(
  { candidate, uNow, uAfter, reduction, exceed }: Advice<StudyCandidate>,
  both: Model,
  output: Output,
): AdvisedMeasurement {
  const { id, title, by, source, u, attains = u, effort, what } = candidate;
  const found =
    'input' in what
      ? both.inputs.find((input) => input.id === what.input)!
      : both.outputs.find((each) => each.id === what.output)!;
  return {
    id,
    title,
    by,
    source,
    attains: sizeOf(attains, found),
    hours: effort,
    uNow: sizeOf(uNow, output),
    uAfter: sizeOf(uAfter, output),
    reduction,
    exceedNow: exceed!.now,
    exceedBorneOut: exceed!.borneOut,
    clears: exceed!.clears,
  };
}

/** An uncertainty with the two digits it deserves; of a temperature it is a difference. */
function sizeOf(value: number, { kind, unit }: Pick<Output, 'kind' | 'unit'>): Figure {
  const rounded = Number(value.toPrecision(2));
  return kind === 'temperature'
    ? figure(rounded, null, 'temperature-difference', 'K')
    : figure(rounded, null, kind, unit);
}
