import { type RandomStream, randomStream } from '../numeric/random.ts';
import { peakCurrent } from '../physics/electrical/inductor-current.ts';
import { readPower } from '../physics/electrical/sense-reading.ts';
import type { PowerLimiter, TemperatureLimiter } from '../study/schema/limiters.ts';
import type { Step } from '../study/study.ts';
import type { Departures } from './departures.ts';
import { HeatGrid } from './heat-grid.ts';
import { type HiddenValues, type Truth, truthAt } from './hidden.ts';
import type { Planted } from './planted.ts';
import { PowerGrid } from './power-grid.ts';

/** Beyond this rise [K] a board has burnt. */
const burnt = 1500;
const settlePasses = 2000;

export type BoardState = 'running' | 'tripped' | 'burnt' | 'starved';

/** Makes one board: what it hides, what it does that the tool's board leaves out, and what somebody broke. */
export interface Making {
  readonly hidden: HiddenValues;
  readonly departures: Departures;
  readonly faults: readonly Planted[];
  /** Seed of what isn't in the study: heat capacities, the phases' shares. The same at every step: it is the same board. */
  readonly seed: number;
}

/**
 * A board that lives: currents, heat and limiters over time, by a network that is finer than the tool's own and doesn't share its solution.
 * Outputs have the tool's names, so that an instrument of the study can be put on any of them; SI.
 */
export class VirtualBoard {
  state: BoardState = 'running';
  /** Ambient over the stated one [K]; moves while the board runs. */
  ambientDrift = 0;
  /** Share of the full demand that the processor is asked for [1]. */
  load = 1;
  readonly outputs = new Map<string, number>();
  readonly #step: Step;
  readonly #truth: Truth;
  readonly #heat: HeatGrid;
  readonly #power: PowerGrid;
  readonly #warmth: Float64Array;
  readonly #demand: number;
  readonly #crest: number;
  readonly #ambient: number;
  #scale: number;

  constructor(step: Step, { hidden, departures, faults, seed }: Making) {
    this.#step = step;
    this.#truth = truthAt(step, hidden);
    const random: RandomStream = randomStream(seed);
    this.#heat = new HeatGrid(step.board.heat, this.#truth, departures, faults, random, step.board.plate);
    this.#power = new PowerGrid(step.board.parts, this.#truth, departures, faults, random);
    this.#warmth = new Float64Array(this.#heat.nodes.length);
    this.#demand = this.#truth(step.board.demand.scale);
    this.#crest = this.#truth(step.board.demand.crest);
    this.#ambient = this.#truth(step.board.heat.ambient);
    this.#scale = 0.3 * this.#demand;
  }

  /** Lives `dt` seconds on. */
  advance(dt: number): void {
    if (this.state !== 'running') {
      this.#cool(dt);
      return;
    }
    if (!this.#electrics()) return;
    this.#heat.step(this.#warmth, dt);
    this.#regulate(1 - Math.exp(-dt / 2));
    this.#watch();
  }

  /** Lives on until nothing moves: the true steady state. False: it has none. */
  settle(): boolean {
    for (let pass = 0; pass < settlePasses && this.state === 'running'; pass++) {
      const before = Float64Array.from(this.#heat.rises);
      const scale = this.#scale;
      if (!this.#electrics()) return false;
      this.#heat.step(this.#warmth, Number.POSITIVE_INFINITY);
      this.#regulate(0.7);
      let moved = Math.abs(this.#scale - scale) * 100;
      for (let i = 0; i < before.length; i++) moved = Math.max(moved, Math.abs(this.#heat.rises[i] - before[i]));
      if (this.#heat.rises.some((rise) => rise > burnt)) this.state = 'burnt';
      if (moved < 1e-8) {
        this.#electrics();
        this.#watch();
        return true;
      }
    }
    return false;
  }

  /** Trips switch the machine off only where they are armed; the steady state behind a trip is of interest too. */
  armed = true;

  /** Currents and heat of this moment, into `outputs`. */
  #electrics(): boolean {
    this.#warmth.fill(0);
    const { nodes, rises } = this.#heat;
    const ambient = this.#ambient + this.ambientDrift;
    const temperature = (node: string) => (node === 'ambient' ? ambient : ambient + rises[this.#heat.index(node)]);
    const settled = this.#power.settle(
      {
        scale: this.#scale,
        temperature,
        warm: (node, watts) => {
          if (node !== 'ambient') this.#warmth[this.#heat.index(node)] += watts;
        },
      },
      (output, value) => this.outputs.set(output, value),
    );
    if (!settled) {
      this.state = 'starved';
      return false;
    }
    this.outputs.set('scale', this.#scale);
    for (const node of nodes) this.outputs.set(`heat.nodes.${node}.temperature`, temperature(node));
    this.outputs.set('heat.nodes.ambient.temperature', ambient);
    for (const [id, part] of Object.entries(this.#step.board.parts)) {
      const of = (name: string) => this.outputs.get(`parts.${id}.${name}`)!;
      if (part.kind === 'supply') this.outputs.set(`parts.${id}.peak-current`, of('current') * this.#crest);
      if (part.kind === 'regulator')
        this.outputs.set(
          `parts.${id}.inductor-peak`,
          peakCurrent(of('phase-current') * this.#crest, of('phase-ripple')),
        );
    }
    for (const [id, limiter] of Object.entries(this.#step.board.limiters)) {
      const { reads, real } = this.#reading(limiter);
      this.outputs.set(`limiters.${id}.reads`, reads);
      this.outputs.set(`limiters.${id}.real`, real);
    }
    return true;
  }

  #reading(limiter: PowerLimiter | TemperatureLimiter): { reads: number; real: number } {
    if (!('reads' in limiter)) {
      const temperature = this.outputs.get(`heat.nodes.${limiter.node}.temperature`)!;
      return { reads: temperature, real: temperature };
    }
    const crest = limiter.takes === 'peak' ? this.#crest : 1;
    let reads = 0;
    const points = new Set<string>();
    for (const read of limiter.reads) {
      points.add(read.sense);
      const { voltage, current, resistance, gain } = this.#power.senses.get(read.sense)!;
      const amplifier = gain * (read.gain ? this.#truth(read.gain) : 1);
      const offset = read.offset ? this.#truth(read.offset) : 0;
      reads += readPower(voltage, current, resistance, amplifier, offset, this.#truth(read.assumed));
    }
    let real = 0;
    for (const id of points) real += this.#power.senses.get(id)!.voltage * this.#power.senses.get(id)!.current;
    return { reads: reads * crest, real: real * crest };
  }

  /** The processor gives way, or takes what it may; `eagerness` is the part of the way it goes at once. */
  #regulate(eagerness: number): void {
    let room = Number.POSITIVE_INFINITY;
    const ambient = this.outputs.get('heat.nodes.ambient.temperature')!;
    for (const [id, limiter] of Object.entries(this.#step.board.limiters)) {
      if (limiter.acts !== 'regulate') continue;
      const reads = this.outputs.get(`limiters.${id}.reads`)!;
      if ('reads' in limiter) {
        if (reads > 0) room = Math.min(room, this.#truth(limiter.allowed) / reads);
      } else {
        const rise = this.#heat.rises[this.#heat.index(limiter.node)];
        if (rise > 0) room = Math.min(room, (this.#truth(limiter['allowed-temperature']) - ambient) / rise);
      }
    }
    const wanted = Math.min(this.load * this.#demand, Math.max(0.01, this.#scale * room ** eagerness));
    this.#scale = wanted;
  }

  #watch(): void {
    if (!this.armed) return;
    for (const [id, limiter] of Object.entries(this.#step.board.limiters)) {
      if (limiter.acts !== 'trip') continue;
      const allowed = 'reads' in limiter ? limiter.allowed : limiter['allowed-temperature'];
      if (this.outputs.get(`limiters.${id}.reads`)! > this.#truth(allowed)) this.state = 'tripped';
    }
    if (this.#heat.rises.some((rise) => rise > burnt)) this.state = 'burnt';
  }

  /** Switched off: nothing flows any more, heat leaves. */
  #cool(dt: number): void {
    this.#warmth.fill(0);
    this.#heat.step(this.#warmth, dt);
    const ambient = this.#ambient + this.ambientDrift;
    for (const output of this.outputs.keys())
      if (!output.startsWith('heat.nodes.') && !output.endsWith('temperature')) this.outputs.set(output, 0);
    for (const node of this.#heat.nodes)
      this.outputs.set(`heat.nodes.${node}.temperature`, ambient + this.#heat.rises[this.#heat.index(node)]);
    this.outputs.set('heat.nodes.ambient.temperature', ambient);
  }
}
