import type { Ending } from '../metrology/model.ts';
import { invert } from '../numeric/dense.ts';
import { column, fill, lanes, type Table, table } from './lanes.ts';
import type { CoupledPass } from './pass.ts';

const mostPasses = 20;
/** When fewer than this share of the lanes is still under way, they go on alone. */
const stragglers = 1 / 4;

/**
 * Newton's method with the derivative of one point for all (chord method), corrected along the last step (a secant), on many lanes at once.
 * With z the unknowns, g(z) their image, J the derivative of g at the best values, and f = (1 − J)⁻¹·(g(z) − z):
 * the next z is z + f − w·(Δz + Δf), with w = Δf·f / Δf·Δf; Δ is the difference to the lane's pass before.
 * A lane that has settled doesn't move any more, so that its result doesn't depend on the lanes beside it.
 * Source: D. G. Anderson, J. ACM 12 (1965) 547–560, with a memory of one step, on the residual of the chord method.
 */
export class Chord {
  /** 1 for a lane that has reached a stable solution. */
  readonly reached = new Uint8Array(lanes);
  readonly #pass: CoupledPass;
  readonly #start: Float64Array;
  readonly #inverse: Float64Array;
  readonly #demand: Float64Array;
  readonly #moving = new Uint8Array(lanes);
  readonly #distance: Table;
  readonly #step: Table;
  readonly #lastStep: Table;
  readonly #lastTarget: Table;
  readonly #weight = column();
  readonly #square = column();
  #tolerance = 0;

  /** From the solution that the first lane holds. Null: no use there. */
  static at(pass: CoupledPass, start: Float64Array, demand: Float64Array): Chord | null {
    const inverse = invert(oneMinusDerivative(pass, start, demand), pass.size);
    return inverse && new Chord(pass, start, demand, inverse);
  }

  private constructor(pass: CoupledPass, start: Float64Array, demand: Float64Array, inverse: Float64Array) {
    this.#pass = pass;
    this.#start = start;
    this.#demand = demand;
    this.#inverse = inverse;
    this.#distance = table(pass.size);
    this.#step = table(pass.size);
    this.#lastStep = table(pass.size);
    this.#lastTarget = table(pass.size);
  }

  /** Solves those of the first lanes whose `ending` is `solved` so far; what isn't reached is left for others. `tolerance`: largest remaining change of one pass. */
  solve(ending: readonly Ending[], passes: Int32Array, count: number, tolerance: number): void {
    const pass = this.#pass;
    const { size } = pass;
    const z = pass.z.columns;
    for (let i = 0; i < size; i++) fill(z[i], this.#start[i], 0, count);
    for (let s = 0; s < count; s++) {
      z[size - 1][s] = Math.min(z[size - 1][s], this.#demand[s]);
      this.#moving[s] = ending[s] === 'solved' ? 1 : 0;
      this.reached[s] = 0;
    }
    this.#tolerance = tolerance;
    this.#iterate(passes, 0, count);
    pass.disturb(0, count);
    for (let s = 0; s < count; s++) if (this.reached[s] === 1 && !pass.isStable(s)) this.reached[s] = 0;
  }

  #iterate(passes: Int32Array, from: number, to: number): void {
    const pass = this.#pass;
    const { residual, state } = pass;
    const scale = pass.z.columns[pass.size - 1];
    const moving = this.#moving;
    for (;;) {
      pass.run(from, to);
      pass.nextScale(this.#demand, from, to);
      pass.measure(from, to);
      let left = 0;
      for (let s = from; s < to; s++) {
        if (moving[s] === 0) continue;
        passes[s]++;
        const settled = state.ending[s] === 'solved' && residual[s] < this.#tolerance;
        if (settled) this.reached[s] = 1;
        if (settled || state.ending[s] !== 'solved' || passes[s] >= mostPasses) moving[s] = 0;
        else left++;
      }
      if (left === 0) return;
      this.#move(passes, from, to);
      for (let s = from; s < to; s++) {
        if (moving[s] === 0 || scale[s] > 0) continue;
        moving[s] = 0;
        left--;
      }
      if (left > stragglers * (to - from) || to - from === 1) continue;
      for (let s = from; s < to; s++) if (moving[s] === 1) this.#iterate(passes, s, s + 1);
      return;
    }
  }

  /** The next z of every lane that moves. */
  #move(passes: Int32Array, from: number, to: number): void {
    const { size, z, image } = this.#pass;
    const inverse = this.#inverse;
    const distances = this.#distance.columns;
    const step = this.#step.columns;
    const lastStep = this.#lastStep.columns;
    const lastTarget = this.#lastTarget.columns;
    const weight = this.#weight;
    const square = this.#square;
    for (let i = 0; i < size; i++) {
      const distance = distances[i];
      const now = z.columns[i];
      const next = image.columns[i];
      for (let s = from; s < to; s++) distance[s] = next[s] - now[s];
    }
    fill(weight, 0, from, to);
    fill(square, 0, from, to);
    for (let i = 0; i < size; i++) {
      const own = step[i];
      multiply(inverse, i * size, distances, own, from, to);
      const last = lastStep[i];
      for (let s = from; s < to; s++) {
        const change = own[s] - last[s];
        weight[s] += change * own[s];
        square[s] += change * change;
      }
    }
    for (let s = from; s < to; s++) weight[s] = passes[s] > 1 && square[s] > 0 ? weight[s] / square[s] : 0;
    for (let i = 0; i < size; i++) {
      const own = step[i];
      const last = lastStep[i];
      const target = lastTarget[i];
      const at = z.columns[i];
      for (let s = from; s < to; s++) {
        const next = at[s] + own[s];
        if (this.#moving[s] === 1) at[s] = weight[s] === 0 ? next : next - weight[s] * (next - target[s]);
        last[s] = own[s];
        target[s] = next;
      }
    }
    const scale = z.columns[size - 1];
    for (let s = from; s < to; s++) if (scale[s] > this.#demand[s]) scale[s] = this.#demand[s];
  }
}

/** A row of a matrix times a table of columns; four columns at a time, because most of the time goes into fetching and storing the sums. */
function multiply(
  matrix: Float64Array,
  row: number,
  columns: readonly Float64Array[],
  product: Float64Array,
  from: number,
  to: number,
): void {
  const count = columns.length;
  fill(product, 0, from, to);
  let j = 0;
  for (; j + 3 < count; j += 4) {
    const a = columns[j];
    const b = columns[j + 1];
    const c = columns[j + 2];
    const d = columns[j + 3];
    const ma = matrix[row + j];
    const mb = matrix[row + j + 1];
    const mc = matrix[row + j + 2];
    const md = matrix[row + j + 3];
    for (let s = from; s < to; s++) product[s] += ma * a[s] + mb * b[s] + (mc * c[s] + md * d[s]);
  }
  for (; j < count; j++) {
    const column = columns[j];
    const factor = matrix[row + j];
    for (let s = from; s < to; s++) product[s] += factor * column[s];
  }
}

/** 1 − J by small differences at the solution of the first lane, row by row. */
function oneMinusDerivative(pass: CoupledPass, start: Float64Array, demand: Float64Array): Float64Array {
  const { size } = pass;
  const matrix = new Float64Array(size * size);
  const z = pass.z.columns;
  const image = pass.image.columns;
  const look = () => {
    pass.run(0, 1);
    pass.nextScale(demand, 0, 1);
    return Float64Array.from(image, (each) => each[0]);
  };
  for (let i = 0; i < size; i++) z[i][0] = start[i];
  const base = look();
  for (let j = 0; j < size; j++) {
    // Kelvins and volts, or a share of the scale; downward, because above the demand nothing changes any more.
    const change = -(j < pass.rising ? 1e-2 : 1e-5);
    z[j][0] = start[j] + change;
    const moved = look();
    z[j][0] = start[j];
    for (let i = 0; i < size; i++) matrix[i * size + j] = (i === j ? 1 : 0) - (moved[i] - base[i]) / change;
  }
  look();
  return matrix;
}
