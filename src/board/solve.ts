import type { Ending } from '../metrology/model.ts';
import { Anderson } from '../numeric/anderson.ts';
import { Chord } from './chord.ts';
import { column, lanes } from './lanes.ts';
import { type CoupledPass, runawayRise } from './pass.ts';

/** Largest remaining change of one pass that counts as settled, in the units of the pass's residual. */
const tolerance = 1e-12;
const fastPasses = 60;
const slowPasses = 1000;
/** A slow climb is extrapolated once in so many passes. */
const extrapolation = 6;
/** An operating point below this share of the demand is none: the limiters refuse even an idle processor. */
const leastScale = 1e-6;

/**
 * The coupled solution of power path, limiters and heat path, lane by lane.
 *
 * The quick way takes all lanes together from the solution at the best values. What isn't reached that way goes alone: by Anderson's acceleration
 * of the pass, with the scale among the unknowns. What either finds is kept only if it is a stable point of the pass at that scale. Otherwise the
 * slow way climbs from the cold board with nothing drawn, where temperatures and currents only rise from pass to pass: to the lowest steady state,
 * or without end. It brackets the scale by halving.
 */
export class BoardSolver {
  readonly ending: Ending[] = new Array<Ending>(lanes).fill('unsettled');
  readonly passes = new Int32Array(lanes);
  readonly #pass: CoupledPass;
  readonly #demand: Float64Array;
  readonly #own = column();
  readonly #start: Float64Array;
  readonly #bracketed: Float64Array;
  readonly #anderson: Anderson;
  /** The unknowns of one lane and their images. */
  readonly #z: Float64Array;
  readonly #image: Float64Array;
  #chord: Chord | null = null;

  /** @param demand the scale that is asked for, a number a lane */
  constructor(pass: CoupledPass, demand: Float64Array) {
    this.#pass = pass;
    this.#demand = demand;
    this.#anderson = new Anderson(pass.size, 4);
    this.#z = new Float64Array(pass.size);
    this.#image = new Float64Array(pass.size);
    this.#start = new Float64Array(pass.size);
    this.#bracketed = new Float64Array(pass.size);
  }

  /** Keeps the present solution of the first lane as the starting point of every later evaluation: a good start, the same for all. */
  remember(): void {
    this.#gather(this.#start, 0);
    this.#chord = Chord.at(this.#pass, this.#start, this.#demand);
  }

  /** Solves those of the first lanes whose `ending` is `solved` so far for the numbers that parts, heat network and limiters have loaded. */
  solve(count: number, quickTolerance: number): void {
    const { ending, passes } = this;
    this.#pass.begin(this.#demand, 0, count);
    passes.fill(0, 0, count);
    this.#chord?.solve(ending, passes, count, Math.max(tolerance, quickTolerance));
    for (let s = 0; s < count; s++) {
      if (ending[s] !== 'solved' || this.#chord?.reached[s] === 1) continue;
      if (!this.#fast(s, this.#demand[s], this.#start)) this.#slow(s, this.#demand[s]);
    }
  }

  #gather(vector: Float64Array, lane: number): void {
    const { columns } = this.#pass.z;
    for (let i = 0; i < vector.length; i++) vector[i] = columns[i][lane];
  }

  #scatter(vector: Float64Array, lane: number): void {
    const { columns } = this.#pass.z;
    for (let i = 0; i < vector.length; i++) columns[i][lane] = vector[i];
  }

  /** From a start to the operating point, the scale among the unknowns. False: not reached this way, or not a stable point. */
  #fast(lane: number, demand: number, start: Float64Array): boolean {
    const pass = this.#pass;
    const z = this.#z;
    const image = this.#image;
    const last = z.length - 1;
    if (!(start[last] > 0)) return false;
    z.set(start);
    z[last] = Math.min(z[last], demand);
    this.#own[lane] = demand;
    this.#anderson.restart();
    for (let count = 0; count < fastPasses; count++) {
      this.#scatter(z, lane);
      if (this.#run(lane) !== 'solved') return false;
      pass.nextScale(this.#own, lane, lane + 1);
      pass.measure(lane, lane + 1);
      if (pass.residual[lane] < tolerance) return this.#isStable(lane);
      for (let i = 0; i < image.length; i++) image[i] = pass.image.columns[i][lane];
      this.#anderson.step(z, image);
      if (!(z[last] > 0)) return false;
      if (z[last] > demand) z[last] = demand;
    }
    return false;
  }

  #slow(lane: number, demand: number): void {
    const { holder } = this.#pass;
    const { ending } = this;
    if (this.#climb(lane, demand) && this.#room(lane) >= 1) {
      holder[lane] = -1;
      ending[lane] = 'solved';
      return;
    }
    // Down from the demand until everything is satisfied. Not up from nothing: a rail that follows the scale has no voltage there.
    let high = demand;
    let low = demand;
    let refused: Ending;
    do {
      refused = ending[lane] === 'solved' ? 'infeasible' : ending[lane];
      high = low;
      low *= 0.8;
      if (low < leastScale * demand) {
        ending[lane] = refused;
        return;
      }
    } while (!this.#isSatisfied(lane, low));
    this.#gather(this.#bracketed, lane);
    // The end of the bracket has been refused: only a limiter below it can hold.
    if (this.#fast(lane, high, this.#bracketed) && holder[lane] >= 0) {
      ending[lane] = 'solved';
      return;
    }
    let room = Number.POSITIVE_INFINITY;
    for (let halving = 1; high - low > 1e-13 * demand; halving++) {
      const middle = low + (high - low) / 2;
      if (middle <= low || middle >= high) break;
      if (this.#isSatisfied(lane, middle)) {
        low = middle;
        room = this.#room(lane);
        this.#gather(this.#bracketed, lane);
      } else high = middle;
      if (halving % 4 === 0 && this.#fast(lane, high, this.#bracketed) && holder[lane] >= 0) {
        ending[lane] = 'solved';
        return;
      }
      // Closed by a runaway or a supply that gives in, with room left under every limiter: there is no point to hold.
      if (high - low < 1e-6 * high && room > 1 + 1e-3) {
        ending[lane] = refused;
        return;
      }
    }
    const reached = this.#climb(lane, low);
    this.#own[lane] = Number.POSITIVE_INFINITY;
    this.#pass.nextScale(this.#own, lane, lane + 1);
    // The limiter holds where its reading just meets its threshold.
    const held = reached && Math.abs(this.#room(lane) - 1) < 1e-6;
    ending[lane] = held ? 'solved' : refused;
  }

  #isSatisfied(lane: number, scale: number): boolean {
    return this.#climb(lane, scale) && this.#room(lane) >= 1;
  }

  /** From the cold board to the lowest steady state at a scale. False: there is none, and `ending` says why. */
  #climb(lane: number, scale: number): boolean {
    const pass = this.#pass;
    const z = pass.z.columns;
    const image = pass.image.columns;
    const last = pass.size - 1;
    this.#own[lane] = scale;
    pass.startCold(this.#own, lane);
    let change = Number.POSITIVE_INFINITY;
    let growing = 0;
    for (let count = 1; count <= slowPasses; count++) {
      const ending = this.#run(lane);
      if (ending !== 'solved') return this.#refuse(lane, ending);
      image[last][lane] = scale;
      pass.measure(lane, lane + 1);
      const residual = pass.residual[lane];
      const ratio = residual / change;
      change = residual;
      // Losses bend upward with temperature: a change that has begun to grow goes on growing.
      growing = count > 20 && ratio > 1 && change > 1e-6 ? growing + 1 : 0;
      // A slow approach is carried on along its last change, as if it went on shrinking at this ratio. Losses bend upward, so what is left of the
      // slowest part is more than that; a quicker part may be carried too far and settles back.
      const ahead = count % extrapolation === 0 && ratio > 0.3 && ratio < 0.995 ? ratio / (1 - ratio) : 0;
      for (let i = 0; i < last; i++) z[i][lane] = image[i][lane] + ahead * (image[i][lane] - z[i][lane]);
      if (residual < tolerance) {
        this.ending[lane] = 'solved';
        return this.#isStable(lane) || this.#refuse(lane, 'runaway');
      }
      if (growing > 5) return this.#refuse(lane, this.#endless(lane));
      for (let i = 0; i < pass.rising; i++) if (z[i][lane] > runawayRise) return this.#refuse(lane, 'runaway');
    }
    // Still moving after so many passes: so close to the edge that no steady state can be told.
    return this.#refuse(lane, this.#endless(lane));
  }

  #endless(lane: number): Ending {
    return this.#pass.starving[lane] === 1 ? 'infeasible' : 'runaway';
  }

  #refuse(lane: number, ending: Ending): boolean {
    this.ending[lane] = ending;
    return false;
  }

  #run(lane: number): Ending {
    this.passes[lane]++;
    this.#pass.run(lane, lane + 1);
    return this.#pass.state.ending[lane];
  }

  #room(lane: number): number {
    return this.#pass.room(lane);
  }

  #isStable(lane: number): boolean {
    this.#pass.disturb(lane, lane + 1);
    return this.#pass.isStable(lane);
  }
}
