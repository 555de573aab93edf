import { readPower } from '../physics/electrical/sense-reading.ts';
import type { PowerLimiter, TemperatureLimiter } from '../study/schema/limiters.ts';
import type { Outputs } from './outputs.ts';
import type { PathState } from './path/path-state.ts';
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
  load(x: Float64Array): boolean;
  /** Allowed over read: 1 at the point where it holds, more than 1 where it leaves room; from ambient up for temperatures. */
  room(state: PathState, ambient: number): number;
  write(state: PathState, y: Float64Array): void;
}

interface Reading {
  readonly sense: Sense;
  readonly assumed: number;
  readonly gain: number;
  readonly offset: number;
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
  readonly #crestSlot: number;
  /** −1: held at what its reading allows; else the place of the real power that is dialled. */
  readonly #dialSlot: number;
  readonly #numbers: Float64Array;
  #limit = 0;
  #crest = 1;

  constructor(
    readonly id: string,
    limiter: PowerLimiter,
    senses: ReadonlyMap<string, Sense>,
    crestSlot: number,
    dialSlot: number,
    slots: Slots,
    outputs: Outputs,
  ) {
    this.acts = limiter.acts;
    this.title = limiter.title ?? id;
    this.allowedSlot = slots.of(limiter.allowed);
    this.#dialSlot = dialSlot;
    this.#crestSlot = limiter.takes === 'peak' ? crestSlot : -1;
    this.#reads = limiter.reads.map((read) => ({
      sense: senses.get(read.sense)!,
      assumed: slots.of(read.assumed),
      gain: slots.maybe(read.gain),
      offset: slots.maybe(read.offset),
    }));
    this.#points = [...new Set(this.#reads.map(({ sense }) => sense))];
    this.#numbers = new Float64Array(3 * this.#reads.length);
    this.readsOutput = outputs.add(`limiters.${id}.reads`, 'power', 'W', `what ${this.title} reads`);
    this.realOutput = outputs.add(`limiters.${id}.real`, 'power', 'W', `what really flows past ${this.title}`);
  }

  load(x: Float64Array): boolean {
    let sound = true;
    for (let i = 0; i < this.#reads.length; i++) {
      const { assumed, gain, offset } = this.#reads[i];
      this.#numbers[3 * i] = x[assumed];
      this.#numbers[3 * i + 1] = gain < 0 ? 1 : x[gain];
      this.#numbers[3 * i + 2] = offset < 0 ? 0 : x[offset];
      sound = sound && x[assumed] > 0;
    }
    this.#limit = x[this.#dialSlot < 0 ? this.allowedSlot : this.#dialSlot];
    this.#crest = this.#crestSlot < 0 ? 1 : x[this.#crestSlot];
    return sound && this.#limit > 0 && this.#crest > 0;
  }

  /** What it reads, crest included where it takes the peak [W]. */
  reading(state: PathState): number {
    const n = this.#numbers;
    let sum = 0;
    for (let i = 0; i < this.#reads.length; i++) {
      const { sense } = this.#reads[i];
      const { index, effective, gain } = sense;
      sum += readPower(
        state.voltage[index],
        state.delivered[index],
        effective,
        gain * n[3 * i + 1],
        n[3 * i + 2],
        n[3 * i],
      );
    }
    return sum * this.#crest;
  }

  /** What really flows through its sense points, crest included where it takes the peak [W]. */
  real(state: PathState): number {
    let sum = 0;
    for (let i = 0; i < this.#points.length; i++) {
      const { index } = this.#points[i];
      sum += state.voltage[index] * state.delivered[index];
    }
    return sum * this.#crest;
  }

  room(state: PathState): number {
    const power = this.#dialSlot < 0 ? this.reading(state) : this.real(state);
    // An offset may pull a reading below zero: that refuses nothing.
    return power > 0 ? this.#limit / power : Number.POSITIVE_INFINITY;
  }

  write(state: PathState, y: Float64Array): void {
    y[this.readsOutput] = this.reading(state);
    y[this.realOutput] = this.real(state);
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
  #allowed = 0;

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
    this.readsOutput = outputs.add(`limiters.${id}.reads`, 'temperature', '°C', `what ${this.title} reads`);
    this.realOutput = this.readsOutput;
  }

  load(x: Float64Array): boolean {
    this.#allowed = x[this.allowedSlot];
    return this.#allowed > 0;
  }

  room(state: PathState, ambient: number): number {
    return (this.#allowed - ambient) / (state.temperature[this.node] - ambient);
  }

  write(state: PathState, y: Float64Array): void {
    y[this.readsOutput] = state.temperature[this.node];
  }
}
