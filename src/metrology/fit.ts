import { type Fault, type FaultData, refuse } from '../fault/fault.ts';
import type { FaultCode } from '../fault/words/index.ts';
import { cholesky, choleskyInverse, choleskySolve } from '../numeric/dense.ts';
import type { Spread } from '../quantity/spread.ts';
import { type Coordinates, coordinatesOf, naturalValue } from './coordinates.ts';
import { complaintsOf } from './fit-faults.ts';
import type { Joint } from './joint.ts';
import type { Input, Model } from './model.ts';
import { type Prediction, type Predictor, predictionOf } from './prediction.ts';
import { chiSquareAbove } from './probability.ts';

/** A measured value of an output. */
export interface Observation {
  readonly id: string;
  readonly model: Model;
  readonly output: string;
  /** Measured value [SI]. */
  readonly value: number;
  /** Its standard uncertainty [SI], as far as it is its own: what several observations share belongs into an input. */
  readonly u: number;
}

export interface FitProblem {
  /** Every input that the models share or that is free, by id; an input of a model that isn't here keeps the model's own value. */
  readonly inputs: readonly Input[];
  /** Ids of the inputs to fit; by default all with an uncertainty. A free input without one starts from nothing known. */
  readonly free?: readonly string[];
  readonly observations: readonly Observation[];
  /** Passes before giving up; 50 by default. */
  readonly maxPasses?: number;
}

/** An input after the fit. */
export interface FittedInput {
  readonly id: string;
  /** Stated value and standard uncertainty [SI]; `u` null where nothing was stated. */
  readonly prior: { readonly value: number; readonly u: number | null };
  /** Fitted value and its standard uncertainty [SI]; for a log-normal input the median, and value times σ. */
  readonly value: number;
  readonly u: number;
  readonly spread: Spread;
  /** Fitted over stated uncertainty [1]; null where nothing was stated. */
  readonly ratio: number | null;
  /** What the observations say about it: `yes` below half the stated uncertainty, `no` above nine tenths (common practice, no source). */
  readonly determined: 'yes' | 'partly' | 'no';
  /** Stated value against what the observations alone say, in units of their combined uncertainty; null where there's nothing to compare. */
  readonly pull: number | null;
  /** True where the fitted value lies outside a rectangle that was stated. */
  readonly outside: boolean;
}

/** An observation against the fitted model. */
export interface Residual {
  readonly observation: string;
  /** Fitted value of the output [SI]. */
  readonly fitted: number;
  /** Measured minus fitted [SI]. */
  readonly difference: number;
  /**
   * The difference over its own standard uncertainty √(u² − HP⁺Hᵀ). This is the same number as measured minus predicted from everything but
   * this observation, over the combined uncertainty of the two. Null where nothing else speaks about this observation.
   */
  readonly size: number | null;
}

export interface Fit {
  readonly ending: 'converged' | 'not-converged' | 'no-solution' | 'undetermined';
  readonly passes: number;
  readonly inputs: readonly FittedInput[];
  /** Fitted values with their covariance, for predictions. */
  readonly joint: Joint;
  readonly residuals: readonly Residual[];
  /** Σ(difference/u)² + Σ(distance from the stated value/its uncertainty)² [1]. */
  readonly chiSquare: number;
  /** Observations, minus the inputs about which nothing was stated. */
  readonly degreesOfFreedom: number;
  /** Probability of a larger chi-square by chance [1]; null without degrees of freedom. */
  readonly chance: number | null;
  readonly faults: readonly Fault[];
}

/**
 * Most probable inputs given their stated values and the observations, by Gauss–Newton with Levenberg–Marquardt damping:
 * minimises Σ((y − f(θ))/u)² + Σ((θ − θ₀)/u₀)². θ is the input, or its logarithm where it is log-normal; a rectangle counts as a
 * normal distribution of the same standard uncertainty. Covariance P⁺ = (HᵀR⁻¹H + P⁻¹)⁻¹ with H = ∂f/∂θ, as for a linear model.
 *
 * Sources: D. W. Marquardt, J. Soc. Indust. Appl. Math. 11 (1963) 431–441; A. Tarantola, "Inverse Problem Theory" (SIAM 2005), section 3.4.
 */
export function fit(problem: FitProblem): Fit {
  for (const { id, u } of problem.observations) {
    if (!(u > 0)) throw new Error(`observation "${id}" has no uncertainty`);
  }
  const coordinates = coordinatesOf(problem);
  const predictor = predictionOf(problem, coordinates);
  const n = coordinates.ids.length;
  const maxPasses = problem.maxPasses ?? 50;
  let scaled = new Float64Array(n);
  let here = predictor.at(scaled);
  if (here.ending !== 'solved') {
    const data = { observation: here.failed ?? '', ending: here.ending };
    return without('no-solution', 0, 'fit/no-solution', data);
  }

  // Stated uncertainties keep the first step short by themselves; where there are none, damping has to.
  let damping = coordinates.stated.every(Boolean) ? 0 : 0.1;
  let passes = 0;
  let small = false;
  while (true) {
    const equations = normalEquations(problem, coordinates, predictor, scaled, here);
    const factor = cholesky(equations.normal, n);
    const covariance = factor && choleskyInverse(factor, n);
    if (small && covariance) {
      return finished(problem, coordinates, { passes, scaled, here, covariance, slopes: equations.slopes });
    }
    if (passes === maxPasses || damping > 1e12) {
      const refused = refusedAlong(equations.gradient, scaled, predictor).map((i) => coordinates.ids[i]);
      if (refused.length > 0) return without('not-converged', passes, 'fit/beyond-model', { inputs: refused });
      if (covariance) return without('not-converged', passes, 'fit/not-converged', { passes });
      const inputs = coordinates.ids.filter((_, i) => !coordinates.stated[i]);
      return without('undetermined', passes, 'fit/undetermined', { inputs });
    }
    passes++;

    const before = chiSquareOf(problem, coordinates, scaled, here);
    for (let accepted = false; !accepted && damping <= 1e12; ) {
      const step = dampedStep(equations, damping);
      const point = scaled.map((value, i) => value + (step?.[i] ?? 0));
      const there = step && predictor.at(point);
      // What a solver's own tolerance adds to chi-square is no reason to refuse a step.
      const allowed = before + 1e-9 * (1 + before);
      accepted = there?.ending === 'solved' && chiSquareOf(problem, coordinates, point, there) <= allowed;
      if (step && there && accepted) {
        small = damping < 1e-3 && step.every((each, i) => each ** 2 <= 1e-10 * (covariance?.[i * n + i] ?? 0));
        scaled = point;
        here = there;
        damping = damping > 1e-4 ? damping / 10 : 0;
      } else {
        damping = Math.max(1e-3, damping * 10);
      }
    }
  }
}

interface Equations {
  /** HᵀR⁻¹H + P⁻¹ in scaled coordinates, row by row. */
  readonly normal: Float64Array;
  /** HᵀR⁻¹(y − f) − P⁻¹(θ − θ₀). */
  readonly gradient: Float64Array;
  /** ∂prediction/∂coordinate over the observation's uncertainty, row by row. */
  readonly slopes: Float64Array;
}

function normalEquations(
  problem: FitProblem,
  coordinates: Coordinates,
  predictor: Predictor,
  scaled: Float64Array,
  here: Prediction,
): Equations {
  const n = scaled.length;
  const slopes = predictor.slopes(scaled, here);
  const normal = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  problem.observations.forEach(({ value, u }, k) => {
    const row = slopes.subarray(k * n, k * n + n);
    for (let i = 0; i < n; i++) row[i] /= u;
    const difference = (value - here.values[k]) / u;
    for (let i = 0; i < n; i++) {
      if (row[i] === 0) continue;
      gradient[i] += row[i] * difference;
      for (let j = 0; j < n; j++) normal[i * n + j] += row[i] * row[j];
    }
  });
  for (let i = 0; i < n; i++) {
    if (!coordinates.stated[i]) continue;
    normal[i * n + i] += 1;
    gradient[i] -= scaled[i];
  }
  return { normal, gradient, slopes };
}

/** Coordinates that the observations pull to where the models have no solution: no damping leads there. */
function refusedAlong(gradient: Float64Array, scaled: Float64Array, predictor: Predictor): number[] {
  return [...gradient.keys()].filter((i) => {
    const beyond = scaled.slice();
    // A hundredth of what is stated: the step that slopes are taken over.
    beyond[i] += 1e-2 * Math.sign(gradient[i]);
    return predictor.at(beyond).ending !== 'solved';
  });
}

/** Null where the equations have no solution. */
function dampedStep({ normal, gradient }: Equations, damping: number): Float64Array | null {
  const n = gradient.length;
  const damped = normal.slice();
  for (let i = 0; i < n; i++) damped[i * n + i] *= 1 + damping;
  const factor = cholesky(damped, n);
  return factor && choleskySolve(factor, gradient, n);
}

function chiSquareOf(problem: FitProblem, coordinates: Coordinates, scaled: Float64Array, here: Prediction): number {
  let sum = 0;
  problem.observations.forEach(({ value, u }, k) => {
    sum += ((value - here.values[k]) / u) ** 2;
  });
  for (let i = 0; i < scaled.length; i++) if (coordinates.stated[i]) sum += scaled[i] ** 2;
  return sum;
}

interface Finish {
  readonly passes: number;
  readonly scaled: Float64Array;
  readonly here: Prediction;
  readonly covariance: Float64Array;
  readonly slopes: Float64Array;
}

function finished(problem: FitProblem, coordinates: Coordinates, finish: Finish): Fit {
  const { scaled, here, covariance, passes } = finish;
  const { ids, scale, centre, logarithmic, stated } = coordinates;
  const n = ids.length;
  const joint = {
    ids,
    logarithmic,
    mean: scaled.map((value, i) => centre[i] + scale[i] * value),
    covariance: covariance.map((value, k) => value * scale[Math.floor(k / n)] * scale[k % n]),
  };
  const chiSquare = chiSquareOf(problem, coordinates, scaled, here);
  const degreesOfFreedom = problem.observations.length - stated.filter((each) => !each).length;
  const found = {
    ending: 'converged' as const,
    passes,
    inputs: ids.map((_, i) => fittedInput(coordinates, i, scaled[i], covariance[i * n + i])),
    joint,
    residuals: problem.observations.map((_, k) => residualOf(problem, k, finish)),
    chiSquare,
    degreesOfFreedom,
    chance: degreesOfFreedom > 0 ? chiSquareAbove(chiSquare, degreesOfFreedom) : null,
  };
  return { ...found, faults: complaintsOf(found) };
}

function fittedInput(coordinates: Coordinates, i: number, scaled: number, variance: number): FittedInput {
  const { spread, value: stated, id } = coordinates.inputs[i];
  const logarithmic = coordinates.logarithmic[i];
  const value = naturalValue(coordinates, i, scaled);
  const deviation = Math.sqrt(variance) * coordinates.scale[i];
  const ratio = spread === null ? null : Math.sqrt(variance);
  return {
    id,
    prior: { value: stated, u: spread === null ? null : coordinates.scale[i] * (logarithmic ? stated : 1) },
    value,
    u: logarithmic ? value * deviation : deviation,
    spread: logarithmic ? { shape: 'log-normal', sigma: deviation } : { shape: 'normal', u: deviation },
    ratio,
    determined: ratio === null || ratio < 0.5 ? 'yes' : ratio > 0.9 ? 'no' : 'partly',
    pull: ratio === null || 1 - variance < 1e-6 ? null : scaled / Math.sqrt(1 - variance),
    outside: spread?.shape === 'rectangular' && (value < spread.low || value > spread.high),
  };
}

function residualOf(problem: FitProblem, k: number, { slopes, covariance, here, scaled }: Finish): Residual {
  const { id, value, u } = problem.observations[k];
  const n = scaled.length;
  const row = slopes.subarray(k * n, k * n + n);
  // Part of the observation's own variance that the fit has taken over: 0 when nothing was learnt from it, 1 when it alone speaks.
  let leverage = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) leverage += row[i] * covariance[i * n + j] * row[j];
  const difference = value - here.values[k];
  const size = 1 - leverage < 1e-6 ? null : difference / u / Math.sqrt(1 - leverage);
  return { observation: id, fitted: here.values[k], difference, size };
}

/** A fit without a result: nothing in it can be mistaken for one. */
function without(ending: Exclude<Fit['ending'], 'converged'>, passes: number, code: FaultCode, data: FaultData): Fit {
  const none = new Float64Array(0);
  return {
    ending,
    passes,
    inputs: [],
    joint: { ids: [], mean: none, covariance: none, logarithmic: [] },
    residuals: [],
    chiSquare: Number.POSITIVE_INFINITY,
    degreesOfFreedom: 0,
    chance: null,
    faults: [refuse(code, data)],
  };
}
