import { readPower } from '../physics/electrical/sense-reading.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { PowerLimiter, TemperatureLimiter } from '../study/schema/limiters.ts';
import type { Outputs } from './outputs.ts';
import { fail, type PathState } from './path/path-state.ts';
import type { Sense } from './path/sense.ts';
import type { Slots } from './slots.ts';

/** What holds the processor, switches it off, or warns. */
export interface BoardLimiter {
  readonly id: string;
  readonly title: string;
  readonly acts: 'regulate' | 'trip' | 'warn';
  /** Heat nodes it reads. */
  readonly sensedNodes: readonly number[];
  readonly kind: 'power' | 'temperature';
  readonly readsOutput: number;
  readonly realOutput: number;
  /** Place of the allowed value among the inputs. */
  readonly allowedSlot: number;
  /** A lane whose numbers can't be a limiter is marked. */
  load(state: PathState, from: number, to: number): void;
  /** Allowed over read: 1 at the point where it holds, more than 1 where it leaves room; from ambient up for temperatures. */
  room(state: PathState, ambient: Float64Array, lane: number): number;
  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void;
}

interface Reading {
  readonly sense: Sense;
  readonly assumed: Float64Array;
  readonly gain: Float64Array;
  readonly offset: Float64Array;
}

/** P_read = Σ U_bus·(U_sense·g + U_offset)/R_assumed over its readings; the real power is Σ U_bus·I over its sense points. */
export class PowerLimiterOnBoard implements BoardLimiter {
  readonly kind = 'power';
  readonly sensedNodes = [];
  readonly acts: BoardLimiter['acts'];
  readonly title: string;
  readonly readsOutput: number;
  readonly realOutput: number;
  readonly allowedSlot: number;
  readonly #reads: readonly Reading[];
  /** The sense points it reads, each once. */
  readonly #points: readonly Sense[];
  /** Null: it takes the average. */
  readonly #crest: Float64Array | null;
  /** Whether its real power is dialled, instead of held at what its reading allows. */
  readonly #dialled: boolean;
  readonly #limit: Float64Array;

  constructor(
    readonly id: string,
    limiter: PowerLimiter,
    senses: ReadonlyMap<string, Sense>,
    crest: Quantity,
    dial: Quantity | undefined,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.acts = limiter.acts;
    this.title = limiter.title ?? id;
    this.allowedSlot = slots.of(limiter.allowed);
    this.#dialled = dial !== undefined;
    this.#limit = slots.column(dial ?? limiter.allowed);
    this.#crest = limiter.takes === 'peak' ? slots.column(crest) : null;
    this.#reads = limiter.reads.map((read) => ({
      sense: senses.get(read.sense)!,
      assumed: slots.column(read.assumed),
      gain: slots.column(read.gain, 1),
      offset: slots.column(read.offset, 0),
    }));
    this.#points = [...new Set(this.#reads.map(({ sense }) => sense))];
    this.readsOutput = outputs.add(`limiters.${id}.reads`, 'power', 'W', `what ${this.title} reads`);
    this.realOutput = outputs.add(`limiters.${id}.real`, 'power', 'W', `what really flows past ${this.title}`);
  }

  load(state: PathState, from: number, to: number): void {
    for (let s = from; s < to; s++) {
      let sound = this.#limit[s] > 0 && this.#crestOf(s) > 0;
      for (let i = 0; i < this.#reads.length; i++) sound = sound && this.#reads[i].assumed[s] > 0;
      if (!sound) fail(state, s, 'infeasible');
    }
  }

  #crestOf(lane: number): number {
    return this.#crest ? this.#crest[lane] : 1;
  }

  /** What it reads, crest included where it takes the peak [W]. */
  reading(state: PathState, s: number): number {
    let sum = 0;
    for (let i = 0; i < this.#reads.length; i++) {
      const { sense, assumed, gain, offset } = this.#reads[i];
      const { index } = sense;
      sum += readPower(
        state.voltage[index][s],
        state.delivered[index][s],
        state.resistance[index][s],
        sense.gain[s] * gain[s],
        offset[s],
        assumed[s],
      );
    }
    return sum * this.#crestOf(s);
  }

  /** What really flows through its sense points, crest included where it takes the peak [W]. */
  real(state: PathState, s: number): number {
    let sum = 0;
    for (let i = 0; i < this.#points.length; i++) {
      const { index } = this.#points[i];
      sum += state.voltage[index][s] * state.delivered[index][s];
    }
    return sum * this.#crestOf(s);
  }

  room(state: PathState, _ambient: Float64Array, s: number): number {
    const power = this.#dialled ? this.real(state, s) : this.reading(state, s);
    // An offset may pull a reading below zero: that refuses nothing.
    return power > 0 ? this.#limit[s] / power : Number.POSITIVE_INFINITY;
  }

  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const reads = y[this.readsOutput];
    const real = y[this.realOutput];
    for (let s = from; s < to; s++) {
      reads[s] = this.reading(state, s);
      real[s] = this.real(state, s);
    }
  }
}

/** Holds, trips or warns on the temperature of a node. */
export class TemperatureLimiterOnBoard implements BoardLimiter {
  readonly kind = 'temperature';
  readonly sensedNodes: readonly number[];
  readonly acts: BoardLimiter['acts'];
  readonly title: string;
  readonly readsOutput: number;
  readonly realOutput: number;
  readonly allowedSlot: number;
  readonly #allowed: Float64Array;
  /** The node's own result: `state` holds only the temperatures that the solution needs. */
  readonly #temperatureOutput: number;

  constructor(
    readonly id: string,
    limiter: TemperatureLimiter,
    readonly node: number,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.acts = limiter.acts;
    this.sensedNodes = [node];
    this.title = limiter.title ?? id;
    this.allowedSlot = slots.of(limiter['allowed-temperature']);
    this.#allowed = slots.columns[this.allowedSlot];
    this.#temperatureOutput = outputs.find(`heat.nodes.${limiter.node}.temperature`);
    this.readsOutput = outputs.add(`limiters.${id}.reads`, 'temperature', '°C', `what ${this.title} reads`);
    this.realOutput = this.readsOutput;
  }

  load(state: PathState, from: number, to: number): void {
    for (let s = from; s < to; s++) if (!(this.#allowed[s] > 0)) fail(state, s, 'infeasible');
  }

  room(state: PathState, ambient: Float64Array, s: number): number {
    return (this.#allowed[s] - ambient[s]) / (state.temperature[this.node][s] - ambient[s]);
  }

  write(_state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const reads = y[this.readsOutput];
    const temperature = y[this.#temperatureOutput];
    for (let s = from; s < to; s++) reads[s] = temperature[s];
  }
}
