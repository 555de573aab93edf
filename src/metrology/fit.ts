import { type Fault, type FaultData, refuse } from '../fault/fault.ts';
import type { FaultCode } from '../fault/words/index.ts';
import { endsOf, type Spread } from '../quantity/spread.ts';
import { type Coordinates, coordinatesOf, naturalValue } from './coordinates.ts';
import { complaintsOf } from './fit-faults.ts';
import type { Joint } from './joint.ts';
import { centred, type Learning } from './learnt-draws.ts';
import { type Limits, scaledLimits, truncatedCovariance } from './limits.ts';
import { type Found, minimise, type NotFound } from './minimise.ts';
import { type Misfit, misfitOf } from './misfit.ts';
import type { Input, Model } from './model.ts';
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
  /** Physical limits of inputs, by id. */
  readonly limits?: Readonly<Record<string, Limits>>;
  /** Whether the ends of rectangles hold; by default a fitted value beyond one is only named. */
  readonly rectanglesHold?: boolean;
  /** Huber's loss instead of squares: a far observation pulls no harder than one at 1.345 of its uncertainty. */
  readonly robust?: boolean;
  /** Passes before giving up; 50 by default. */
  readonly maxPasses?: number;
  /** A step that counts as none, in units of each fitted uncertainty; 1e-3 by default. */
  readonly tolerance?: number;
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
  /** The limit at which the value is held because the observations pull it beyond; null inside. */
  readonly held: 'low' | 'high' | null;
  /** The end of a stated rectangle or its like that the fitted value lies beyond; null inside, and where no ends are stated. */
  readonly outside: 'low' | 'high' | null;
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
  /** How far the fitted value follows this observation [1]: 0 where nothing is learnt from it, 1 where it alone speaks. */
  readonly leverage: number;
  /** What it counts against others [1]; below 1 only in a robust fit. */
  readonly weight: number;
}

export interface Fit {
  readonly ending: 'converged' | 'not-converged' | 'no-solution' | 'undetermined';
  readonly passes: number;
  readonly inputs: readonly FittedInput[];
  /** Fitted values with their covariance, for predictions. */
  readonly joint: Joint;
  readonly residuals: readonly Residual[];
  /** Both parts together [1]. */
  readonly chiSquare: number;
  /** Σ(difference/u)² of the observations, and Σ(distance from the stated value/its uncertainty)² of the inputs [1]. */
  readonly chiSquareParts: { readonly observations: number; readonly stated: number };
  /** Observations, minus the inputs about which nothing was stated. */
  readonly degreesOfFreedom: number;
  /** Probability of a larger chi-square by chance [1]; null without degrees of freedom, and for a robust fit. */
  readonly chance: number | null;
  /** Where model and observations disagree by more than noise explains; null where they agree. */
  readonly misfit: Misfit | null;
  readonly faults: readonly Fault[];
}

/**
 * Most probable inputs given their stated values and the observations: minimises Σ((y − f(θ))/u)² + Σ((θ − θ₀)/u₀)². θ is the input, or its
 * logarithm where it is log-normal; a rectangle counts as a normal distribution of the same standard uncertainty; a fitted value beyond its
 * end is named, and held there only on request: the value at the end of a rectangle is likeliest, but predictions from it lean to one side.
 * Covariance P⁺ = (HᵀR⁻¹H + P⁻¹)⁻¹ with H = ∂f/∂θ, as for a linear model.
 *
 * Source: A. Tarantola, "Inverse Problem Theory" (SIAM 2005), section 3.4.
 */
export function fit(problem: FitProblem): Fit {
  for (const { id, u } of problem.observations) {
    if (!(u > 0)) throw new Error(`observation "${id}" has no uncertainty`);
  }
  const coordinates = coordinatesOf(problem);
  const limits = scaledLimits(coordinates, problem.limits ?? {}, problem.rectanglesHold ?? false);
  const minimum = minimise(problem, coordinates, limits);
  return minimum.ending === 'converged'
    ? finished(problem, coordinates, minimum)
    : without(coordinates, minimum, minimum.passes);
}

function finished(problem: FitProblem, coordinates: Coordinates, found: Found): Fit {
  const { scaled, here, passes, gradient, held } = found;
  const { ids, scale, centre, logarithmic, stated } = coordinates;
  const n = ids.length;
  const truncated = truncatedCovariance(found.covariance, gradient, held);
  let learning: { readonly made: Learning | undefined } | undefined;
  const joint = {
    ids,
    logarithmic,
    mean: scaled.map((value, i) => centre[i] + scale[i] * value),
    covariance: truncated.covariance.map((value, k) => value * scale[Math.floor(k / n)] * scale[k % n]),
    // Only draws want it, and it costs some evaluations.
    get learning() {
      learning ??= { made: learningOf(problem, coordinates, found) };
      return learning.made;
    },
  };
  const chiSquareParts = {
    observations: problem.observations.reduce((sum, { value, u }, k) => sum + ((value - here.values[k]) / u) ** 2, 0),
    stated: scaled.reduce((sum, each, i) => sum + (stated[i] ? each ** 2 : 0), 0),
  };
  const chiSquare = chiSquareParts.observations + chiSquareParts.stated;
  const degreesOfFreedom = problem.observations.length - stated.filter((each) => !each).length;
  const result = {
    ending: 'converged' as const,
    passes,
    inputs: ids.map((_, i) => fittedInput(coordinates, found, truncated, i)),
    joint,
    residuals: problem.observations.map((_, k) => residualOf(problem, found, truncated.covariance, k)),
    chiSquare,
    chiSquareParts,
    degreesOfFreedom,
    chance: degreesOfFreedom > 0 && !problem.robust ? chiSquareAbove(chiSquare, degreesOfFreedom) : null,
  };
  const misfit = misfitOf(problem, coordinates, found, result);
  return { ...result, misfit, faults: complaintsOf({ ...result, misfit }) };
}

/** Undefined where the straight update isn't the whole story: nothing stated of a number, a number held at a limit, a robust fit. */
function learningOf(problem: FitProblem, coordinates: Coordinates, found: Found): Learning | undefined {
  const { inputs, logarithmic, centre, scale, stated } = coordinates;
  const { slopes, covariance, scaled, held } = found;
  if (problem.robust || stated.includes(false) || held.some((each) => each !== 0)) return undefined;
  const n = inputs.length;
  const observations = problem.observations.length;
  const gain = new Float64Array(n * observations);
  for (let k = 0; k < observations; k++)
    for (let j = 0; j < n; j++) {
      const slope = slopes[k * n + j];
      if (slope !== 0) for (let i = 0; i < n; i++) gain[i * observations + k] += covariance[i * n + j] * slope;
    }
  const known = inputs.map(({ value, spread }) => ({ value, spread: spread! }));
  const learning = { stated: known, logarithmic, centre, scale, best: scaled, slopes, gain, observations };
  return centred(learning, (point) => {
    const { ending, values } = found.predictor.at(point);
    if (ending !== 'solved') return null;
    return values.map((value, k) => (value - found.here.values[k]) / problem.observations[k].u);
  });
}

function fittedInput(
  coordinates: Coordinates,
  found: Found,
  truncated: ReturnType<typeof truncatedCovariance>,
  i: number,
): FittedInput {
  const { spread, value: stated, id } = coordinates.inputs[i];
  const logarithmic = coordinates.logarithmic[i];
  const value = naturalValue(coordinates, i, found.scaled[i]);
  const at = i * (coordinates.ids.length + 1);
  const deviation = Math.sqrt(truncated.covariance[at]) * coordinates.scale[i];
  const ratio = spread === null ? null : Math.sqrt(truncated.covariance[at]);
  const ends = spread && endsOf(spread);
  // The observations are heard whatever a limit makes of them.
  const heard = 1 - found.covariance[at];
  return {
    id,
    prior: { value: stated, u: spread === null ? null : coordinates.scale[i] * (logarithmic ? stated : 1) },
    value,
    u: logarithmic ? value * deviation : deviation,
    spread: logarithmic ? { shape: 'log-normal', sigma: deviation } : { shape: 'normal', u: deviation },
    ratio,
    determined: ratio === null || ratio < 0.5 ? 'yes' : ratio > 0.9 ? 'no' : 'partly',
    pull: ratio === null || heard < 1e-6 ? null : (found.scaled[i] + truncated.beyond[i]) / Math.sqrt(heard),
    held: found.held[i] === 0 ? null : found.held[i] > 0 ? 'high' : 'low',
    outside: ends === null ? null : value > ends.high ? 'high' : value < ends.low ? 'low' : null,
  };
}

function residualOf(problem: FitProblem, found: Found, covariance: Float64Array, k: number): Residual {
  const { id, value, u } = problem.observations[k];
  const n = found.scaled.length;
  const row = found.slopes.subarray(k * n, k * n + n);
  let square = 0;
  for (let i = 0; i < n; i++) {
    if (row[i] !== 0) for (let j = 0; j < n; j++) square += row[i] * covariance[i * n + j] * row[j];
  }
  const fitted = found.here.values[k];
  const weight = found.weights[k];
  const leverage = weight * square;
  const size = 1 - leverage < 1e-6 ? null : (value - fitted) / u / Math.sqrt(1 - leverage);
  return { observation: id, fitted, difference: value - fitted, size, leverage, weight };
}

/** A fit without a result: nothing in it can be mistaken for one. */
function without(coordinates: Coordinates, minimum: NotFound, passes: number): Fit {
  const { ending, start, refused } = minimum;
  const none = new Float64Array(0);
  const fault = (code: FaultCode, data: FaultData) => [refuse(code, data)];
  const faults =
    ending === 'no-solution'
      ? fault('fit/no-solution', { observation: start?.failed ?? '', ending: start?.ending ?? '' })
      : refused.length > 0
        ? fault('fit/beyond-model', { inputs: refused.map((i) => coordinates.ids[i]) })
        : ending === 'not-converged'
          ? fault('fit/not-converged', { passes })
          : fault('fit/undetermined', { inputs: coordinates.ids.filter((_, i) => !coordinates.stated[i]) });
  return {
    ending,
    passes,
    inputs: [],
    joint: { ids: [], mean: none, covariance: none, logarithmic: [] },
    residuals: [],
    chiSquare: Number.POSITIVE_INFINITY,
    chiSquareParts: { observations: Number.POSITIVE_INFINITY, stated: 0 },
    degreesOfFreedom: 0,
    chance: null,
    misfit: null,
    faults,
  };
}
