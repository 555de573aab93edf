import { leakagePower } from '../../physics/electrical/leakage.ts';
import type { LoadPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import { fail, type PathState } from './path-state.ts';

/** A consumer: P(s), plus leakage that grows with its own temperature; current P/U. */
export class Load implements PathPart {
  readonly carries = false;
  readonly sensedNodes: readonly number[];
  readonly follows: boolean;
  readonly #power: Float64Array;
  readonly #idle: Float64Array;
  readonly #leakage: { readonly power: Float64Array; readonly at: Float64Array; readonly fold: Float64Array } | null;
  readonly #powerOutput: number;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly feeder: number,
    readonly node: number,
    part: LoadPart,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.sensedNodes = part.leakage ? [node] : [];
    this.follows = part.follows === 'processor';
    this.#power = slots.column(part.power);
    this.#idle = slots.column(part.idle, 0);
    const { leakage } = part;
    this.#leakage = leakage
      ? { power: slots.column(leakage.power), at: slots.column(leakage.at), fold: slots.column(leakage['e-fold']) }
      : null;
    this.#powerOutput = outputs.add(`parts.${id}.power`, 'power', 'W', `power of ${part.title ?? id}`);
  }

  load(state: PathState, from: number, to: number): void {
    const leakage = this.#leakage;
    for (let s = from; s < to; s++) {
      const sound =
        this.#power[s] >= 0 && this.#idle[s] >= 0 && (!leakage || (leakage.power[s] >= 0 && leakage.fold[s] > 0));
      if (!sound) fail(state, s, 'infeasible');
    }
  }

  draw(state: PathState, from: number, to: number): void {
    const { index, node, follows } = this;
    const { scale } = state;
    const above = state.voltage[this.feeder];
    const drawn = state.drawn[index];
    const loss = state.loss[index];
    const temperature = state.temperature[node];
    const heat = state.heat.columns[node];
    const nominal = this.#power;
    const idle = this.#idle;
    const leakage = this.#leakage;
    for (let s = from; s < to; s++) {
      let power = follows ? idle[s] + (nominal[s] - idle[s]) * scale[s] : nominal[s];
      if (leakage && leakage.power[s] > 0)
        power += leakagePower(leakage.power[s], temperature[s], leakage.at[s], leakage.fold[s]);
      const voltage = above[s];
      drawn[s] = power / voltage;
      loss[s] = power;
      heat[s] += power;
      if (!(voltage > 0 && power >= 0)) fail(state, s, 'infeasible');
      // Only leakage gets this far.
      else if (!(power < 1e9)) fail(state, s, 'runaway');
    }
  }

  drop(state: PathState, from: number, to: number): void {
    const voltage = state.voltage[this.index];
    const above = state.voltage[this.feeder];
    for (let s = from; s < to; s++) voltage[s] = above[s];
  }

  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const power = y[this.#powerOutput];
    const loss = state.loss[this.index];
    for (let s = from; s < to; s++) power[s] = loss[s];
  }
}
