import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import type { Margin as BareMargin } from '../metrology/margin.ts';
import { normalBelow } from '../metrology/probability.ts';
import { figure } from '../steps/figure.ts';
import { writeMargin } from '../steps/margin-figures.ts';
import type { Figure, LimiterState, Margin, StepPlan } from '../steps/step-plan.ts';
import type { Step } from '../study/study.ts';

/** A step behind a dial that is being turned: one evaluation gives the values at another power, long before the uncertainties are worked out anew. */
export class TurningBoard {
  readonly #board: BoardModel | null;
  readonly #limiter: string;

  /** @param limiter the limiter whose real power is dialled */
  constructor(step: Step, limiter: string) {
    const realPower = { kind: 'power', value: 1, unit: 'W', spread: null, text: '', source: 'dialled' } as const;
    const assembly = assembleBoard(step, { limiter, realPower });
    this.#board = assembly.ok ? assembly.board : null;
    this.#limiter = limiter;
  }

  /** `plan` at another real power [W]: new values, and its uncertainties as they were. Null where there is no operating point, or no plan to start from. */
  turn(plan: StepPlan, power: number): StepPlan | null {
    const board = this.#board;
    if (!board || !plan.operating || !plan.solution) return null;
    const x = startValues(board);
    x[board.indexOfInput('dial')] = power;
    const { y, status } = evaluateAt(board, x);
    if (status.ending !== 'solved') return null;

    const value = (id: string) => y[board.indexOfOutput(id)];
    const of = (id: string, { u }: Figure) => {
      const { kind, unit } = board.outputs[board.indexOfOutput(id)];
      return figure(value(id), u, kind, unit);
    };
    const { holder } = board;
    const { operating, solution } = plan;
    const margins = plan.margins.map((margin) => turnMargin(board, y, margin)).sort(byDanger);
    return {
      ...plan,
      operating: {
        scale: of('scale', operating.scale),
        holder,
        holderTitle: board.limiters.find(({ id }) => id === holder)?.title ?? 'demand',
        processorPower: of('processor-power', operating.processorPower),
        wallPower: of('wall-power', operating.wallPower),
      },
      limiters: plan.limiters.map((limiter) => turnLimiter(board, y, limiter, this.#limiter)),
      margins,
      binding: margins[0]?.id ?? null,
      open: plan.open.map((open) => ({ ...open, value: open.value && of(open.of, open.value) })),
      solution: {
        residual: status.residual,
        passes: status.passes,
        wallPower: of('wall-power', solution.wallPower),
        heat: of('heat', solution.heat),
        imbalance: Math.abs(value('wall-power') - value('heat')) / value('wall-power'),
      },
      sampling: null,
    };
  }
}

/** The limiter that is dialled holds its real power exactly. */
function turnLimiter(board: BoardModel, y: Float64Array, old: LimiterState, dialled: string): LimiterState {
  const { readsOutput, realOutput } = board.limiters.find(({ id }) => id === old.id)!;
  const { kind, unit } = board.outputs[readsOutput];
  return {
    ...old,
    real: figure(y[realOutput], old.id === dialled ? null : old.real.u, kind, unit),
    reads: figure(y[readsOutput], old.reads.u, kind, unit),
    ratio: y[realOutput] / y[readsOutput],
    holds: old.id === board.holder,
  };
}

/** The interval moves with the margin and keeps its width. */
function turnMargin(board: BoardModel, y: Float64Array, old: Margin): Margin {
  const limit = board.limits.find(({ id }) => id === old.id)!;
  const { id, hold } = board.outputs[limit.marginOutput];
  const margin = y[limit.marginOutput];
  const moved = margin - old.margin.value;
  const u = old.u.value;
  const bare: BareMargin = {
    id,
    hold: hold!,
    value: y[limit.valueOutput],
    limit: y[board.indexOfOutput(hold!.thresholdOutput)],
    margin,
    u,
    interval: { low: old.interval.low.value + moved, high: old.interval.high.value + moved },
    shortest: { low: old.shortest.low.value + moved, high: old.shortest.high.value + moved },
    exceed: u > 0 ? normalBelow(-margin / u) : margin < 0 ? 1 : 0,
    exceedBounds: null,
    method: 'first-order',
    why: 'alone',
    disagree: null,
    degreesOfFreedom: old.degreesOfFreedom ?? Number.POSITIVE_INFINITY,
    bent: [],
  };
  return writeMargin(board, bare, (output) => (output === hold!.valueOutput ? old.value.u : old.limit.u));
}

/** As a whole plan sorts them: most likely exceeded first, then the one with the fewest standard uncertainties left. */
function byDanger(a: Margin, b: Margin): number {
  return b.exceed.value - a.exceed.value || a.margin.value / a.u.value - b.margin.value / b.u.value;
}
