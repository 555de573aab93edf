import type { Ending } from '../metrology/model.ts';
import { Anderson } from '../numeric/anderson.ts';
import type { HeatNetwork } from './heat/network.ts';
import type { BoardLimiter } from './limiters.ts';
import type { PathPart } from './path/path-part.ts';
import type { PathState } from './path/path-state.ts';

/** Largest remaining change of one pass that counts as settled, in units of 100 K, of the supply's voltage and of scale 1. */
const tolerance = 2e-13;
const fastPasses = 60;
/** A node this far above ambient has left anything a board survives [K]. */
const runawayRise = 2000;
const slowPasses = 4000;

/**
 * The coupled solution of power path, limiters and heat path.
 *
 * Unknowns: rises of the heat nodes, output voltages of the parts, and the processor's scale. One pass goes up the power path (currents and losses),
 * down it (voltages), and through the heat network (rises). The fast way accelerates the pass as a fixed point with the scale among the unknowns;
 * what it finds is kept only if it is a stable point of the pass at that scale. Otherwise the slow way climbs from the cold board, where the pass is
 * monotone: it then finds the lowest steady state or shows that there is none, and brackets the scale by halving.
 */
export class BoardSolver {
  ending: Ending = 'unsettled';
  residual = Number.POSITIVE_INFINITY;
  passes = 0;
  /** Largest growth of a small temperature disturbance in one pass at this scale; 1 or more is runaway [1]. */
  loopGain = 0;
  /** Index of the regulating limiter that holds; −1 when the demand is reached. */
  holder = -1;
  readonly rises: Float64Array;
  readonly #parts: readonly PathPart[];
  readonly #heat: HeatNetwork;
  readonly #regulating: readonly BoardLimiter[];
  readonly #state: PathState;
  readonly #anderson: Anderson;
  readonly #z: Float64Array;
  readonly #image: Float64Array;
  readonly #start: Float64Array;
  readonly #probe: Float64Array;
  readonly #response: Float64Array;
  readonly #heatBefore: Float64Array;
  readonly #feeders: Int32Array;
  #voltageScale = 1;

  constructor(parts: readonly PathPart[], heat: HeatNetwork, regulating: readonly BoardLimiter[], state: PathState) {
    this.#parts = parts;
    this.#heat = heat;
    this.#regulating = regulating;
    this.#state = state;
    const size = heat.nodes.length + parts.length + 1;
    this.#anderson = new Anderson(size, 4);
    this.#z = new Float64Array(size);
    this.#image = new Float64Array(size);
    this.#start = new Float64Array(size);
    this.#probe = new Float64Array(heat.nodes.length);
    this.rises = new Float64Array(heat.nodes.length);
    this.#response = new Float64Array(heat.nodes.length);
    this.#heatBefore = new Float64Array(heat.nodes.length + 1);
    this.#feeders = Int32Array.from(parts, (part) => part.feeder);
  }

  /** Keeps the present solution as the starting point of every later evaluation: a good start, the same for all. */
  remember(): void {
    this.#start.set(this.#z);
  }

  /** Solves for the numbers that parts, heat network and limiters have loaded. `noLoad`: the supply's voltage at no load [V]. */
  solve(demand: number, noLoad: number): void {
    this.#voltageScale = noLoad;
    this.passes = 0;
    if (this.#fast(demand)) this.ending = 'solved';
    else this.#slow(demand);
  }

  #fast(demand: number): boolean {
    const z = this.#z;
    const last = z.length - 1;
    if (!(this.#start[last] > 0)) return false;
    z.set(this.#start);
    z[last] = Math.min(z[last], demand);
    this.#anderson.restart();
    for (let pass = 0; pass < fastPasses; pass++) {
      if (!this.#pass(z, this.#image)) return false;
      this.#image[last] = this.#nextScale(z[last], demand);
      this.residual = this.#distance(z, this.#image);
      if (this.residual < tolerance) return this.#isStable();
      this.#anderson.step(z, this.#image);
      if (!(z[last] > 0)) return false;
      if (z[last] > demand) z[last] = demand;
    }
    return false;
  }

  #slow(demand: number): void {
    if (this.#climb(demand) && this.#room() >= 1) {
      this.holder = -1;
      this.ending = 'solved';
      return;
    }
    let low = 0;
    let high = demand;
    // A scale of a millionth stands for "the processor idles"; when even that is refused there is no operating point.
    let trial = 1e-6 * demand;
    let reason: Ending = this.ending;
    for (let halving = 0; halving < 100 && high - low > 1e-13 * demand; halving++) {
      if (this.#climb(trial) && this.#room() >= 1) low = trial;
      else {
        high = trial;
        reason = this.ending === 'solved' ? 'infeasible' : this.ending;
        if (low === 0) {
          this.ending = reason;
          return;
        }
      }
      trial = low + (high - low) / 2;
    }
    const reached = this.#climb(low);
    this.#nextScale(low, Number.POSITIVE_INFINITY);
    // The limiter holds where its reading just meets its threshold; a bracket closed by anything else has no point to hold.
    const held = reached && Math.abs(this.#room() - 1) < 1e-6;
    this.ending = held ? 'solved' : reason === 'infeasible' ? 'unsettled' : reason;
  }

  /** From the cold board to the lowest steady state at a scale. False: there is none, and `ending` says why. */
  #climb(scale: number): boolean {
    const z = this.#z;
    const last = z.length - 1;
    z.fill(0, 0, this.#heat.nodes.length);
    z.fill(this.#voltageScale, this.#heat.nodes.length, last);
    z[last] = scale;
    for (let i = 0; i < this.#parts.length; i++) this.#state.voltage[i] = this.#voltageScale;
    this.#state.scale = scale;
    this.#settleVoltages(z);
    for (let pass = 0; pass < slowPasses; pass++) {
      if (!this.#pass(z, this.#image)) {
        this.ending = this.#state.voltage.some((voltage) => !(voltage > 0)) ? 'infeasible' : 'runaway';
        return false;
      }
      this.#image[last] = scale;
      this.residual = this.#distance(z, this.#image);
      z.set(this.#image);
      if (this.residual < tolerance) {
        this.ending = 'solved';
        return this.#isStable() || this.#refuse('runaway');
      }
      for (let i = 0; i < this.#heat.nodes.length; i++) if (z[i] > runawayRise) return this.#refuse('runaway');
    }
    // Still rising after thousands of passes: so close to runaway that no steady state can be told.
    return this.#refuse('runaway');
  }

  #refuse(ending: Ending): boolean {
    this.ending = ending;
    return false;
  }

  /** Voltages of a board that draws nothing yet: without them the first pass would divide by voltages that no rail has. */
  #settleVoltages(z: Float64Array): void {
    this.#state.delivered.fill(0);
    for (let i = 0; i < this.#parts.length; i++) this.#parts[i].drop(this.#state);
    z.set(this.#state.voltage, this.#heat.nodes.length);
  }

  /** One pass from z (rises, voltages, scale) to their images; the scale's image is left to the caller. */
  #pass(z: Float64Array, image: Float64Array): boolean {
    this.passes++;
    const state = this.#state;
    const nodes = this.#heat.nodes.length;
    const parts = this.#parts;
    const { ambient } = this.#heat;
    for (let i = 0; i < nodes; i++) state.temperature[i] = ambient + z[i];
    state.temperature[nodes] = ambient;
    for (let i = 0; i < parts.length; i++) state.voltage[i] = z[nodes + i];
    state.scale = z[z.length - 1];
    if (!this.#upward()) return false;
    for (let i = 0; i < parts.length; i++) parts[i].drop(state);
    this.#heat.rise(state.heat, this.rises);
    for (let i = 0; i < nodes; i++) image[i] = this.rises[i];
    for (let i = 0; i < parts.length; i++) image[nodes + i] = state.voltage[i];
    return true;
  }

  /** Currents and losses from the loads up to the supply. */
  #upward(): boolean {
    const state = this.#state;
    const parts = this.#parts;
    state.heat.fill(0);
    state.delivered.fill(0);
    for (let i = parts.length - 1; i >= 0; i--) {
      if (!parts[i].draw(state)) return false;
      const feeder = this.#feeders[i];
      if (feeder >= 0) state.delivered[feeder] += state.drawn[i];
    }
    return true;
  }

  #distance(z: Float64Array, image: Float64Array): number {
    const nodes = this.#heat.nodes.length;
    const last = z.length - 1;
    let largest = Math.abs(image[last] - z[last]) / Math.max(1, z[last]);
    for (let i = 0; i < nodes; i++) largest = Math.max(largest, Math.abs(image[i] - z[i]) / 100);
    for (let i = nodes; i < last; i++) largest = Math.max(largest, Math.abs(image[i] - z[i]) / this.#voltageScale);
    return largest;
  }

  /** Smallest allowed-over-read of the regulating limiters; 1 or more: all are satisfied. */
  #room(): number {
    let room = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.#regulating.length; i++)
      room = Math.min(room, this.#regulating[i].room(this.#state, this.#heat.ambient));
    return room;
  }

  /** The scale at which the tightest limiter would be met if readings were proportional to it; remembers which that is. */
  #nextScale(scale: number, demand: number): number {
    let next = demand;
    this.holder = -1;
    for (let i = 0; i < this.#regulating.length; i++) {
      const suggested = scale * this.#regulating[i].room(this.#state, this.#heat.ambient);
      if (suggested < next) {
        next = suggested;
        this.holder = i;
      }
    }
    return next;
  }

  /**
   * Growth of a small temperature disturbance in one pass at fixed scale and voltages. The pass is monotone in the temperatures, so for a positive
   * disturbance v the largest component of J·v/v bounds the loop gain from above (Collatz–Wielandt); it is sharpened by a few further passes.
   */
  #isStable(): boolean {
    const state = this.#state;
    const nodes = this.#heat.nodes.length;
    const z = this.#z;
    const probe = this.#probe;
    for (let i = 0; i < nodes; i++) probe[i] = Math.max(this.rises[i], 1e-3);
    const heat = this.#heatBefore;
    heat.set(state.heat);
    let gain = 0;
    for (let round = 0; round < 40; round++) {
      // A disturbance of a ten-thousandth: large against rounding, small against curvature.
      let size = 0;
      for (let i = 0; i < nodes; i++) size = Math.max(size, probe[i]);
      const step = 1e-2 / size;
      for (let i = 0; i < nodes; i++) state.temperature[i] = this.#heat.ambient + z[i] + step * probe[i];
      this.#upward();
      for (let i = 0; i <= nodes; i++) state.heat[i] = (state.heat[i] - heat[i]) / step;
      this.#heat.rise(state.heat, this.#response);
      gain = 0;
      for (let i = 0; i < nodes; i++) gain = Math.max(gain, this.#response[i] / probe[i]);
      if (gain < 1) break;
      for (let i = 0; i < nodes; i++) probe[i] = Math.max(this.#response[i], 1e-3 * size);
    }
    this.loopGain = gain;
    for (let i = 0; i < nodes; i++) state.temperature[i] = this.#heat.ambient + z[i];
    this.#upward();
    return gain < 1;
  }
}
