import type { Ending } from '../../metrology/model.ts';
import { resistanceAt } from '../../physics/electrical/resistance-at-temperature.ts';
import { wireResistance } from '../../physics/electrical/wire-gauge.ts';
import type { ConductorPart } from '../../study/schema/parts.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import type { PathState } from './path-state.ts';

/** Reference of every resistance in a study unless its field says otherwise [K]. */
export const referenceTemperature = 293.15;

/** Temperature coefficient of annealed copper at 20 °C [1/K]. Source: IEC 60028:1925. */
const copperCoefficient = 3.93e-3;

/** A cable, connector, fuse or trace: R(T) in series, loss I²·R. */
export class Conductor implements PathPart {
  readonly carries = true;
  readonly sensedNodes: readonly number[];
  readonly #resistanceSlot: number;
  readonly #gaugeSlot: number;
  readonly #lengthSlot: number;
  readonly #coefficientSlot: number;
  #resistance20 = 0;
  #coefficient = 0;
  #resistance = 0;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly feeder: number,
    readonly node: number,
    part: ConductorPart,
    slots: Slots,
  ) {
    this.sensedNodes = part.wire || part['temperature-coefficient'] ? [node] : [];
    this.#resistanceSlot = slots.maybe(part.resistance);
    this.#gaugeSlot = slots.maybe(part.wire?.gauge);
    this.#lengthSlot = slots.maybe(part.wire?.length);
    this.#coefficientSlot = slots.maybe(part['temperature-coefficient']);
  }

  load(x: Float64Array): boolean {
    const wired = this.#gaugeSlot >= 0;
    this.#resistance20 = wired ? wireResistance(x[this.#gaugeSlot], x[this.#lengthSlot]) : x[this.#resistanceSlot];
    this.#coefficient = this.#coefficientSlot >= 0 ? x[this.#coefficientSlot] : wired ? copperCoefficient : 0;
    this.#resistance = 0;
    return this.#resistance20 >= 0;
  }

  draw(state: PathState): Ending {
    const { index } = this;
    const current = state.delivered[index];
    this.#resistance = resistanceAt(
      this.#resistance20,
      this.#coefficient,
      state.temperature[this.node],
      referenceTemperature,
    );
    const loss = current * current * this.#resistance;
    state.drawn[index] = current;
    state.loss[index] = loss;
    state.heat[this.node] += loss;
    return this.#resistance >= 0 ? 'solved' : 'infeasible';
  }

  drop(state: PathState): void {
    state.voltage[this.index] = state.voltage[this.feeder] - state.delivered[this.index] * this.#resistance;
  }

  write(): Ending {
    return 'solved';
  }
}
