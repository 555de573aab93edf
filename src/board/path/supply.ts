import { supplyVoltage } from '../../physics/electrical/supply-droop.ts';
import type { SupplyPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import { fail, type PathState } from './path-state.ts';

/** A supply: U = U0 − I·Rs; power from the wall is power out over efficiency, and the difference heats its node. */
export class Supply implements PathPart {
  readonly feeder = -1;
  readonly carries = true;
  readonly sensedNodes = [];
  readonly #powerOutput: number;
  readonly #noLoadVoltage: Float64Array;
  readonly #resistance: Float64Array;
  readonly #efficiency: Float64Array;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly node: number,
    part: SupplyPart,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.#noLoadVoltage = slots.column(part.voltage);
    this.#resistance = slots.column(part.resistance);
    this.#efficiency = slots.column(part.efficiency);
    this.#powerOutput = outputs.add(`parts.${id}.power`, 'power', 'W', `power out of ${part.title ?? id}`);
  }

  load(state: PathState, from: number, to: number): void {
    for (let s = from; s < to; s++) {
      const efficiency = this.#efficiency[s];
      const sound = this.#noLoadVoltage[s] > 0 && this.#resistance[s] >= 0 && efficiency > 0 && efficiency <= 1;
      if (!sound) fail(state, s, 'infeasible');
    }
  }

  draw(state: PathState, from: number, to: number): void {
    const { index, node } = this;
    const voltage = state.voltage[index];
    const delivered = state.delivered[index];
    const drawn = state.drawn[index];
    const loss = state.loss[index];
    const heat = state.heat.columns[node];
    const efficiency = this.#efficiency;
    for (let s = from; s < to; s++) {
      const out = voltage[s] * delivered[s];
      const lost = out / efficiency[s] - out;
      drawn[s] = 0;
      loss[s] = lost;
      heat[s] += lost;
      if (!(voltage[s] > 0)) fail(state, s, 'infeasible');
    }
  }

  drop(state: PathState, from: number, to: number): void {
    const voltage = state.voltage[this.index];
    const delivered = state.delivered[this.index];
    for (let s = from; s < to; s++)
      voltage[s] = supplyVoltage(this.#noLoadVoltage[s], delivered[s], this.#resistance[s]);
  }

  /** Power taken from the wall [W]. */
  wallPower(state: PathState, lane: number): number {
    return (state.voltage[this.index][lane] * state.delivered[this.index][lane]) / this.#efficiency[lane];
  }

  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const power = y[this.#powerOutput];
    const voltage = state.voltage[this.index];
    const delivered = state.delivered[this.index];
    for (let s = from; s < to; s++) power[s] = voltage[s] * delivered[s];
  }
}
