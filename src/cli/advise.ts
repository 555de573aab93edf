import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import {
  type AdvisedMeasurement,
  adviseStep,
  type StepAdvice,
  type TriedMeasurement,
  tryMeasurement,
} from '../steps/advise.ts';
import { planStep } from '../steps/plan.ts';
import type { Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { learnFromRuns } from './fit.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { writeTable } from './text-table.ts';

export interface AdviseCommandOptions {
  readonly step?: string;
  readonly limit?: string;
  /** Start from what the runs have taught. */
  readonly learnt?: boolean;
  readonly all?: boolean;
  /** Boards to draw, and to try the first measurement on. */
  readonly try?: number;
  readonly seed?: number;
}

/** Rows of the table without `--all`; what takes off less than a hundredth of the variance isn't shown then. */
const SHOWN = 12;

/** The `advise` verb: which measurement would narrow a margin most before a step, for its effort. */
export async function runAdvise(studyArgument: string, options: AdviseCommandOptions): Promise<Outcome> {
  const { study, folder } = await loadStudy(studyArgument);
  const step = stepNamed(study, options.step);
  const learnt = options.learnt ? await learnFromRuns(study, folder) : undefined;
  const advice = adviseStep(study, step, { limit: options.limit, learnt });
  if (!advice) throw new Refusal(refusals(study, step, options.limit));
  const worth = advice.measurements.filter(({ reduction }) => reduction >= 0.01);
  const { try: trials, seed = 1 } = options;
  const [best] = advice.measurements;
  const tried = trials === undefined || !best ? null : tryMeasurement(study, advice, best.id, { trials, seed, learnt });
  const rows = options.all ? advice.measurements : worth.slice(0, SHOWN);
  const text = [
    `${advice.limit.title} (${advice.limit.id}) at step ${advice.step}: margin ${advice.margin.text}; what is measured now is step ${advice.present}${advice.learnt ? `; learnt from ${study.learning!.from.join(', ')}` : ''}`,
    sayBest(advice),
    rows.length > 0 ? table(rows) : '',
    ...(rows.length < advice.considered ? [`${advice.considered} measurements were looked at; --all shows them`] : []),
    sayTogether(advice),
    tried ? sayTried(tried) : '',
    'First order around the best values. Efforts and uncertainties that the study doesn’t give under `advice` are common practice, no source.\nNo measurement makes a board safer by itself: on average over all readings that may come, the probability of exceeding stays what it is now.',
  ];
  return { text: text.filter((each) => each !== '').join('\n\n'), json: { ...advice, tried }, exit: 0 };
}

/** The answer in one sentence, with numbers. */
function sayBest(advice: StepAdvice): string {
  const best = advice.measurements[0];
  if (!best || best.reduction < LITTLE)
    return `None of ${advice.considered} measurements would narrow this margin by more than a fortieth.`;
  return `${capital(best.title)}${way(best)}: the margin of "${advice.limit.title}" at step ${advice.step} is then known to ±${best.uAfter.text} instead of ±${best.uNow.text}; if the reading bears out the best values, the probability of exceeding ${best.exceedBorneOut < best.exceedNow ? 'falls' : 'rises'} from about ${percent(best.exceedNow)} to ${percent(best.exceedBorneOut)}.`;
}

function sayTogether({ together }: StepAdvice): string {
  const [first, second] = together;
  if (!second || second.reduction < LITTLE) return '';
  return `Two together: ${first.title}, then ${second.title}: ±${second.uAfter.text} instead of ±${first.uNow.text}, ${hours(first.hours + second.hours)}; borne out, about ${percent(second.exceedBorneOut)}.`;
}

function sayTried({ trials, failed, seed, uAfter, errorBefore, errorAfter }: TriedMeasurement): string {
  if (trials === 0) return `Tried on ${failed} drawn boards (seed ${seed}): none had a solution and a fit.`;
  const lost = failed === 0 ? '' : `; ${failed} more had no solution or no fit`;
  return `The first one tried on ${trials} drawn boards (seed ${seed})${lost}: the margin was really off by ${errorBefore.text} before and by ${errorAfter.text} after, and was then said to be known to ±${uAfter.text} (root mean squares).`;
}

/** A variance reduced by less narrows an interval by a fortieth at most: not worth a sentence. */
const LITTLE = 0.05;

function table(rows: readonly AdvisedMeasurement[]): string {
  return writeTable(
    [
      { heading: 'measurement' },
      { heading: 'to ±', align: 'right' },
      { heading: 'takes', align: 'right' },
      { heading: 'margin then ±', align: 'right' },
      { heading: 'of its variance', align: 'right' },
      { heading: 'exceeded, borne out', align: 'right' },
      { heading: 'chance of clear', align: 'right' },
    ],
    rows.map((row) => [
      `${row.title}${row.source === 'study' ? ` (${row.by})` : ''}`,
      row.attains.text,
      hours(row.hours),
      row.uAfter.text,
      `−${(100 * row.reduction).toFixed(0)} %`,
      percent(row.exceedBorneOut),
      percent(row.clears),
    ]),
    '  ',
  );
}

function way({ by, attains }: AdvisedMeasurement): string {
  return ` (${by}, to ±${attains.text})`;
}

function hours(value: number): string {
  return value < 1 ? `${Math.round(60 * value)} min` : `${Number(value.toFixed(1))} h`;
}

function percent(share: number): string {
  const value = 100 * share;
  if (value < 0.01) return '< 0.01 %';
  if (value > 99.9) return '> 99.9 %';
  return `${value >= 10 ? value.toFixed(0) : value.toPrecision(2)} %`;
}

function capital(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}

/** The named step, or the one after the board as delivered: what is climbed next. */
function stepNamed(study: Study, wanted: string | undefined): string {
  const known = study.steps.map(({ id }) => id);
  if (wanted === undefined) return known[Math.min(1, known.length - 1)];
  return namedStep(study, wanted);
}

/** Why there is no advice: a step without a solution, a limit that isn't one, or no solution beside the best values. */
function refusals(study: Study, step: string, limit: string | undefined) {
  const place = study.steps.findIndex(({ id }) => id === step);
  const present = study.steps[Math.max(0, place - 1)].id;
  const plans = [step, present].map((id) => planStep(study, id, { samples: 0, seed: 1 }));
  const unsolved = plans.find(({ faults }) => faults.length > 0);
  if (unsolved) return unsolved.faults;
  const known = plans[0].margins.map(({ id }) => id);
  if (limit !== undefined && !known.includes(limit))
    return [refuse('command/no-such-limit', { limit, known, nearest: nearest(limit, known) })];
  return [refuse('advice/no-answer', { step })];
}
