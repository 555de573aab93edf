import { dividerGain } from '../../physics/electrical/divider.ts';
import { resistanceAt } from '../../physics/electrical/resistance-at-temperature.ts';
import type { SensePart } from '../../study/schema/parts.ts';
import { column } from '../lanes.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import { dropAlong, referenceTemperature } from './conductor.ts';
import type { PathPart } from './path-part.ts';
import { fail, type PathState } from './path-state.ts';

interface FittedResistor {
  /** At the reference temperature [Ω]. */
  readonly resistance: Float64Array;
  readonly joint: Float64Array;
  readonly coefficient: Float64Array;
}

/** A sense point: resistors in parallel, in series with the current; limiters read the voltage across them. */
export class Sense implements PathPart {
  readonly carries = true;
  readonly sensedNodes: readonly number[];
  readonly #fitted: readonly FittedResistor[];
  readonly #divider: {
    readonly series: Float64Array;
    readonly parallel: Float64Array;
    readonly input: Float64Array;
  } | null;
  readonly #dissipationOutputs: Int32Array;
  readonly #effectiveOutput: number;
  /** Gain of the divider on the sense lines [1]. */
  readonly gain = column(1);

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
    this.sensedNodes = fitted.some((resistor) => resistor['temperature-coefficient']) ? [node] : [];
    this.#fitted = fitted.map((resistor) => ({
      resistance: slots.column(resistor.resistance),
      joint: slots.column(resistor.joint, 0),
      coefficient: slots.column(resistor['temperature-coefficient'], 0),
    }));
    this.#divider = divider
      ? {
          series: slots.column(divider.series),
          parallel: slots.column(divider.parallel),
          input: slots.column(divider.input, Number.POSITIVE_INFINITY),
        }
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
  }

  load(state: PathState, from: number, to: number): void {
    for (const { resistance, joint } of this.#fitted)
      for (let s = from; s < to; s++) if (!(resistance[s] > 0 && joint[s] >= 0)) fail(state, s, 'infeasible');
    const divider = this.#divider;
    if (!divider) return;
    for (let s = from; s < to; s++) {
      this.gain[s] = dividerGain(divider.series[s], divider.parallel[s], divider.input[s]);
      if (!(this.gain[s] > 0)) fail(state, s, 'infeasible');
    }
  }

  draw(state: PathState, from: number, to: number): void {
    const { index, node } = this;
    const delivered = state.delivered[index];
    const drawn = state.drawn[index];
    const loss = state.loss[index];
    const effective = state.resistance[index];
    const temperature = state.temperature[node];
    const heat = state.heat.columns[node];
    for (let s = from; s < to; s++) effective[s] = 0;
    for (let k = 0; k < this.#fitted.length; k++) {
      const resistor = this.#fitted[k];
      for (let s = from; s < to; s++) effective[s] += 1 / branchResistance(resistor, s, temperature[s]);
    }
    for (let s = from; s < to; s++) {
      const conductance = effective[s];
      const current = delivered[s];
      const resistance = 1 / conductance;
      const lost = current * current * resistance;
      effective[s] = resistance;
      drawn[s] = current;
      loss[s] = lost;
      heat[s] += lost;
      if (!(conductance > 0)) fail(state, s, 'infeasible');
    }
  }

  drop(state: PathState, from: number, to: number): void {
    dropAlong(state, this.index, this.feeder, from, to);
  }

  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const { index, node } = this;
    const delivered = state.delivered[index];
    const effective = state.resistance[index];
    const temperature = state.temperature[node];
    for (let k = 0; k < this.#fitted.length; k++) {
      const resistor = this.#fitted[k];
      const dissipation = y[this.#dissipationOutputs[k]];
      for (let s = from; s < to; s++) {
        const branch = branchResistance(resistor, s, temperature[s]);
        const current = (delivered[s] * effective[s]) / branch;
        // Of the resistor itself: its joint is not part of it.
        dissipation[s] = current * current * (branch - resistor.joint[s]);
      }
    }
    const resistance = y[this.#effectiveOutput];
    for (let s = from; s < to; s++) resistance[s] = effective[s];
  }
}

/** A fitted resistor and its joint at a temperature [Ω]. */
function branchResistance(
  { resistance, joint, coefficient }: FittedResistor,
  lane: number,
  temperature: number,
): number {
  return resistanceAt(resistance[lane], coefficient[lane], temperature, referenceTemperature) + joint[lane];
}
