import type { Ending } from '../../metrology/model.ts';
import { supplyVoltage } from '../../physics/electrical/supply-droop.ts';
import type { SupplyPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import type { PathState } from './path-state.ts';

/** A supply: U = U0 − I·Rs; power from the wall is power out over efficiency, and the difference heats its node. */
export class Supply implements PathPart {
  readonly feeder = -1;
  readonly carries = true;
  readonly sensedNodes = [];
  readonly #powerOutput: number;
  readonly #slots: [voltage: number, resistance: number, efficiency: number];
  #noLoadVoltage = 0;
  #resistance = 0;
  #efficiency = 1;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly node: number,
    part: SupplyPart,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.#slots = [slots.of(part.voltage), slots.of(part.resistance), slots.of(part.efficiency)];
    this.#powerOutput = outputs.add(`parts.${id}.power`, 'power', 'W', `power out of ${part.title ?? id}`);
  }

  load(x: Float64Array): boolean {
    this.#noLoadVoltage = x[this.#slots[0]];
    this.#resistance = x[this.#slots[1]];
    this.#efficiency = x[this.#slots[2]];
    return this.#noLoadVoltage > 0 && this.#resistance >= 0 && this.#efficiency > 0 && this.#efficiency <= 1;
  }

  draw(state: PathState): Ending {
    const { index } = this;
    const out = state.voltage[index] * state.delivered[index];
    const loss = out / this.#efficiency - out;
    state.drawn[index] = 0;
    state.loss[index] = loss;
    state.heat[this.node] += loss;
    return state.voltage[index] > 0 ? 'solved' : 'infeasible';
  }

  drop(state: PathState): void {
    state.voltage[this.index] = supplyVoltage(this.#noLoadVoltage, state.delivered[this.index], this.#resistance);
  }

  /** Power taken from the wall [W]. */
  wallPower(state: PathState): number {
    return (state.voltage[this.index] * state.delivered[this.index]) / this.#efficiency;
  }

  write(state: PathState, y: Float64Array): Ending {
    y[this.#powerOutput] = state.voltage[this.index] * state.delivered[this.index];
    return 'solved';
  }
}
