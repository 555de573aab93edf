import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { farFor } from '../metrology/misfit.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { withPosterior } from '../metrology/posterior.ts';
import { type CountedProbability, counted } from '../metrology/sample.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { calibrationFaults, missingWindows, readBeyond } from './gate-measured.ts';
import { type GateRules, rulesOf } from './gate-rules.ts';
import type { Learnt, MeasuredWindow, PredictedWindow } from './learn.ts';
import { stepOf } from './plan.ts';
import { atPresentAmbient } from './present-ambient.ts';
import type { Figure } from './step-plan.ts';

/** What the verdict rests on. */
export interface GateEvidence {
  /** Fit of everything that was measured so far; null: nothing was. */
  readonly learnt: Learnt | null;
  /** Where the ladder stands now; the step that is asked about comes after it. */
  readonly standing: string;
  /** What was predicted for the standing step before it was climbed, beside what was then measured. */
  readonly predicted: readonly PredictedWindow[];
  /** Everything that was measured so far; left out: whether it is enough isn't asked. */
  readonly windows?: readonly MeasuredWindow[];
  /** Why nothing could be learnt, where there are recordings. */
  readonly trouble?: readonly Fault[];
  /** Whether the low-load check of the standing step is ticked; left out: it isn't asked. */
  readonly lowLoadChecked?: boolean;
}

export interface GateOptions {
  readonly samples: number;
  readonly seed: number;
  /** The study's own when left out. */
  readonly rules?: GateRules;
  /** Day to which the age of calibrations is counted, such as 2026-03-01; left out: it isn't asked. */
  readonly today?: string;
}

/** A limit at the step asked about: how likely it is exceeded, and its margin. */
export interface GateLimit extends CountedProbability {
  readonly title: string;
  readonly margin: Figure;
  /** 95 % interval of the margin. */
  readonly interval: { readonly low: Figure; readonly high: Figure };
}

export interface GateVerdict {
  readonly verdict: 'go' | 'hold' | 'back';
  /** Why it isn't `go`: a sentence each, the gravest first; empty for `go`. */
  readonly reasons: readonly Fault[];
  /** What to know about the verdict that is no reason against it. */
  readonly notes: readonly Fault[];
  /** Probability of exceeding any limit at the step asked about; null where it couldn't be worked out. */
  readonly together: CountedProbability | null;
  /** The same by limit. */
  readonly limits: ReadonlyMap<string, GateLimit>;
}

/**
 * Whether to climb to a step. `back`: where the board stands now, an instrument has read beyond a limit, or one is more likely exceeded than not. `hold`: something isn't known, doesn't
 * agree, or is too likely to be exceeded at the next step. `go`: nothing speaks against it. Unknown is never safe.
 */
export function gate(study: Study, stepId: string, evidence: GateEvidence, options: GateOptions): GateVerdict {
  const rules = options.rules ?? rulesOf(study);
  const { learnt, standing } = evidence;
  const here = exceedances(study, stepOf(study, standing), learnt, options);
  const next = exceedances(study, stepOf(study, stepId), learnt, options);
  const calibrations = options.today === undefined ? null : calibrationFaults(study, options.today, rules);
  const back = here
    ? [...readBeyond(study, here.board, standing, evidence.windows ?? []), ...exceededNow(study, standing, here)]
    : [];
  const hold = [
    ...measuredReasons(study, stepId, evidence, rules),
    ...(calibrations?.faults ?? []),
    ...(next ? limitReasons(study, next, rules) : [refuse('gate/no-solution', { step: stepId })]),
  ];
  const undated = calibrations?.undated ?? [];
  return {
    verdict: back.length > 0 ? 'back' : hold.length > 0 ? 'hold' : 'go',
    reasons: [...back, ...hold],
    notes: [
      ...(undated.length > 0 ? [warn('gate/undated', { instruments: undated })] : []),
      ...(next ? uncertainCounts(next, rules) : []),
    ],
    together: next?.together ?? null,
    limits: next?.limits ?? new Map(),
  };
}

/** Limits that are more likely exceeded than not where the board stands. */
function exceededNow(study: Study, standing: string, { limits }: Exceedances): Fault[] {
  const first = standing === study.steps[0].id ? 1 : 0;
  return [...limits].flatMap(([limit, { title, probability }]) =>
    probability > 0.5
      ? [refuse('gate/exceeded-now', { limit, title, step: standing, probability: percent(probability), first })]
      : [],
  );
}

/** What speaks against a step in what was measured so far. */
function measuredReasons(study: Study, stepId: string, evidence: GateEvidence, rules: GateRules): Fault[] {
  const { learnt, predicted, standing, windows, trouble = [], lowLoadChecked } = evidence;
  const reasons: Fault[] = [...trouble];
  if (learnt === null && trouble.length === 0) reasons.push(refuse('gate/nothing-measured', { step: stepId }));
  if (learnt !== null) {
    if (learnt.fit.ending !== 'converged') reasons.push(refuse('gate/no-fit', { ending: learnt.fit.ending }));
    if (learnt.fit.misfit) reasons.push(...learnt.fit.faults.filter(({ code }) => disagreements.has(code)));
    if (windows) reasons.push(...missingWindows(study, standing, windows, rules));
  }
  if (lowLoadChecked === false) reasons.push(refuse('gate/low-load', { step: standing }));
  const far = farFor(predicted.length);
  for (const { window, instrument, size, predicted: expected, measured } of predicted)
    if (!(Math.abs(size) <= far))
      reasons.push(
        refuse(instrument === study.learning?.['power-channel'] ? 'gate/power-missed' : 'gate/prediction-missed', {
          instrument,
          window,
          predicted: expected.text,
          measured: measured.text,
          size: size.toFixed(1),
          far: far.toFixed(1),
        }),
      );
  return reasons;
}

/** What speaks against a step in its limits. */
function limitReasons(study: Study, { board, limits, together }: Exceedances, rules: GateRules): Fault[] {
  const reasons = board.open.map(({ id, title }) => refuse('gate/open-limit', { limit: title, field: id }));
  const watched = new Set(Object.values(study.instruments).map(({ shows }) => shows));
  for (const { id: limit, of } of board.limits) {
    const { title, probability } = limits.get(limit)!;
    const data = { limit, title, probability: percent(probability) };
    if (probability > rules.perLimit)
      reasons.push(refuse('gate/too-likely', { ...data, allowed: percent(rules.perLimit) }));
    else if (probability > rules.unwatched && isPlace(of) && !watched.has(of))
      reasons.push(refuse('gate/unwatched', { ...data, allowed: percent(rules.unwatched) }));
  }
  if (together.probability > rules.together)
    reasons.push(
      refuse('gate/too-likely-together', {
        probability: percent(together.probability),
        allowed: percent(rules.together),
      }),
    );
  return reasons;
}

/** Probabilities so near to what is allowed that the number of draws doesn't tell on which side they are. */
function uncertainCounts({ limits, together }: Exceedances, { perLimit, together: all }: GateRules): Fault[] {
  const unsure = (name: string, { low, high, probability }: CountedProbability, allowed: number) =>
    low < allowed && high > allowed && probability > 0
      ? [
          warn('gate/count-unsure', {
            limit: name,
            low: percent(low),
            high: percent(high),
            allowed: percent(allowed),
          }),
        ]
      : [];
  return [
    ...[...limits.values()].flatMap((limit) => unsure(limit.title, limit, perLimit)),
    ...unsure('all limits together', together, all),
  ];
}

/** Whether an output is the temperature of a place that a sensor can be put on. */
const isPlace = (output: string) => /^heat\.nodes\.[^.]+\.temperature$/.test(output);

/** Complaints of a fit that mean: model and measurements don't agree. */
const disagreements = new Set(['fit/chi-square', 'fit/residual', 'fit/input-far']);

interface Exceedances {
  readonly board: BoardModel;
  readonly together: CountedProbability;
  readonly limits: ReadonlyMap<string, GateLimit>;
}

/** Probabilities of exceeding a step's limits with everything learnt so far; a draw without a solution exceeds all. In the air that was read last. Null: no solution at the best values. */
function exceedances(study: Study, step: Step, learnt: Learnt | null, options: GateOptions): Exceedances | null {
  const assembly = assembleBoard(step);
  if (!assembly.ok) return null;
  const { board } = assembly;
  const learning = learnt !== null && learnt.fit.ending === 'converged';
  const model = learning ? withPosterior(atPresentAmbient(board, study, learnt), learnt.fit) : board;
  if (evaluateAt(model, startValues(model)).status.ending !== 'solved') return null;
  const margins = board.limits.map(({ marginOutput }) => board.outputs[marginOutput].id);
  const { samples, seed } = options;
  const run = monteCarlo(model, { samples, seed, outputs: margins, ...(learning && { joint: learnt.fit.joint }) });
  if (run.endings.solved === 0) return null;
  const columns = margins.map((id) => run.outputs.get(id)!);
  let any = 0;
  for (let s = 0; s < run.samples; s++) if (columns.some(({ values }) => !(values[s] >= 0))) any++;
  const limits = board.limits.map(({ id, title, marginOutput }, i): [string, GateLimit] => {
    const { kind, unit } = board.outputs[marginOutput];
    const sample = columns[i];
    const { low, high } = sample.interval();
    // The ends have the digits that the spread of the margin gives them.
    const end = (value: number) => ({
      ...figure(value, null, kind, unit),
      text: figure(value, sample.u, kind, unit).text.split(' ± ')[0],
    });
    const interval = { low: end(low), high: end(high) };
    return [id, { title, ...sample.below(0), margin: figure(sample.mean, sample.u, kind, unit), interval }];
  });
  return { board, together: counted(any, run.samples), limits: new Map(limits) };
}

function warn(code: Fault['code'], data: Fault['data']): Fault {
  return { code, severity: 'warning', data };
}

/** A probability with two digits. */
export const percent = (probability: number) => `${Number((100 * probability).toPrecision(2))} %`;
