import type { HeatNetwork } from './heat/network.ts';
import { column, copy, fill, lanes, type Table, table } from './lanes.ts';
import type { BoardLimiter } from './limiters.ts';
import type { PathPart } from './path/path-part.ts';
import { type PathState, pathState } from './path/path-state.ts';

/** A node this far above ambient has left anything a board survives [K]. */
export const runawayRise = 2000;

/**
 * One pass of the coupled solution: up the power path (currents and losses), down it (voltages), and through the heat network (rises).
 * It takes the unknowns `z` of a lane to their images: rises of the heat nodes that something senses [K], output voltages of the parts that
 * carry current [V], and last the processor's scale. A solution is its own image. All methods work on the lanes `from` up to `to`.
 */
export class CoupledPass {
  readonly size: number;
  readonly z: Table;
  readonly image: Table;
  readonly state: PathState;
  readonly rises: Table;
  readonly heat: HeatNetwork;
  /** Largest change of the last pass, in units of 100 K, of the supply's voltage and of scale 1. */
  readonly residual = column();
  /** 1 where the last pass moved voltages more than temperatures: then a climb without end is the supply's, not the heat's. */
  readonly starving = new Uint8Array(lanes);
  /** Index of the regulating limiter that holds; −1 when the demand is reached. */
  readonly holder = new Int32Array(lanes).fill(-1);
  /** Largest growth of a small temperature disturbance in one pass at this scale; 1 or more is runaway [1]. */
  readonly loopGain = column();
  readonly #parts: readonly PathPart[];
  readonly #regulating: readonly BoardLimiter[];
  /** Nodes whose temperature changes a part or a limiter; the other nodes only follow. */
  readonly #sensed: Int32Array;
  /** Parts whose output voltage depends on their current; the others' follows from the scale or from their feeder. */
  readonly #carriers: readonly PathPart[];
  readonly #followers: readonly PathPart[];
  readonly #carrierIndices: Int32Array;
  readonly #voltageScale = column(1);
  /** Currents and losses at temperatures a little away from those of `state`, at the same voltages. */
  readonly #disturbed: PathState;
  readonly #probe: readonly Float64Array[];
  readonly #step = column();
  readonly #response: Table;

  constructor(parts: readonly PathPart[], heat: HeatNetwork, regulating: readonly BoardLimiter[]) {
    this.#parts = parts;
    this.heat = heat;
    this.#regulating = regulating;
    this.state = pathState(parts.length, heat.nodes.length);
    const sensed = [...parts, ...regulating].flatMap(({ sensedNodes }) => sensedNodes);
    this.#sensed = Int32Array.from(new Set(sensed.filter((node) => node < heat.nodes.length)));
    this.#carriers = parts.filter(({ carries }) => carries);
    this.#followers = parts.filter(({ carries }) => !carries);
    this.#carrierIndices = Int32Array.from(parts.flatMap(({ carries }, i) => (carries ? [i] : [])));
    this.size = this.#sensed.length + this.#carriers.length + 1;
    this.z = table(this.size);
    this.image = table(this.size);
    this.rises = table(heat.nodes.length);
    const { voltage, scale } = this.state;
    this.#disturbed = { ...pathState(parts.length, heat.nodes.length), voltage, scale };
    this.#probe = table(this.#sensed.length).columns;
    this.#response = table(heat.nodes.length);
  }

  /** How many of the unknowns are rises; they come first. */
  get rising(): number {
    return this.#sensed.length;
  }

  /** Takes the highest voltage at the demand with nothing drawn as the measure of small changes. */
  begin(demand: Float64Array, from: number, to: number): void {
    this.#unload(demand, from, to);
    const highest = this.#voltageScale;
    fill(highest, 0, from, to);
    for (let i = 0; i < this.#carrierIndices.length; i++) {
      const voltage = this.state.voltage[this.#carrierIndices[i]];
      for (let s = from; s < to; s++) highest[s] = Math.max(highest[s], voltage[s]);
    }
  }

  /** Voltages of the board at a scale with nothing drawn: no part's can be higher. */
  #unload(scale: Float64Array, from: number, to: number): void {
    const { state } = this;
    copy(scale, state.scale, from, to);
    for (let i = 0; i < this.#parts.length; i++) {
      fill(state.delivered[i], 0, from, to);
      fill(state.resistance[i], 0, from, to);
    }
    for (let i = 0; i < this.#parts.length; i++) this.#parts[i].drop(state, from, to);
  }

  /** The unknowns of a cold board at a scale with nothing drawn. */
  startCold(scale: Float64Array, lane: number): void {
    this.#unload(scale, lane, lane + 1);
    const { columns } = this.z;
    const nodes = this.rising;
    for (let i = 0; i < nodes; i++) columns[i][lane] = 0;
    for (let i = 0; i < this.#carrierIndices.length; i++)
      columns[nodes + i][lane] = this.state.voltage[this.#carrierIndices[i]][lane];
    columns[this.size - 1][lane] = this.state.scale[lane];
  }

  /** From z to its image; the scale's image is left to `nextScale`. The state's `ending` says which lanes have one. */
  run(from: number, to: number): void {
    const { state, heat } = this;
    const z = this.z.columns;
    const image = this.image.columns;
    const sensed = this.#sensed;
    const carriers = this.#carriers;
    const followers = this.#followers;
    const indices = this.#carrierIndices;
    const nodes = sensed.length;
    const { ambient } = heat;
    for (let i = 0; i < nodes; i++) {
      const temperature = state.temperature[sensed[i]];
      const rise = z[i];
      for (let s = from; s < to; s++) temperature[s] = ambient[s] + rise[s];
    }
    copy(ambient, state.temperature[heat.nodes.length], from, to);
    for (let i = 0; i < carriers.length; i++) copy(z[nodes + i], state.voltage[indices[i]], from, to);
    copy(z[this.size - 1], state.scale, from, to);
    for (let i = 0; i < followers.length; i++) followers[i].drop(state, from, to);
    this.#upward(state, from, to);
    for (let i = 0; i < carriers.length; i++) {
      carriers[i].drop(state, from, to);
      copy(state.voltage[indices[i]], image[nodes + i], from, to);
    }
    heat.rise(state.heat, this.rises, from, to);
    for (let i = 0; i < nodes; i++) copy(this.rises.columns[sensed[i]], image[i], from, to);
  }

  /** Currents and losses from the loads up to the supply. */
  #upward(state: PathState, from: number, to: number): void {
    const parts = this.#parts;
    for (let s = from; s < to; s++) state.ending[s] = 'solved';
    for (let i = 0; i < state.heat.columns.length; i++) fill(state.heat.columns[i], 0, from, to);
    for (let i = 0; i < parts.length; i++) fill(state.delivered[i], 0, from, to);
    for (let i = parts.length - 1; i >= 0; i--) {
      parts[i].draw(state, from, to);
      const { feeder } = parts[i];
      if (feeder < 0) continue;
      const delivered = state.delivered[feeder];
      const drawn = state.drawn[i];
      for (let s = from; s < to; s++) delivered[s] += drawn[s];
    }
  }

  /** The scale at which the tightest limiter would be met if readings were proportional to it; remembers which that is. */
  nextScale(demand: Float64Array, from: number, to: number): void {
    const next = this.image.columns[this.size - 1];
    const scale = this.z.columns[this.size - 1];
    copy(demand, next, from, to);
    for (let s = from; s < to; s++) this.holder[s] = -1;
    for (let i = 0; i < this.#regulating.length; i++) {
      const limiter = this.#regulating[i];
      for (let s = from; s < to; s++) {
        const suggested = scale[s] * limiter.room(this.state, this.heat.ambient, s);
        if (suggested < next[s]) {
          next[s] = suggested;
          this.holder[s] = i;
        }
      }
    }
  }

  /** Works out the residual. */
  measure(from: number, to: number): void {
    const z = this.z.columns;
    const image = this.image.columns;
    const nodes = this.rising;
    const last = this.size - 1;
    const { residual, starving } = this;
    fill(residual, 0, from, to);
    for (let i = 0; i < nodes; i++)
      for (let s = from; s < to; s++) residual[s] = Math.max(residual[s], Math.abs(image[i][s] - z[i][s]));
    for (let s = from; s < to; s++) {
      let voltage = 0;
      for (let i = nodes; i < last; i++) voltage = Math.max(voltage, Math.abs(image[i][s] - z[i][s]));
      voltage /= this.#voltageScale[s];
      const rise = residual[s] / 100;
      const scale = Math.abs(image[last][s] - z[last][s]) / Math.max(1, z[last][s]);
      starving[s] = voltage > rise ? 1 : 0;
      residual[s] = Math.max(rise, voltage, scale);
    }
  }

  /** Smallest allowed-over-read of the regulating limiters; 1 or more: all are satisfied. */
  room(lane: number): number {
    let room = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.#regulating.length; i++)
      room = Math.min(room, this.#regulating[i].room(this.state, this.heat.ambient, lane));
    return room;
  }

  /**
   * Growth of a small temperature disturbance in one pass at fixed scale and voltages, after a pass. Where losses grow with temperature, J has no
   * negative entry, so for a positive disturbance v the largest component of J·v/v bounds its largest eigenvalue from above (Collatz–Wielandt).
   * What a falling voltage adds to the currents is left out.
   */
  disturb(from: number, to: number): void {
    for (let i = 0; i < this.rising; i++) {
      const probe = this.#probe[i];
      const rise = this.z.columns[i];
      for (let s = from; s < to; s++) probe[s] = Math.max(rise[s], 1e-3);
    }
    this.#grow(from, to);
  }

  /** Whether a disturbance dies away: a bound of 1 or more is sharpened by a few further passes. Nothing that hot is a state at all. */
  isStable(lane: number): boolean {
    for (let i = 0; i < this.rising; i++) if (this.z.columns[i][lane] > runawayRise) return false;
    for (let round = 1; round < 40 && !(this.loopGain[lane] < 1); round++) {
      let size = 1e-9;
      for (let i = 0; i < this.rising; i++) size = Math.max(size, this.#probe[i][lane]);
      for (let i = 0; i < this.rising; i++)
        this.#probe[i][lane] = Math.max(this.#response.columns[this.#sensed[i]][lane], 1e-3 * size);
      this.#grow(lane, lane + 1);
    }
    return this.loopGain[lane] < 1;
  }

  #grow(from: number, to: number): void {
    const disturbed = this.#disturbed;
    const sensed = this.#sensed;
    const step = this.#step;
    const gain = this.loopGain;
    fill(step, 1e-9, from, to);
    for (let i = 0; i < sensed.length; i++) {
      const probe = this.#probe[i];
      for (let s = from; s < to; s++) step[s] = Math.max(step[s], probe[s]);
    }
    // A hundredth of a kelvin: large against rounding, small against curvature.
    for (let s = from; s < to; s++) step[s] = 1e-2 / step[s];
    for (let i = 0; i < sensed.length; i++) {
      const temperature = disturbed.temperature[sensed[i]];
      const undisturbed = this.state.temperature[sensed[i]];
      const probe = this.#probe[i];
      for (let s = from; s < to; s++) temperature[s] = undisturbed[s] + step[s] * probe[s];
    }
    copy(this.heat.ambient, disturbed.temperature[this.heat.nodes.length], from, to);
    this.#upward(disturbed, from, to);
    for (let i = 0; i < this.heat.nodes.length; i++) {
      const heat = disturbed.heat.columns[i];
      const before = this.state.heat.columns[i];
      for (let s = from; s < to; s++) heat[s] = (heat[s] - before[s]) / step[s];
    }
    this.heat.rise(disturbed.heat, this.#response, from, to);
    fill(gain, 0, from, to);
    for (let i = 0; i < sensed.length; i++) {
      const response = this.#response.columns[sensed[i]];
      const probe = this.#probe[i];
      for (let s = from; s < to; s++) gain[s] = Math.max(gain[s], response[s] / probe[s]);
    }
  }
}
