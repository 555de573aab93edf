import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import type { BoardLimiter } from '../board/limiters.ts';
import { plateFault } from '../board/plate/plate-fault.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { type AdaptiveMonteCarlo, adaptiveMonteCarlo } from '../metrology/adaptive-monte-carlo.ts';
import { budget } from '../metrology/budget.ts';
import type { DrawOptions } from '../metrology/draws.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { margins as marginsOf } from '../metrology/margin.ts';
import type { Ending, Status } from '../metrology/model.ts';
import { type MonteCarlo, monteCarlo } from '../metrology/monte-carlo.ts';
import { type Sensitivities, sensitivities } from '../metrology/sensitivity.ts';
import { writeValue } from '../quantity/write.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { writeMargin } from './margin-figures.ts';
import { curveNotes, drawNotes } from './notes.ts';
import { rareExceeding } from './rare-exceeding.ts';
import type { Dial, LimiterState, Margin, OpenLimit, PlanOptions, StepPlan } from './step-plan.ts';

/**
 * What the study says about one step: operating point, limiters, margins, what binds, what is open.
 * A step that has no operating point is a plan with its `ending` and faults, and no numbers.
 */
export function planStep(study: Study, stepId: string, options: PlanOptions): StepPlan {
  const step = stepOf(study, stepId);
  const assembly = assembleBoard(step, options.dial && boardDial(options.dial));
  if (!assembly.ok) return unsolved(step, 'infeasible', assembly.faults, []);
  const { board } = assembly;
  const nominal = evaluateAt(board, startValues(board));
  if (nominal.status.ending !== 'solved') {
    const states = board.limiters.map((limiter) => limiterState(board, nominal.y, limiter, '', () => null));
    return unsolved(step, nominal.status.ending, [endingFault(board, nominal.status)], states);
  }
  // Read before any other evaluation: it belongs to the last one.
  const { holder } = board;
  const sens = sensitivities(board);
  const draws = drawsOf(study, board, options.seed);
  const run = options.samples === 'auto' || options.samples >= 2 ? sample(board, sens, draws, options) : undefined;
  const u = (id: string) => outputUncertainty(board, sens, run, id);
  const rare = run && rareExceeding(board, run, draws);
  const list = (marginsOf(board, sens, run) ?? []).map((margin) =>
    writeMargin(board, margin, u, rare && !options.cancelled?.() ? rare(margin) : null),
  );
  list.sort(byDanger);
  const of = (id: string) => outputFigure(board, sens, id, u(id));
  const wall = nominal.y[board.indexOfOutput('wall-power')];
  const heat = nominal.y[board.indexOfOutput('heat')];
  return {
    ...heading(step),
    ending: 'solved',
    operating: {
      scale: of('scale'),
      holder,
      holderTitle: board.limiters.find(({ id }) => id === holder)?.title ?? 'demand',
      processorPower: of('processor-power'),
      wallPower: of('wall-power'),
    },
    limiters: board.limiters.map((limiter) => limiterState(board, nominal.y, limiter, holder, u)),
    margins: list,
    binding: list[0]?.id ?? null,
    open: board.open.map(
      (open): OpenLimit => ({
        id: open.id,
        title: open.title,
        of: open.of,
        value: of(open.of),
        field: open.id,
      }),
    ),
    solution: {
      residual: nominal.status.residual,
      passes: nominal.status.passes,
      wallPower: of('wall-power'),
      heat: of('heat'),
      imbalance: wall === heat ? 0 : Math.abs(wall - heat) / wall,
    },
    sampling: run ? samplingOf(board, run) : null,
    faults: [],
    notes: [...curveNotes(board, nominal.y), ...(run ? drawNotes(board) : [])],
  };
}

/** The step, or a programmer's error: doors check the name first. */
export function stepOf(study: Study, stepId: string): Step {
  const step = study.steps.find(({ id }) => id === stepId);
  if (!step) throw new Error(`the study has no step "${stepId}"`);
  return step;
}

/** The dial as the board takes it. */
export function boardDial({ limiter, realPower }: Dial) {
  const text = writeValue(realPower, null, 'W', 'power');
  return {
    limiter,
    realPower: { kind: 'power', value: realPower, unit: 'W', spread: null, text, source: 'dialled' } as const,
  };
}

/** The same number gets the same dimension of the sequence at every step, so that steps can be compared draw by draw. */
export function drawsOf(study: Study, board: BoardModel, seed: number): DrawOptions {
  const dimensions = new Map<string, number>();
  for (const step of study.steps)
    for (const [quantity, path] of step.quantities)
      if (quantity.spread !== null && !dimensions.has(path)) dimensions.set(path, dimensions.size);
  for (const input of board.inputs)
    if (input.spread !== null && !dimensions.has(input.id)) dimensions.set(input.id, dimensions.size);
  return { seed, dimensionOf: (id) => dimensions.get(id)!, dimensions: Math.max(1, dimensions.size) };
}

function sample(board: BoardModel, sens: Sensitivities, draws: DrawOptions, options: PlanOptions) {
  const { samples, cancelled, progress } = options;
  if (samples !== 'auto') return monteCarlo(board, { ...draws, samples, cancelled, progress });
  return adaptiveMonteCarlo(board, { ...draws, accurate: nearMargins(board, sens), cancelled, progress });
}

/** So many standard uncertainties away, the last digit of an interval's end is of no interest to anyone. */
const FAR = 5;

/** Outputs of the margins that have to be accurate: those which first order doesn't see far from their limits, but the nearest in any case. */
function nearMargins(board: BoardModel, sens: Sensitivities): string[] {
  const distances = (marginsOf(board, sens) ?? [])
    .map(({ id, margin, u }) => ({ id, distance: u > 0 ? Math.abs(margin) / u : Number.POSITIVE_INFINITY }))
    .sort((a, b) => a.distance - b.distance);
  return distances.filter(({ distance }, i) => i === 0 || distance < FAR).map(({ id }) => id);
}

function samplingOf(board: BoardModel, run: MonteCarlo | AdaptiveMonteCarlo): StepPlan['sampling'] {
  const { samples, seed, endings } = run;
  const common = { samples, seed, failed: samples - endings.solved };
  if (!('accuracy' in run)) return { ...common, adaptive: null };
  const { ended, blocks, accuracy } = run;
  const limitOf = (id: string) => board.limits.find(({ marginOutput }) => board.outputs[marginOutput].id === id)!.id;
  const inaccurate = [...accuracy].filter(([, { reached, tolerance }]) => !(reached <= tolerance));
  const ids = (outputs: Iterable<string>) => [...outputs].map(limitOf);
  return {
    ...common,
    adaptive: { ended, blocks, asked: ids(accuracy.keys()), inaccurate: ids(inaccurate.map(([id]) => id)) },
  };
}

function byDanger(a: Margin, b: Margin): number {
  return b.exceed.value - a.exceed.value || sigmas(a) - sigmas(b);
}

function sigmas({ margin, u }: Margin): number {
  return u.value > 0 ? margin.value / u.value : margin.value < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}

function outputUncertainty(
  board: BoardModel,
  sens: Sensitivities,
  run: MonteCarlo | undefined,
  id: string,
): number | null {
  return run?.outputs.get(id)?.u ?? budget(board, id, sens)?.u ?? null;
}

function outputFigure(board: BoardModel, sens: Sensitivities, id: string, u: number | null) {
  const { kind, unit } = board.outputs[board.indexOfOutput(id)];
  return figure(sens.y0[board.indexOfOutput(id)], u, kind, unit);
}

function limiterState(
  board: BoardModel,
  y: Float64Array,
  limiter: BoardLimiter,
  holder: string,
  u: (id: string) => number | null,
): LimiterState {
  const { kind, unit } = board.outputs[limiter.readsOutput];
  const readsId = board.outputs[limiter.readsOutput].id;
  const realId = board.outputs[limiter.realOutput].id;
  const real = y[limiter.realOutput];
  const reads = y[limiter.readsOutput];
  return {
    id: limiter.id,
    title: limiter.title,
    acts: limiter.acts,
    real: figure(real, u(realId), kind, unit),
    reads: figure(reads, u(readsId), kind, unit),
    allowed: figure(board.inputs[limiter.allowedSlot].value, null, kind, unit),
    ratio: real / reads,
    holds: limiter.id === holder,
  };
}

function heading({ id, title, about, changed }: Step) {
  return { id, title, about, changed };
}

function unsolved(step: Step, ending: Ending, faults: readonly Fault[], limiters: readonly LimiterState[]): StepPlan {
  return {
    ...heading(step),
    ending,
    operating: null,
    limiters,
    margins: [],
    binding: null,
    open: [],
    solution: null,
    sampling: null,
    faults,
    notes: [],
  };
}

function endingFault({ step, plate }: BoardModel, { ending, residual, passes }: Status): Fault {
  const data = { step: step.id, residual: residual.toExponential(1), passes };
  if (plate && plate.ending !== 'solved') return refuse(plateFault(plate.ending), data);
  if (plate && plate.lifted.length > 0) return refuse('board/no-contact', { ...data, dies: plate.lifted });
  if (ending === 'runaway') return refuse('board/runaway', data);
  return refuse(ending === 'infeasible' ? 'board/infeasible' : 'board/unsettled', data);
}
