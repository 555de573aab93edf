import { inductorRipple } from '../../physics/electrical/buck-ripple.ts';
import { rmsCurrent } from '../../physics/electrical/inductor-current.ts';
import { inputCapacitorCurrent } from '../../physics/electrical/input-capacitor-current.ts';
import { loadVoltage } from '../../physics/electrical/load-voltage.ts';
import type { RegulatorPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import { fail, type PathState } from './path-state.ts';
import { type PhaseLoss, type PhasePoint, phaseLoss } from './phase-loss.ts';

/** A switching regulator of N phases: input current = (power out + loss)/U_in. */
export class Regulator implements PathPart {
  readonly carries = false;
  readonly sensedNodes: readonly number[];
  readonly #phases: number;
  readonly #capacitors: number;
  readonly #output: Float64Array;
  /** Null: the rail doesn't follow the scale. */
  readonly #exponent: Float64Array | null;
  readonly #imbalance: Float64Array;
  readonly #frequency: Float64Array;
  readonly #inductance: Float64Array;
  readonly #fixed: Float64Array;
  readonly #junctionRise: Float64Array;
  readonly #loss: PhaseLoss;
  readonly #point: PhasePoint = {
    current: 0,
    ripple: 0,
    duty: 0,
    inputVoltage: 0,
    frequency: 0,
    stageTemperature: 0,
    inductorTemperature: 0,
    junctionRise: 0,
  };
  readonly #outputs: Int32Array;

  constructor(
    readonly id: string,
    readonly index: number,
    readonly feeder: number,
    readonly stageNode: number,
    readonly inductorNode: number,
    part: RegulatorPart,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.sensedNodes = [stageNode, inductorNode];
    this.#phases = part.phases;
    this.#capacitors = part['input-capacitors'].count;
    this.#output = slots.column(part.output);
    const exponent = part['output-exponent'];
    this.#exponent = exponent ? slots.column(exponent) : null;
    this.#imbalance = slots.column(part.imbalance);
    this.#frequency = slots.column(part.frequency);
    this.#inductance = slots.column(part.inductance);
    this.#fixed = slots.column(part.fixed);
    this.#junctionRise = slots.column(part.stage['junction-rise']);
    this.#loss = phaseLoss(part.losses, slots);
    const title = part.title ?? id;
    this.#outputs = Int32Array.of(
      outputs.add(`parts.${id}.phase-current`, 'current', 'A', `current of the busiest phase of ${title}`),
      outputs.add(`parts.${id}.phase-ripple`, 'current', 'A', `peak-to-peak ripple of one phase of ${title}`),
      outputs.add(`parts.${id}.junction-temperature`, 'temperature', '°C', `junction of the busiest stage of ${title}`),
      outputs.add(`parts.${id}.inductor-rms`, 'current', 'A', `rms current of the busiest inductor of ${title}`),
      outputs.add(`parts.${id}.capacitor-ripple`, 'current', 'A', `rms ripple of one input capacitor of ${title}`),
    );
  }

  load(state: PathState, from: number, to: number): void {
    for (let s = from; s < to; s++) {
      const sound =
        this.#output[s] > 0 &&
        this.#frequency[s] > 0 &&
        this.#inductance[s] > 0 &&
        this.#fixed[s] >= 0 &&
        this.#loss.load(s);
      if (!sound) fail(state, s, 'infeasible');
    }
  }

  draw(state: PathState, from: number, to: number): void {
    const { index, stageNode, inductorNode } = this;
    const phases = this.#phases;
    const phaseLoss = this.#loss;
    const fixed = this.#fixed;
    const delivered = state.delivered[index];
    const voltage = state.voltage[index];
    const above = state.voltage[this.feeder];
    const drawn = state.drawn[index];
    const lost = state.loss[index];
    const stageHeat = state.heat.columns[stageNode];
    const inductorHeat = state.heat.columns[inductorNode];
    for (let s = from; s < to; s++) {
      this.#set(state, s, delivered[s] / phases);
      const ending = phaseLoss.evaluate(this.#point, s);
      const stages = phases * phaseLoss.stage + fixed[s];
      const inductors = phases * phaseLoss.inductor;
      const loss = stages + inductors;
      drawn[s] = (voltage[s] * delivered[s] + loss) / above[s];
      lost[s] = loss;
      stageHeat[s] += stages;
      inductorHeat[s] += inductors;
      if (!(above[s] > voltage[s])) fail(state, s, 'infeasible');
      else if (ending !== 'solved') fail(state, s, ending);
    }
  }

  drop(state: PathState, from: number, to: number): void {
    const { scale } = state;
    const voltage = state.voltage[this.index];
    const output = this.#output;
    const exponent = this.#exponent;
    for (let s = from; s < to; s++)
      // Most rails don't follow the scale, and a power is the slowest thing here.
      voltage[s] = exponent && exponent[s] !== 0 ? loadVoltage(output[s], scale[s], exponent[s]) : output[s];
  }

  /** Everything that is asked of the busiest phase and of the input capacitors. */
  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const point = this.#point;
    const delivered = state.delivered[this.index];
    const o = this.#outputs;
    for (let s = from; s < to; s++) {
      const busiest = (delivered[s] / this.#phases) * (1 + this.#imbalance[s]);
      this.#set(state, s, busiest);
      const ending = this.#loss.evaluate(point, s);
      y[o[0]][s] = busiest;
      y[o[1]][s] = point.ripple;
      y[o[2]][s] = this.#loss.junction;
      y[o[3]][s] = rmsCurrent(busiest, point.ripple);
      y[o[4]][s] = inputCapacitorCurrent(this.#phases, point.duty, delivered[s], point.ripple) / this.#capacitors;
      if (ending !== 'solved') fail(state, s, ending);
    }
  }

  #set(state: PathState, lane: number, current: number): void {
    const point = this.#point;
    const outputVoltage = state.voltage[this.index][lane];
    const inputVoltage = state.voltage[this.feeder][lane];
    const frequency = this.#frequency[lane];
    point.inputVoltage = inputVoltage;
    point.frequency = frequency;
    point.duty = outputVoltage / inputVoltage;
    point.ripple = inductorRipple(inputVoltage, outputVoltage, this.#inductance[lane], frequency);
    point.current = current;
    point.stageTemperature = state.temperature[this.stageNode][lane];
    point.inductorTemperature = state.temperature[this.inductorNode][lane];
    point.junctionRise = this.#junctionRise[lane];
  }
}
