import type { Coordinates } from './coordinates.ts';
import type { FitProblem } from './fit.ts';
import { dampedStep, equationsOf } from './gauss-newton.ts';
import { huberLoss } from './huber.ts';
import { heldBy, inside, type ScaledLimits } from './limits.ts';
import { type Prediction, type Predictor, predictionOf } from './prediction.ts';

/** The most probable point, or why there's none. */
export type Minimum = Found | NotFound;

export interface Found {
  readonly ending: 'converged';
  readonly passes: number;
  readonly scaled: Float64Array;
  readonly here: Prediction;
  readonly predictor: Predictor;
  /** ∂prediction/∂coordinate over the observation's uncertainty, row by row. */
  readonly slopes: Float64Array;
  /** What each observation counts [1]: 1 unless the loss is robust. */
  readonly weights: Float64Array;
  /** (HᵀWR⁻¹H + P⁻¹)⁻¹ in scaled coordinates, as if there were no limits. */
  readonly covariance: Float64Array;
  /** HᵀWR⁻¹(y − f) − P⁻¹(θ − θ₀): what pulls at the coordinates that are held. */
  readonly gradient: Float64Array;
  /** Coordinates held at their upper (+1) or lower (−1) limit. */
  readonly held: Int8Array;
}

export interface NotFound {
  readonly ending: 'not-converged' | 'no-solution' | 'undetermined';
  readonly passes: number;
  /** Observation whose model has no solution at the start, and how it ended. */
  readonly start?: Prediction;
  /** Coordinates that are pulled to where the models have no solution. */
  readonly refused: readonly number[];
}

/**
 * Gauss–Newton with Levenberg–Marquardt damping, inside limits: a coordinate at its limit that is pulled beyond it is held there for the pass.
 * Slopes are taken anew where it matters, at the start, after a step that was refused or hardly shorter than the one before, and at the end, and in between brought up to date from
 * the change of the predictions (C. G. Broyden, Math. Comp. 19 (1965) 577–593).
 * Robust loss: each pass weighs the observations anew (iteratively reweighted least squares).
 *
 * Sources: D. W. Marquardt, J. Soc. Indust. Appl. Math. 11 (1963) 431–441; for the limits D. P. Bertsekas, SIAM J. Control Optim. 20 (1982) 221–246.
 */
export function minimise(
  problem: FitProblem,
  coordinates: Coordinates,
  limits: ScaledLimits,
  start: Float64Array = new Float64Array(coordinates.ids.length),
): Minimum {
  const predictor = predictionOf(problem, coordinates, limits);
  const maxPasses = problem.maxPasses ?? 50;
  const tolerance = (problem.tolerance ?? 1e-3) ** 2;
  const allStated = coordinates.stated.every(Boolean);
  const lossAt = (scaled: Float64Array, here: Prediction) => lossOf(problem, coordinates, scaled, here);

  let scaled = start;
  let here = predictor.at(scaled);
  if (here.ending !== 'solved') return { ending: 'no-solution', passes: 0, start: here, refused: [] };
  let slopes = predictor.slopes(scaled, here);
  let exact = true;
  // Stated uncertainties keep the first step short by themselves; where there are none, damping has to.
  let damping = allStated ? 0 : 0.1;
  let passes = 0;
  let small = false;
  /** Largest part of the last step, in fitted uncertainties. */
  let stride = Number.POSITIVE_INFINITY;

  while (true) {
    const equations = equationsOf(problem, coordinates, scaled, here, slopes);
    const { variances } = equations;
    const held = heldBy(limits, scaled, equations.gradient);
    if (small && variances) {
      if (exact) {
        const covariance = equations.covariance();
        const { gradient, weights, slopes: scaledSlopes } = equations;
        const found = { scaled, here, predictor, slopes: scaledSlopes, weights, covariance, gradient, held };
        return { ending: 'converged', passes, ...found };
      }
      slopes = predictor.slopes(scaled, here);
      exact = true;
      small = false;
      continue;
    }
    if (passes === maxPasses || damping > 1e12) {
      const refused = refusedAlong(equations.gradient, held, scaled, predictor);
      const ending = refused.length > 0 || variances ? 'not-converged' : 'undetermined';
      return { ending, passes, refused };
    }
    passes++;

    const before = lossAt(scaled, here);
    let accepted = false;
    while (!accepted && damping <= 1e12) {
      const step = dampedStep(equations, held, damping, limits, scaled);
      const wanted = step && scaled.map((value, i) => value + step[i]);
      const point = wanted && inside(limits, wanted);
      const there = point && predictor.at(point);
      // What a solver's own tolerance adds to the loss is no reason to refuse a step.
      accepted = there?.ending === 'solved' && lossAt(point!, there) <= before + 1e-9 * (1 + before);
      if (point && there && accepted) {
        const moved = point.map((value, i) => value - scaled[i]);
        const longest = moved.reduce((most, each, i) => Math.max(most, each ** 2 / (variances?.[i] ?? 0)), 0);
        small = damping < 1e-3 && longest <= tolerance;
        // Old slopes serve a small last step, and where stated knowledge keeps the steps short.
        // Steps that hardly shrink any more show that the slopes have become too old.
        const quick: boolean = allStated && damping === 0 && (exact || longest < 0.1 * stride);
        stride = longest;
        if (quick && !(small && exact)) update(slopes, moved, here, there);
        if (!quick) slopes = predictor.slopes(point, there);
        exact = !quick || (small && exact);
        scaled = point;
        here = there;
        damping = damping > 1e-4 ? damping / 10 : 0;
      } else if (exact) {
        damping = Math.max(1e-3, damping * 10);
      } else break;
    }
    if (!accepted && !exact) {
      slopes = predictor.slopes(scaled, here);
      exact = true;
    }
  }
}

/** Σ loss((y − f)/u) + Σ((θ − θ₀)/u₀)² [1]. */
export function lossOf(problem: FitProblem, coordinates: Coordinates, scaled: Float64Array, here: Prediction): number {
  let sum = 0;
  problem.observations.forEach(({ value, u }, k) => {
    const residual = (value - here.values[k]) / u;
    sum += problem.robust ? huberLoss(residual) : residual ** 2;
  });
  for (let i = 0; i < scaled.length; i++) if (coordinates.stated[i]) sum += scaled[i] ** 2;
  return sum;
}

/** Least change of the slopes that explains how the predictions changed over a step. */
function update(slopes: Float64Array, moved: Float64Array, here: Prediction, there: Prediction): void {
  const n = moved.length;
  const square = moved.reduce((sum, each) => sum + each ** 2, 0);
  if (square === 0) return;
  here.values.forEach((value, k) => {
    const row = slopes.subarray(k * n, k * n + n);
    let change = there.values[k] - value;
    for (let i = 0; i < n; i++) change -= row[i] * moved[i];
    for (let i = 0; i < n; i++) row[i] += (change * moved[i]) / square;
  });
}

/** Coordinates that the observations pull to where the models have no solution: no damping leads there. */
function refusedAlong(gradient: Float64Array, held: Int8Array, scaled: Float64Array, predictor: Predictor): number[] {
  return [...gradient.keys()].filter((i) => {
    if (held[i] !== 0) return false;
    const beyond = scaled.slice();
    // A hundredth of what is stated: the step that slopes are taken over.
    beyond[i] += 1e-2 * Math.sign(gradient[i]);
    return predictor.at(beyond).ending !== 'solved';
  });
}
