import type { LimitState } from './normal-space.ts';

/** The point nearest to the origin of the normal space at which a limit is just reached. */
export interface DesignPoint {
  readonly z: Float64Array;
  /** Distance from the origin, the reliability index β [1]; negative where the origin itself is beyond the limit. */
  readonly distance: number;
  /** Unit vector towards the exceeded side. */
  readonly direction: Float64Array;
  /** Size of the margin's gradient there [SI per standard deviation]. */
  readonly steepness: number;
  /** Whether the search settled; if not, this is as near as it came. */
  readonly settled: boolean;
}

/** How far an input is moved by itself to see whether it matters [standard deviations]. */
const MOVED = 5.5;
/** Length of the steps for differences [standard deviations]. */
const STEP = 0.02;
/**
 * A search has settled so near to the limit, and so near to the best place along it; sampling around the point needs no more [standard deviations].
 */
const NEAR = 0.05;
const NEAR_ALONG = 0.3;
/** Longest step of a search: an input with bounds has no slope left beyond [standard deviations]. */
const LONGEST = 2.5;
/** Beyond this distance lies about 1e-12: nothing that is looked for [standard deviations]. */
const FAR = 7;

/**
 * Searches the design point from `start`: on the surface that the margin's gradient promises, the point nearest to the origin,
 * z' = (∇g·z − g)·∇g/|∇g|², and from there again. A step that doesn't bring the sum of distance and margin down is halved.
 *
 * Sources: A. M. Hasofer, N. C. Lind, J. Eng. Mech. Div. 100 (1974) 111–121; R. Rackwitz, B. Fiessler, Comput. Struct. 9 (1978) 489–494;
 * step length by the merit function of P.-L. Liu, A. Der Kiureghian, Struct. Saf. 9 (1991) 161–177.
 * Slopes are taken `along` these dimensions only. Null where the margin doesn't change at all around the start.
 */
export function designPoint(state: LimitState, start: Float64Array, along: readonly number[]): DesignPoint | null {
  const n = state.dimensions;
  let z: Float64Array = start.slice();
  let margin = state.at(z);
  for (let pull = 0; margin === Number.NEGATIVE_INFINITY && pull < 12; pull++) {
    for (let d = 0; d < n; d++) z[d] *= pull < 11 ? 0.7 : 0;
    margin = state.at(z);
  }
  if (margin === Number.NEGATIVE_INFINITY) return null;
  let gradient: Float64Array = gradientAt(state, z, margin, along);
  const size = lengthOf(gradient);
  if (size === 0) return null;
  let settled = false;
  let weight = 0;

  for (let pass = 0; pass < 12 && !settled; pass++) {
    const steepness = lengthOf(gradient);
    if (steepness === 0) break;
    const share = (dot(gradient, z) - margin) / steepness ** 2;
    const reach = Math.min(1, FAR / Math.abs(share * steepness));
    const step = gradient.map((slope, d) => reach * share * slope - z[d]);
    settled = lengthOf(step) < NEAR_ALONG && Math.abs(margin) < NEAR * steepness;
    if (settled) break;
    const whole = Math.min(1, LONGEST / lengthOf(step));
    weight = Math.max(weight, (2 * Math.max(1, lengthOf(z), Math.abs(reach * share * steepness))) / steepness);
    const merit = lengthOf(z) ** 2 / 2 + weight * Math.abs(margin);
    let next: Float64Array | null = null;
    let nextMargin = margin;
    for (let part = whole; part > 0.01 && !next; part /= 2) {
      const trial = z.map((each, d) => each + part * step[d]);
      nextMargin = state.at(trial);
      if (lengthOf(trial) ** 2 / 2 + weight * Math.abs(nextMargin) < merit) next = trial;
    }
    if (!next) break;
    z = next;
    margin = nextMargin;
    if (lengthOf(z) > 0.97 * FAR && margin > NEAR * steepness) break;
    gradient = gradientAt(state, z, margin, along);
  }

  const steepness = lengthOf(gradient) || size;
  const direction = gradient.map((slope) => -slope / steepness);
  const distance = dot(direction, z);
  return { z, distance, direction, steepness, settled };
}

/** Dimensions along which the margin falls when they alone are far from the origin: by a two-thousandth of what it can lose, or all of it. */
export function fallingDimensions(state: LimitState): readonly number[] {
  const z = new Float64Array(state.dimensions);
  const origin = state.at(z);
  const falls = Array.from(z, (_, d) => {
    const margins = [-MOVED, MOVED].map((moved) => {
      z[d] = moved;
      return state.at(z);
    });
    z[d] = 0;
    return origin - Math.min(...margins);
  });
  const most = Math.min(Math.max(...falls), Math.abs(origin));
  return [...falls.keys()].filter((d) => falls[d] > most / 2000);
}

/** Slopes by differences to one side, or to the other where that side has no solution. */
function gradientAt(state: LimitState, z: Float64Array, margin: number, along: readonly number[]): Float64Array {
  const moved = z.slice();
  const slopes = new Float64Array(z.length);
  for (const d of along) {
    moved[d] = z[d] + STEP;
    const above = state.at(moved);
    moved[d] = z[d] - STEP;
    const slope =
      above > Number.NEGATIVE_INFINITY ? (above - margin) / STEP : (margin - Math.max(state.at(moved), -1e300)) / STEP;
    moved[d] = z[d];
    if (Math.abs(slope) < 1e200) slopes[d] = slope;
  }
  return slopes;
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let d = 0; d < a.length; d++) sum += a[d] * b[d];
  return sum;
}

function lengthOf(a: Float64Array): number {
  return Math.sqrt(dot(a, a));
}
