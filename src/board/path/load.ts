import type { Ending } from '../../metrology/model.ts';
import { leakagePower } from '../../physics/electrical/leakage.ts';
import type { LoadPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import type { PathState } from './path-state.ts';

/** A consumer: P(s), plus leakage that grows with its own temperature; current P/U. */
export class Load implements PathPart {
  readonly carries = false;
  readonly sensedNodes: readonly number[];
  readonly follows: boolean;
  readonly #powerSlot: number;
  readonly #idleSlot: number;
  readonly #leakage: [power: number, at: number, eFold: number] | null;
  readonly #powerOutput: number;
  #power = 0;
  #idle = 0;
  #leakagePower = 0;
  #leakageAt = 0;
  #leakageFold = 1;

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
    this.#powerSlot = slots.of(part.power);
    this.#idleSlot = slots.maybe(part.idle);
    const { leakage } = part;
    this.#leakage = leakage ? [slots.of(leakage.power), slots.of(leakage.at), slots.of(leakage['e-fold'])] : null;
    this.#powerOutput = outputs.add(`parts.${id}.power`, 'power', 'W', `power of ${part.title ?? id}`);
  }

  load(x: Float64Array): boolean {
    this.#power = x[this.#powerSlot];
    this.#idle = this.#idleSlot < 0 ? 0 : x[this.#idleSlot];
    if (this.#leakage) {
      this.#leakagePower = x[this.#leakage[0]];
      this.#leakageAt = x[this.#leakage[1]];
      this.#leakageFold = x[this.#leakage[2]];
    }
    return this.#power >= 0 && this.#idle >= 0 && this.#leakagePower >= 0 && this.#leakageFold > 0;
  }

  draw(state: PathState): Ending {
    let power = this.follows ? this.#idle + (this.#power - this.#idle) * state.scale : this.#power;
    if (this.#leakagePower > 0)
      power += leakagePower(this.#leakagePower, state.temperature[this.node], this.#leakageAt, this.#leakageFold);
    const voltage = state.voltage[this.feeder];
    state.drawn[this.index] = power / voltage;
    state.loss[this.index] = power;
    state.heat[this.node] += power;
    if (!(voltage > 0 && power >= 0)) return 'infeasible';
    // Only leakage gets this far.
    return power < 1e9 ? 'solved' : 'runaway';
  }

  drop(state: PathState): void {
    state.voltage[this.index] = state.voltage[this.feeder];
  }

  write(state: PathState, y: Float64Array): Ending {
    y[this.#powerOutput] = state.loss[this.index];
    return 'solved';
  }
}
