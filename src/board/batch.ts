import type { Batch, Ending, Status } from '../metrology/model.ts';
import type { Ties } from '../metrology/ties.ts';
import type { Step } from '../study/study.ts';
import type { HeatNetwork } from './heat/network.ts';
import { lanes, table } from './lanes.ts';
import type { BoardLimiter } from './limiters.ts';
import type { Limits } from './limits.ts';
import type { Outputs } from './outputs.ts';
import { CoupledPass } from './pass.ts';
import { fail, type PathState } from './path/path-state.ts';
import type { PowerPath } from './power-path.ts';
import type { PartResults, WholeResults } from './results.ts';
import type { Slots } from './slots.ts';
import { BoardSolver } from './solve.ts';

/** Largest remaining change of one pass at a draw, in the units of the pass's residual: far below what drawing leaves uncertain. */
const drawTolerance = 1e-11;

/** Something beside power path and heat path that the heat path may depend on: its numbers are taken first. */
export interface Attachment {
  /** A lane whose numbers can't be is marked. */
  load(state: Pick<PathState, 'ending'>, from: number, to: number): void;
  write(y: readonly Float64Array[], from: number, to: number): void;
}

/** Everything that makes up a board, put together. */
export interface BoardPieces {
  readonly path: PowerPath;
  readonly heat: HeatNetwork;
  readonly attachments: readonly Attachment[];
  readonly limiters: readonly BoardLimiter[];
  readonly limits: Limits;
  readonly whole: WholeResults;
  readonly partResults: PartResults;
  /** What the inputs have in common; null: nothing. */
  readonly ties: Ties | null;
}

/** A board's evaluation, many lanes at once: take the numbers, solve, write the results. */
export class BoardBatch implements Batch {
  readonly lanes = lanes;
  readonly inputs: readonly Float64Array[];
  readonly outputs: readonly Float64Array[];
  readonly endings: Ending[];
  readonly #pieces: BoardPieces;
  /** The numbers that the board is reckoned with: the inputs, or what their ties make of them. */
  readonly #taken: readonly Float64Array[];
  /** The inputs of one lane. */
  readonly #x: Float64Array;
  readonly #regulating: readonly BoardLimiter[];
  readonly #demand: Float64Array;
  readonly #crest: Float64Array;
  readonly #pass: CoupledPass;
  readonly #solver: BoardSolver;

  constructor({ board }: Step, pieces: BoardPieces, slots: Slots, outputs: Outputs) {
    this.#pieces = pieces;
    this.#taken = slots.columns;
    this.inputs = pieces.ties ? table(slots.columns.length).columns : slots.columns;
    this.#x = new Float64Array(slots.columns.length);
    this.outputs = table(outputs.list.length).columns;
    this.#demand = slots.column(board.demand.scale);
    this.#crest = slots.column(board.demand.crest);
    this.#regulating = pieces.limiters.filter(({ acts }) => acts === 'regulate');
    this.#pass = new CoupledPass(pieces.path.parts, pieces.heat, this.#regulating);
    this.#solver = new BoardSolver(this.#pass, this.#demand);
    this.endings = this.#solver.ending;
    this.#warmUp(slots);
  }

  evaluate(count: number, tolerance = drawTolerance): void {
    const { state, residual } = this.#pass;
    const { endings } = this;
    residual.fill(Number.POSITIVE_INFINITY, 0, count);
    this.#load(count);
    for (let s = 0; s < count; s++) endings[s] = state.ending[s];
    this.#solver.solve(count, tolerance);
    for (let s = 0; s < count; s++) state.ending[s] = endings[s];
    this.#write(count);
    for (let s = 0; s < count; s++) {
      endings[s] = state.ending[s];
      if (endings[s] !== 'solved') for (let i = 0; i < this.outputs.length; i++) this.outputs[i][s] = Number.NaN;
    }
  }

  /** The limiter that holds in a lane; undefined when the demand is reached. */
  holder(lane: number): BoardLimiter | undefined {
    return this.#regulating[this.#pass.holder[lane]];
  }

  /** How a lane ended. */
  tell(lane: number, status: Status): Status {
    status.ending = this.endings[lane];
    status.residual = this.#pass.residual[lane];
    status.passes = this.#solver.passes[lane];
    return status;
  }

  /** Solves once at the best values, the slow way, and keeps that as the start of every evaluation to come. */
  #warmUp({ inputs }: Slots): void {
    inputs.forEach(({ value }, i) => {
      this.inputs[i][0] = value;
    });
    this.evaluate(1, 0);
    if (this.endings[0] === 'solved') this.#solver.remember();
  }

  #load(count: number): void {
    const { path, heat, attachments, limiters, ties } = this.#pieces;
    const { state } = this.#pass;
    for (let s = 0; s < count; s++) {
      state.ending[s] = 'solved';
      if (ties) this.#tie(ties, s);
    }
    for (let s = 0; s < count; s++) if (!(this.#demand[s] > 0 && this.#crest[s] >= 1)) fail(state, s, 'infeasible');
    for (let i = 0; i < attachments.length; i++) attachments[i].load(state, 0, count);
    heat.load(state, 0, count);
    for (let i = 0; i < path.parts.length; i++) path.parts[i].load(state, 0, count);
    for (let i = 0; i < limiters.length; i++) limiters[i].load(state, 0, count);
  }

  #tie(ties: Ties, lane: number): void {
    const x = this.#x;
    for (let i = 0; i < x.length; i++) x[i] = this.inputs[i][lane];
    const tied = ties.apply(x);
    for (let i = 0; i < x.length; i++) this.#taken[i][lane] = tied[i];
  }

  #write(count: number): void {
    const { path, attachments, limiters, limits, whole, partResults } = this.#pieces;
    const { state } = this.#pass;
    whole.write(this.#pass, path, this.outputs, 0, count);
    partResults.write(state, this.outputs, 0, count);
    for (let i = 0; i < limiters.length; i++) limiters[i].write(state, this.outputs, 0, count);
    for (let i = 0; i < attachments.length; i++) attachments[i].write(this.outputs, 0, count);
    limits.write(this.outputs, 0, count);
  }
}
