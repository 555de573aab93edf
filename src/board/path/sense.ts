import type { Ending } from '../../metrology/model.ts';
import { dividerGain } from '../../physics/electrical/divider.ts';
import { resistanceAt } from '../../physics/electrical/resistance-at-temperature.ts';
import type { SensePart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import { referenceTemperature } from './conductor.ts';
import type { PathPart } from './path-part.ts';
import type { PathState } from './path-state.ts';

/** A sense point: resistors in parallel, in series with the current; limiters read the voltage across them. */
export class Sense implements PathPart {
  readonly carries = true;
  readonly sensedNodes: readonly number[];
  readonly resistors: number;
  readonly #resistanceSlots: Int32Array;
  readonly #jointSlots: Int32Array;
  readonly #coefficientSlots: Int32Array;
  readonly #dividerSlots: [series: number, parallel: number, input: number] | null;
  readonly #dissipationOutputs: Int32Array;
  readonly #effectiveOutput: number;
  readonly #resistance20: Float64Array;
  readonly #joint: Float64Array;
  readonly #coefficient: Float64Array;
  /** Gain of the divider on the sense lines [1]. */
  gain = 1;
  /** Resistance of all fitted resistors in parallel, as it was in the last pass [Ω]. */
  effective = 0;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly feeder: number,
    readonly node: number,
    part: SensePart,
    slots: Slots,
    outputs: Outputs,
  ) {
    const { fitted, divider } = part;
    this.resistors = fitted.length;
    this.sensedNodes = fitted.some((resistor) => resistor['temperature-coefficient']) ? [node] : [];
    this.#resistanceSlots = Int32Array.from(fitted, (resistor) => slots.of(resistor.resistance));
    this.#jointSlots = Int32Array.from(fitted, (resistor) => slots.maybe(resistor.joint));
    this.#coefficientSlots = Int32Array.from(fitted, (resistor) => slots.maybe(resistor['temperature-coefficient']));
    this.#dividerSlots = divider
      ? [slots.of(divider.series), slots.of(divider.parallel), slots.maybe(divider.input)]
      : null;
    const title = part.title ?? id;
    this.#dissipationOutputs = Int32Array.from(fitted, (_, i) =>
      outputs.add(`parts.${id}.fitted.${i}.dissipation`, 'power', 'mW', `dissipation of ${title}, resistor ${i + 1}`),
    );
    this.#effectiveOutput = outputs.add(
      `parts.${id}.effective-resistance`,
      'resistance',
      'mΩ',
      `what ${title} really is`,
    );
    this.#resistance20 = new Float64Array(fitted.length);
    this.#joint = new Float64Array(fitted.length);
    this.#coefficient = new Float64Array(fitted.length);
  }

  load(x: Float64Array): boolean {
    let sound = true;
    this.effective = 0;
    for (let i = 0; i < this.resistors; i++) {
      this.#resistance20[i] = x[this.#resistanceSlots[i]];
      this.#joint[i] = this.#jointSlots[i] < 0 ? 0 : x[this.#jointSlots[i]];
      this.#coefficient[i] = this.#coefficientSlots[i] < 0 ? 0 : x[this.#coefficientSlots[i]];
      sound = sound && this.#resistance20[i] > 0 && this.#joint[i] >= 0;
    }
    const divider = this.#dividerSlots;
    this.gain = divider
      ? dividerGain(x[divider[0]], x[divider[1]], divider[2] < 0 ? Number.POSITIVE_INFINITY : x[divider[2]])
      : 1;
    return sound && this.gain > 0;
  }

  draw(state: PathState): Ending {
    const { index } = this;
    const current = state.delivered[index];
    let conductance = 0;
    for (let i = 0; i < this.resistors; i++) conductance += 1 / this.#branch(i, state);
    this.effective = 1 / conductance;
    const loss = current * current * this.effective;
    state.drawn[index] = current;
    state.loss[index] = loss;
    state.heat[this.node] += loss;
    return conductance > 0 ? 'solved' : 'infeasible';
  }

  drop(state: PathState): void {
    state.voltage[this.index] = state.voltage[this.feeder] - state.delivered[this.index] * this.effective;
  }

  /** Power lost in one of the fitted resistors itself, its joint not counted [W]. */
  dissipation(state: PathState, i: number): number {
    const branchCurrent = (state.delivered[this.index] * this.effective) / this.#branch(i, state);
    return branchCurrent * branchCurrent * (this.#branch(i, state) - this.#joint[i]);
  }

  write(state: PathState, y: Float64Array): Ending {
    for (let i = 0; i < this.resistors; i++) y[this.#dissipationOutputs[i]] = this.dissipation(state, i);
    y[this.#effectiveOutput] = this.effective;
    return 'solved';
  }

  #branch(i: number, state: PathState): number {
    return (
      resistanceAt(this.#resistance20[i], this.#coefficient[i], state.temperature[this.node], referenceTemperature) +
      this.#joint[i]
    );
  }
}
