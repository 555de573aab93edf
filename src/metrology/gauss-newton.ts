import { cholesky, choleskyInverse, choleskySolve } from '../numeric/dense.ts';
import type { Coordinates } from './coordinates.ts';
import type { FitProblem } from './fit.ts';
import { huberWeight } from './huber.ts';
import type { ScaledLimits } from './limits.ts';
import type { Prediction } from './prediction.ts';

/** The linear problem around a point, in scaled coordinates. */
export interface Equations {
  /** What each observation counts [1]. */
  readonly weights: Float64Array;
  /** H: ∂prediction/∂coordinate over the observation's uncertainty, row by row. */
  readonly slopes: Float64Array;
  /** HᵀW(y − f) − (θ − θ₀). */
  readonly gradient: Float64Array;
  /** Variances of the coordinates; null where the observations don't determine all of them. */
  readonly variances: Float64Array | null;
  /** Covariance of the coordinates, row by row; only where there are variances. */
  covariance(): Float64Array;
  /** The undamped step; null where there are no variances. */
  step(): Float64Array | null;
  /** HᵀWH + P⁻¹, row by row. */
  normal(): Float64Array;
}

/**
 * With more inputs than observations, each of them with a stated uncertainty, everything comes from the smaller matrix S = I + H̃H̃ᵀ of the
 * observations: covariance I − H̃ᵀS⁻¹H̃, step g − H̃ᵀS⁻¹H̃g with H̃ = W^½H; otherwise from the normal equations.
 * Source: A. Tarantola, "Inverse Problem Theory" (SIAM 2005), section 3.2 and appendix 6.30, from memory.
 */
export function equationsOf(
  problem: FitProblem,
  coordinates: Coordinates,
  scaled: Float64Array,
  here: Prediction,
  natural: Float64Array,
): Equations {
  const { observations, robust } = problem;
  const n = scaled.length;
  const m = observations.length;
  const slopes = natural.slice();
  const gradient = new Float64Array(n);
  const weights = new Float64Array(m).fill(1);
  observations.forEach(({ value, u }, k) => {
    const row = slopes.subarray(k * n, k * n + n);
    const difference = (value - here.values[k]) / u;
    if (robust) weights[k] = huberWeight(difference);
    for (let i = 0; i < n; i++) {
      row[i] /= u;
      gradient[i] += weights[k] * row[i] * difference;
    }
  });
  for (let i = 0; i < n; i++) if (coordinates.stated[i]) gradient[i] -= scaled[i];

  function normal(): Float64Array {
    const result = new Float64Array(n * n);
    for (let k = 0; k < m; k++) {
      const row = slopes.subarray(k * n, k * n + n);
      for (let i = 0; i < n; i++) {
        if (row[i] === 0) continue;
        const weighted = weights[k] * row[i];
        for (let j = 0; j < n; j++) result[i * n + j] += weighted * row[j];
      }
    }
    for (let i = 0; i < n; i++) if (coordinates.stated[i]) result[i * n + i] += 1;
    return result;
  }
  const common = { weights, slopes, gradient, normal };
  return m < n && coordinates.stated.every(Boolean)
    ? { ...common, ...byObservations(slopes, weights, gradient) }
    : { ...common, ...byCoordinates(normal(), gradient) };
}

type Solution = Pick<Equations, 'variances' | 'covariance' | 'step'>;

function byCoordinates(normal: Float64Array, gradient: Float64Array): Solution {
  const n = gradient.length;
  const factor = cholesky(normal, n);
  const covariance = factor && choleskyInverse(factor, n);
  return {
    variances: covariance && gradient.map((_, i) => covariance[i * (n + 1)]),
    covariance: () => covariance ?? new Float64Array(0),
    step: () => factor && choleskySolve(factor, gradient, n),
  };
}

function byObservations(slopes: Float64Array, weights: Float64Array, gradient: Float64Array): Solution {
  const n = gradient.length;
  const m = weights.length;
  const rows = slopes.slice();
  for (let k = 0; k < m; k++) for (let i = 0; i < n; i++) rows[k * n + i] *= Math.sqrt(weights[k]);
  const gram = new Float64Array(m * m);
  for (let k = 0; k < m; k++) {
    for (let l = 0; l <= k; l++) {
      let sum = k === l ? 1 : 0;
      for (let i = 0; i < n; i++) sum += rows[k * n + i] * rows[l * n + i];
      gram[k * m + l] = gram[l * m + k] = sum;
    }
  }
  // S is the unit matrix plus a square: it always has a factor.
  const factor = cholesky(gram, m)!;
  // L⁻¹H̃ in place, row by row: then S⁻¹ needs no more solving.
  for (let k = 0; k < m; k++) {
    for (let l = 0; l < k; l++) {
      const share = factor[k * m + l];
      for (let i = 0; i < n; i++) rows[k * n + i] -= share * rows[l * n + i];
    }
    for (let i = 0; i < n; i++) rows[k * n + i] /= factor[k * m + k];
  }
  const variances = new Float64Array(n).fill(1);
  for (let k = 0; k < m; k++) for (let i = 0; i < n; i++) variances[i] -= rows[k * n + i] ** 2;
  return {
    variances,
    covariance() {
      const result = new Float64Array(n * n);
      for (let i = 0; i < n; i++) result[i * (n + 1)] = 1;
      for (let k = 0; k < m; k++) {
        const row = rows.subarray(k * n, k * n + n);
        for (let i = 0; i < n; i++) {
          if (row[i] === 0) continue;
          for (let j = 0; j < n; j++) result[i * n + j] -= row[i] * row[j];
        }
      }
      return result;
    },
    step() {
      const result = gradient.slice();
      for (let k = 0; k < m; k++) {
        const row = rows.subarray(k * n, k * n + n);
        let along = 0;
        for (let i = 0; i < n; i++) along += row[i] * gradient[i];
        for (let i = 0; i < n; i++) result[i] -= row[i] * along;
      }
      return result;
    },
  };
}

/**
 * Null where the equations have no solution. Held coordinates don't move; one that the step would carry beyond its limit goes to the limit,
 * and the others are solved for again, so that the step is the best one inside.
 */
export function dampedStep(
  equations: Equations,
  held: Int8Array,
  damping: number,
  limits: ScaledLimits,
  scaled: Float64Array,
): Float64Array | null {
  const { gradient } = equations;
  const n = gradient.length;
  const straight = damping === 0 && held.every((each) => each === 0) ? equations.step() : null;
  if (straight?.every((each, i) => scaled[i] + each <= limits.high[i] && scaled[i] + each >= limits.low[i]))
    return straight;
  const normal = equations.normal();
  const fixed = Float64Array.from(held, (each) => (each === 0 ? Number.NaN : 0));
  for (let round = 0; ; round++) {
    const damped = normal.slice();
    const pull = gradient.slice();
    for (let i = 0; i < n; i++) damped[i * n + i] *= 1 + damping;
    for (let i = 0; i < n; i++) {
      if (Number.isNaN(fixed[i])) continue;
      for (let j = 0; j < n; j++) if (Number.isNaN(fixed[j])) pull[j] -= damped[j * n + i] * fixed[i];
      for (let j = 0; j < n; j++) damped[i * n + j] = damped[j * n + i] = i === j ? 1 : 0;
      pull[i] = fixed[i];
    }
    const factor = cholesky(damped, n);
    const step = factor && choleskySolve(factor, pull, n);
    if (!step) return null;
    let crossing = 0;
    for (let i = 0; i < n; i++) {
      if (!Number.isNaN(fixed[i])) continue;
      const there = scaled[i] + step[i];
      const end = there > limits.high[i] ? limits.high[i] : there < limits.low[i] ? limits.low[i] : Number.NaN;
      if (Number.isNaN(end)) continue;
      fixed[i] = end - scaled[i];
      crossing++;
    }
    if (crossing === 0 || round === 20) return step;
  }
}
