import { resistanceAt } from '../../physics/electrical/resistance-at-temperature.ts';
import { wireResistance } from '../../physics/electrical/wire-gauge.ts';
import type { ConductorPart } from '../../study/schema/parts.ts';
import { column } from '../lanes.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import { fail, type PathState } from './path-state.ts';

/** Reference of every resistance in a study unless its field says otherwise [K]. */
export const referenceTemperature = 293.15;

/** Temperature coefficient of annealed copper at 20 °C [1/K]. Source: IEC 60028:1925. */
const copperCoefficient = 3.93e-3;

/** A cable, connector, fuse or trace: R(T) in series, loss I²·R. */
export class Conductor implements PathPart {
  readonly carries = true;
  readonly sensedNodes: readonly number[];
  readonly #resistance: Float64Array;
  readonly #gauge: Float64Array | null;
  readonly #length: Float64Array;
  readonly #coefficient: Float64Array;
  readonly #resistance20 = column();

  constructor(
    readonly id: string,
    readonly index: number,
    readonly feeder: number,
    readonly node: number,
    part: ConductorPart,
    slots: Slots,
  ) {
    this.sensedNodes = part.wire || part['temperature-coefficient'] ? [node] : [];
    this.#resistance = slots.column(part.resistance);
    this.#gauge = part.wire ? slots.column(part.wire.gauge) : null;
    this.#length = slots.column(part.wire?.length);
    this.#coefficient = slots.column(part['temperature-coefficient'], part.wire ? copperCoefficient : 0);
  }

  load(state: PathState, from: number, to: number): void {
    for (let s = from; s < to; s++) {
      const resistance = this.#gauge ? wireResistance(this.#gauge[s], this.#length[s]) : this.#resistance[s];
      this.#resistance20[s] = resistance;
      if (!(resistance >= 0)) fail(state, s, 'infeasible');
    }
  }

  draw(state: PathState, from: number, to: number): void {
    const { index, node } = this;
    const delivered = state.delivered[index];
    const drawn = state.drawn[index];
    const loss = state.loss[index];
    const resistances = state.resistance[index];
    const temperature = state.temperature[node];
    const heat = state.heat.columns[node];
    const resistance20 = this.#resistance20;
    const coefficient = this.#coefficient;
    for (let s = from; s < to; s++) {
      const current = delivered[s];
      const resistance = resistanceAt(resistance20[s], coefficient[s], temperature[s], referenceTemperature);
      const lost = current * current * resistance;
      resistances[s] = resistance;
      drawn[s] = current;
      loss[s] = lost;
      heat[s] += lost;
      if (!(resistance >= 0)) fail(state, s, 'infeasible');
    }
  }

  drop(state: PathState, from: number, to: number): void {
    dropAlong(state, this.index, this.feeder, from, to);
  }

  write(): void {}
}

/** The voltage that a series resistance takes. */
export function dropAlong(state: PathState, index: number, feeder: number, from: number, to: number): void {
  const voltage = state.voltage[index];
  const above = state.voltage[feeder];
  const delivered = state.delivered[index];
  const resistance = state.resistance[index];
  for (let s = from; s < to; s++) voltage[s] = above[s] - delivered[s] * resistance[s];
}
