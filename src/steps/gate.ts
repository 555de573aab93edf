import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { farFor } from '../metrology/misfit.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { withPosterior } from '../metrology/posterior.ts';
import { type CountedProbability, counted } from '../metrology/sample.ts';
import type { Step, Study } from '../study/study.ts';
import type { Learnt, PredictedWindow } from './learn.ts';
import { stepOf } from './plan.ts';
import { atPresentAmbient } from './present-ambient.ts';

/** What the verdict rests on. */
export interface GateEvidence {
  /** Fit of everything that was measured so far; null: nothing was. */
  readonly learnt: Learnt | null;
  /** Where the ladder stands now; the step that is asked about comes after it. */
  readonly standing: string;
  /** What was predicted for the standing step before it was climbed, beside what was then measured. */
  readonly predicted: readonly PredictedWindow[];
}

/** How much risk a step may carry. */
export interface GateRules {
  /** Largest probability of exceeding one limit [1]. */
  readonly perLimit: number;
  /** Largest probability of exceeding any limit [1]. */
  readonly together: number;
  /** Largest probability of exceeding the limit of a temperature that no instrument watches: nobody would notice that the model is wrong there [1]. */
  readonly unwatched: number;
}

/** One per cent a limit, five together, a tenth of a per cent where nobody looks (common practice, no source). */
export const usualRules: GateRules = { perLimit: 0.01, together: 0.05, unwatched: 0.001 };

export interface GateOptions {
  readonly samples: number;
  readonly seed: number;
  readonly rules?: GateRules;
}

export interface GateVerdict {
  readonly verdict: 'go' | 'hold' | 'back';
  /** Why it isn't `go`: a sentence each, the gravest first; empty for `go`. */
  readonly reasons: readonly Fault[];
  /** Probability of exceeding any limit at the step asked about; null where it couldn't be worked out. */
  readonly together: CountedProbability | null;
  /** The same by limit. */
  readonly limits: ReadonlyMap<string, CountedProbability>;
}

/**
 * Whether to climb to a step. `back`: a limit is more likely exceeded than not where the board stands now. `hold`: something isn't known, doesn't
 * agree, or is too likely to be exceeded at the next step. `go`: nothing speaks against it. Unknown is never safe.
 */
export function gate(study: Study, stepId: string, evidence: GateEvidence, options: GateOptions): GateVerdict {
  const rules = options.rules ?? usualRules;
  const step = stepOf(study, stepId);
  const back: Fault[] = [];
  const hold: Fault[] = [];
  const { learnt, predicted, standing } = evidence;
  if (learnt === null) hold.push(refuse('gate/nothing-measured', { step: stepId }));
  else {
    if (learnt.fit.ending !== 'converged') hold.push(refuse('gate/no-fit', { ending: learnt.fit.ending }));
    if (learnt.fit.misfit) hold.push(...learnt.fit.faults.filter(({ code }) => disagreements.has(code)));
  }
  const far = farFor(predicted.length);
  for (const { window, instrument, size, predicted: expected, measured } of predicted)
    if (Math.abs(size) > far)
      hold.push(
        refuse('gate/prediction-missed', {
          instrument,
          window,
          predicted: expected.text,
          measured: measured.text,
          size: size.toFixed(1),
          far: far.toFixed(1),
        }),
      );

  const here = exceedances(study, stepOf(study, standing), learnt, options);
  if (here)
    for (const [limit, { probability }] of here.limits)
      if (probability > 0.5)
        back.push(refuse('gate/exceeded-now', { limit, step: standing, probability: percent(probability) }));
  const next = exceedances(study, step, learnt, options);
  if (!next) hold.push(refuse('gate/no-solution', { step: stepId }));
  else {
    for (const { title } of next.board.open) hold.push(refuse('gate/open-limit', { limit: title }));
    const watched = new Set(Object.values(study.instruments).map(({ shows }) => shows));
    for (const { id: limit, of } of next.board.limits) {
      const { probability } = next.limits.get(limit)!;
      if (probability > rules.perLimit)
        hold.push(
          refuse('gate/too-likely', {
            limit,
            probability: percent(probability),
            allowed: percent(rules.perLimit),
          }),
        );
      else if (probability > rules.unwatched && isPlace(of) && !watched.has(of))
        hold.push(
          refuse('gate/unwatched', {
            limit,
            probability: percent(probability),
            allowed: percent(rules.unwatched),
          }),
        );
    }
    if (next.together.probability > rules.together)
      hold.push(
        refuse('gate/too-likely-together', {
          probability: percent(next.together.probability),
          allowed: percent(rules.together),
        }),
      );
  }
  const reasons = [...back, ...hold];
  return {
    verdict: back.length > 0 ? 'back' : hold.length > 0 ? 'hold' : 'go',
    reasons,
    together: next?.together ?? null,
    limits: next?.limits ?? new Map(),
  };
}

/** Whether an output is the temperature of a place that a sensor can be put on. */
const isPlace = (output: string) => /^heat\.nodes\.[^.]+\.temperature$/.test(output);

/** Complaints of a fit that mean: model and measurements don't agree. */
const disagreements = new Set(['fit/chi-square', 'fit/residual', 'fit/input-far']);

interface Exceedances {
  readonly board: BoardModel;
  readonly together: CountedProbability;
  readonly limits: ReadonlyMap<string, CountedProbability>;
}

/** Probabilities of exceeding a step's limits with everything learnt so far; a draw without a solution exceeds all. In the air that was read last. Null: no solution at the best values. */
function exceedances(study: Study, step: Step, learnt: Learnt | null, options: GateOptions): Exceedances | null {
  const assembly = assembleBoard(step);
  if (!assembly.ok) return null;
  const { board } = assembly;
  const learning = learnt !== null && learnt.fit.ending === 'converged';
  const model = learning ? withPosterior(atPresentAmbient(board, study, learnt), learnt.fit) : board;
  const margins = board.limits.map(({ marginOutput }) => board.outputs[marginOutput].id);
  const { samples, seed } = options;
  const run = monteCarlo(model, { samples, seed, outputs: margins, ...(learning && { joint: learnt.fit.joint }) });
  if (run.endings.solved === 0) return null;
  const values = margins.map((id) => run.outputs.get(id)!.values);
  let any = 0;
  for (let s = 0; s < run.samples; s++) if (values.some((column) => !(column[s] >= 0))) any++;
  return {
    board,
    together: counted(any, run.samples),
    limits: new Map(
      board.limits.map(({ id }, i) => [id, counted(values[i].filter((value) => !(value >= 0)).length, run.samples)]),
    ),
  };
}

const percent = (probability: number) => `${Number((100 * probability).toPrecision(2))} %`;
