import type { Ending } from '../metrology/model.ts';
import { Anderson } from '../numeric/anderson.ts';
import type { HeatNetwork } from './heat/network.ts';
import type { BoardLimiter } from './limiters.ts';
import type { PathPart } from './path/path-part.ts';
import type { PathState } from './path/path-state.ts';

/** Largest remaining change of one pass that counts as settled, in units of 100 K, of the supply's voltage and of scale 1. */
const tolerance = 1e-12;
const fastPasses = 60;
/** A node this far above ambient has left anything a board survives [K]. */
const runawayRise = 2000;
const slowPasses = 1000;
/** A slow climb is extrapolated once in so many passes. */
const extrapolation = 6;
/** An operating point below this share of the demand is none: the limiters refuse even an idle processor. */
const leastScale = 1e-6;

/**
 * The coupled solution of power path, limiters and heat path.
 *
 * Unknowns: rises of the heat nodes, output voltages of the parts, and the processor's scale. One pass goes up the power path (currents and losses),
 * down it (voltages), and through the heat network (rises). The fast way accelerates the pass as a fixed point with the scale among the unknowns;
 * what it finds is kept only if it is a stable point of the pass at that scale. Otherwise the slow way climbs from the cold board with nothing drawn,
 * where temperatures and currents only rise from pass to pass: to the lowest steady state, or without end. It brackets the scale by halving.
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
  /** Nodes whose temperature changes a part or a limiter; the other nodes only follow. */
  readonly #sensed: Int32Array;
  /** Parts whose output voltage depends on their current; the others' follows from the scale or from their feeder. */
  readonly #carriers: Int32Array;
  readonly #feeders: Int32Array;
  readonly #anderson: Anderson;
  readonly #z: Float64Array;
  readonly #image: Float64Array;
  readonly #start: Float64Array;
  readonly #bracketed: Float64Array;
  readonly #probe: Float64Array;
  readonly #response: Float64Array;
  readonly #heatBefore: Float64Array;
  #voltageScale = 1;
  /** Whether the last pass moved voltages more than temperatures: then a climb without end is the supply's, not the heat's. */
  #starving = false;

  constructor(parts: readonly PathPart[], heat: HeatNetwork, regulating: readonly BoardLimiter[], state: PathState) {
    this.#parts = parts;
    this.#heat = heat;
    this.#regulating = regulating;
    this.#state = state;
    const sensed = [...parts, ...regulating].flatMap(({ sensedNodes }) => sensedNodes);
    this.#sensed = Int32Array.from(new Set(sensed.filter((node) => node < heat.nodes.length)));
    this.#carriers = Int32Array.from(parts.flatMap(({ carries }, i) => (carries ? [i] : [])));
    this.#feeders = Int32Array.from(parts, (part) => part.feeder);
    const size = this.#sensed.length + this.#carriers.length + 1;
    this.#anderson = new Anderson(size, 4);
    this.#z = new Float64Array(size);
    this.#image = new Float64Array(size);
    this.#start = new Float64Array(size);
    this.#bracketed = new Float64Array(size);
    this.#probe = new Float64Array(this.#sensed.length);
    this.rises = new Float64Array(heat.nodes.length);
    this.#response = new Float64Array(heat.nodes.length);
    this.#heatBefore = new Float64Array(heat.nodes.length + 1);
  }

  /** Keeps the present solution as the starting point of every later evaluation: a good start, the same for all. */
  remember(): void {
    this.#start.set(this.#z);
  }

  /** Solves for the numbers that parts, heat network and limiters have loaded. */
  solve(demand: number): void {
    this.#unload(demand);
    this.#voltageScale = 0;
    for (let i = 0; i < this.#carriers.length; i++)
      this.#voltageScale = Math.max(this.#voltageScale, this.#state.voltage[this.#carriers[i]]);
    this.passes = 0;
    if (this.#fast(demand, this.#start)) this.ending = 'solved';
    else this.#slow(demand);
  }

  /** From a start to the operating point, the scale among the unknowns. False: not reached this way, or not a stable point. */
  #fast(demand: number, start: Float64Array): boolean {
    const z = this.#z;
    const last = z.length - 1;
    if (!(start[last] > 0)) return false;
    z.set(start);
    z[last] = Math.min(z[last], demand);
    this.#anderson.restart();
    for (let pass = 0; pass < fastPasses; pass++) {
      if (this.#pass(z, this.#image) !== 'solved') return false;
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
    // Down from the demand until everything is satisfied. Not up from nothing: a rail that follows the scale has no voltage there.
    let high = demand;
    let low = demand;
    let refused: Ending;
    do {
      refused = this.ending === 'solved' ? 'infeasible' : this.ending;
      high = low;
      low *= 0.8;
      if (low < leastScale * demand) {
        this.ending = refused;
        return;
      }
    } while (!this.#isSatisfied(low));
    this.#bracketed.set(this.#z);
    // The end of the bracket has been refused: only a limiter below it can hold.
    if (this.#fast(high, this.#bracketed) && this.holder >= 0) {
      this.ending = 'solved';
      return;
    }
    let room = Number.POSITIVE_INFINITY;
    for (let halving = 1; high - low > 1e-13 * demand; halving++) {
      const middle = low + (high - low) / 2;
      if (middle <= low || middle >= high) break;
      if (this.#isSatisfied(middle)) {
        low = middle;
        room = this.#room();
        this.#bracketed.set(this.#z);
      } else high = middle;
      if (halving % 4 === 0 && this.#fast(high, this.#bracketed) && this.holder >= 0) {
        this.ending = 'solved';
        return;
      }
      // Closed by a runaway or a supply that gives in, with room left under every limiter: there is no point to hold.
      if (high - low < 1e-6 * high && room > 1 + 1e-3) {
        this.ending = refused;
        return;
      }
    }
    const reached = this.#climb(low);
    this.#nextScale(low, Number.POSITIVE_INFINITY);
    // The limiter holds where its reading just meets its threshold.
    const held = reached && Math.abs(this.#room() - 1) < 1e-6;
    this.ending = held ? 'solved' : refused;
  }

  #isSatisfied(scale: number): boolean {
    return this.#climb(scale) && this.#room() >= 1;
  }

  /** From the cold board to the lowest steady state at a scale. False: there is none, and `ending` says why. */
  #climb(scale: number): boolean {
    const z = this.#z;
    const last = z.length - 1;
    const nodes = this.#sensed.length;
    this.#unload(scale);
    z.fill(0, 0, nodes);
    for (let i = nodes; i < last; i++) z[i] = this.#state.voltage[this.#carriers[i - nodes]];
    z[last] = scale;
    let change = Number.POSITIVE_INFINITY;
    let growing = 0;
    for (let pass = 1; pass <= slowPasses; pass++) {
      const ending = this.#pass(z, this.#image);
      if (ending !== 'solved') return this.#refuse(ending);
      this.#image[last] = scale;
      this.residual = this.#distance(z, this.#image);
      const ratio = this.residual / change;
      change = this.residual;
      // Losses bend upward with temperature: a change that has begun to grow goes on growing.
      growing = pass > 20 && ratio > 1 && change > 1e-6 ? growing + 1 : 0;
      // A slow approach is carried on along its last change, as if it went on shrinking at this ratio. Losses bend upward, so what is left of the
      // slowest part is more than that; a quicker part may be carried too far and settles back.
      const ahead = pass % extrapolation === 0 && ratio > 0.3 && ratio < 0.995 ? ratio / (1 - ratio) : 0;
      for (let i = 0; i < last; i++) z[i] = this.#image[i] + ahead * (this.#image[i] - z[i]);
      if (this.residual < tolerance) {
        this.ending = 'solved';
        return this.#isStable() || this.#refuse('runaway');
      }
      if (growing > 5) return this.#refuse(this.#starving ? 'infeasible' : 'runaway');
      for (let i = 0; i < nodes; i++) if (z[i] > runawayRise) return this.#refuse('runaway');
    }
    // Still moving after so many passes: so close to the edge that no steady state can be told.
    return this.#refuse(this.#starving ? 'infeasible' : 'runaway');
  }

  #refuse(ending: Ending): boolean {
    this.ending = ending;
    return false;
  }

  /** Voltages of the board at a scale with nothing drawn: no part's can be higher. */
  #unload(scale: number): void {
    const state = this.#state;
    state.scale = scale;
    state.delivered.fill(0);
    for (let i = 0; i < this.#parts.length; i++) this.#parts[i].drop(state);
  }

  /** One pass from z (rises, voltages, scale) to their images; the scale's image is left to the caller. */
  #pass(z: Float64Array, image: Float64Array): Ending {
    this.passes++;
    const state = this.#state;
    const sensed = this.#sensed;
    const carriers = this.#carriers;
    const parts = this.#parts;
    const { ambient } = this.#heat;
    const nodes = sensed.length;
    for (let i = 0; i < nodes; i++) state.temperature[sensed[i]] = ambient + z[i];
    state.temperature[this.rises.length] = ambient;
    for (let i = 0; i < carriers.length; i++) state.voltage[carriers[i]] = z[nodes + i];
    state.scale = z[z.length - 1];
    for (let i = 0; i < parts.length; i++) if (!parts[i].carries) parts[i].drop(state);
    const ending = this.#upward();
    if (ending !== 'solved') return ending;
    for (let i = 0; i < carriers.length; i++) {
      parts[carriers[i]].drop(state);
      image[nodes + i] = state.voltage[carriers[i]];
    }
    this.#heat.rise(state.heat, this.rises);
    for (let i = 0; i < nodes; i++) image[i] = this.rises[sensed[i]];
    return 'solved';
  }

  /** Currents and losses from the loads up to the supply. */
  #upward(): Ending {
    const state = this.#state;
    const parts = this.#parts;
    state.heat.fill(0);
    state.delivered.fill(0);
    for (let i = parts.length - 1; i >= 0; i--) {
      const ending = parts[i].draw(state);
      if (ending !== 'solved') return ending;
      const feeder = this.#feeders[i];
      if (feeder >= 0) state.delivered[feeder] += state.drawn[i];
    }
    return 'solved';
  }

  #distance(z: Float64Array, image: Float64Array): number {
    const nodes = this.#sensed.length;
    const last = z.length - 1;
    let rise = 0;
    for (let i = 0; i < nodes; i++) rise = Math.max(rise, Math.abs(image[i] - z[i]));
    let voltage = 0;
    for (let i = nodes; i < last; i++) voltage = Math.max(voltage, Math.abs(image[i] - z[i]));
    const scale = Math.abs(image[last] - z[last]) / Math.max(1, z[last]);
    this.#starving = voltage / this.#voltageScale > rise / 100;
    return Math.max(rise / 100, voltage / this.#voltageScale, scale);
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
   * Growth of a small temperature disturbance in one pass at fixed scale and voltages. Where losses grow with temperature, J has no negative entry, so
   * for a positive disturbance v the largest component of J·v/v bounds its largest eigenvalue from above (Collatz–Wielandt); it is sharpened by a few
   * further passes. What a falling voltage adds to the currents is left out.
   */
  #isStable(): boolean {
    const state = this.#state;
    const sensed = this.#sensed;
    const z = this.#z;
    const probe = this.#probe;
    const response = this.#response;
    const { ambient } = this.#heat;
    for (let i = 0; i < sensed.length; i++) probe[i] = Math.max(z[i], 1e-3);
    const heat = this.#heatBefore;
    heat.set(state.heat);
    let gain = 0;
    for (let round = 0; round < 40; round++) {
      let size = 1e-9;
      for (let i = 0; i < sensed.length; i++) size = Math.max(size, probe[i]);
      // A hundredth of a kelvin: large against rounding, small against curvature.
      const step = 1e-2 / size;
      for (let i = 0; i < sensed.length; i++) state.temperature[sensed[i]] = ambient + z[i] + step * probe[i];
      this.#upward();
      for (let i = 0; i < heat.length; i++) state.heat[i] = (state.heat[i] - heat[i]) / step;
      this.#heat.rise(state.heat, response);
      gain = 0;
      for (let i = 0; i < sensed.length; i++) gain = Math.max(gain, response[sensed[i]] / probe[i]);
      if (gain < 1) break;
      for (let i = 0; i < sensed.length; i++) probe[i] = Math.max(response[sensed[i]], 1e-3 * size);
    }
    this.loopGain = gain;
    for (let i = 0; i < sensed.length; i++) state.temperature[sensed[i]] = ambient + z[i];
    this.#upward();
    return gain < 1;
  }
}
