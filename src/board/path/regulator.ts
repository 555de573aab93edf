import type { Ending } from '../../metrology/model.ts';
import { inductorRipple } from '../../physics/electrical/buck-ripple.ts';
import { rmsCurrent } from '../../physics/electrical/inductor-current.ts';
import { inputCapacitorCurrent } from '../../physics/electrical/input-capacitor-current.ts';
import { loadVoltage } from '../../physics/electrical/load-voltage.ts';
import type { RegulatorPart } from '../../study/schema/parts.ts';
import type { Outputs } from '../outputs.ts';
import type { Slots } from '../slots.ts';
import type { PathPart } from './path-part.ts';
import type { PathState } from './path-state.ts';
import { type PhaseLoss, type PhasePoint, phaseLoss } from './phase-loss.ts';

/** A switching regulator of N phases: input current = (power out + loss)/U_in. */
export class Regulator implements PathPart {
  readonly carries = false;
  readonly sensedNodes: readonly number[];
  readonly #phases: number;
  readonly #capacitors: number;
  readonly #slots: Int32Array;
  readonly #exponentSlot: number;
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
  #output = 0;
  #exponent = 0;
  #imbalance = 0;
  #inductance = 0;
  #fixed = 0;

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
    this.#slots = Int32Array.from(
      [part.output, part.imbalance, part.frequency, part.inductance, part.fixed, part.stage['junction-rise']],
      (quantity) => slots.of(quantity),
    );
    this.#exponentSlot = slots.maybe(part['output-exponent']);
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

  load(x: Float64Array): boolean {
    const s = this.#slots;
    this.#output = x[s[0]];
    this.#imbalance = x[s[1]];
    this.#point.frequency = x[s[2]];
    this.#inductance = x[s[3]];
    this.#fixed = x[s[4]];
    this.#point.junctionRise = x[s[5]];
    this.#exponent = this.#exponentSlot < 0 ? 0 : x[this.#exponentSlot];
    return (
      this.#output > 0 && this.#point.frequency > 0 && this.#inductance > 0 && this.#fixed >= 0 && this.#loss.load(x)
    );
  }

  draw(state: PathState): Ending {
    const { index } = this;
    const outputVoltage = state.voltage[index];
    const inputVoltage = state.voltage[this.feeder];
    if (!(inputVoltage > outputVoltage)) return 'infeasible';
    this.#set(state, state.delivered[index] / this.#phases);
    const ending = this.#loss.evaluate(this.#point);
    const stages = this.#phases * this.#loss.stage + this.#fixed;
    const inductors = this.#phases * this.#loss.inductor;
    const loss = stages + inductors;
    state.drawn[index] = (outputVoltage * state.delivered[index] + loss) / inputVoltage;
    state.loss[index] = loss;
    state.heat[this.stageNode] += stages;
    state.heat[this.inductorNode] += inductors;
    return ending;
  }

  drop(state: PathState): void {
    // Most rails don't follow the scale, and a power is the slowest thing here.
    state.voltage[this.index] =
      this.#exponent === 0 ? this.#output : loadVoltage(this.#output, state.scale, this.#exponent);
  }

  /** Everything that is asked of the busiest phase and of the input capacitors. */
  write(state: PathState, y: Float64Array): Ending {
    const share = state.delivered[this.index] / this.#phases;
    const busiest = share * (1 + this.#imbalance);
    this.#set(state, busiest);
    const ending = this.#loss.evaluate(this.#point);
    const { ripple, duty } = this.#point;
    const o = this.#outputs;
    y[o[0]] = busiest;
    y[o[1]] = ripple;
    y[o[2]] = this.#loss.junction;
    y[o[3]] = rmsCurrent(busiest, ripple);
    y[o[4]] = inputCapacitorCurrent(this.#phases, duty, state.delivered[this.index], ripple) / this.#capacitors;
    return ending;
  }

  #set(state: PathState, current: number): void {
    const point = this.#point;
    const outputVoltage = state.voltage[this.index];
    point.inputVoltage = state.voltage[this.feeder];
    point.duty = outputVoltage / point.inputVoltage;
    point.ripple = inductorRipple(point.inputVoltage, outputVoltage, this.#inductance, point.frequency);
    point.current = current;
    point.stageTemperature = state.temperature[this.stageNode];
    point.inductorTemperature = state.temperature[this.inductorNode];
  }
}
