import { type Coordinates, coordinatesOf } from './coordinates.ts';
import type { Fit, FitProblem } from './fit.ts';
import { type ScaledLimits, scaledLimits } from './limits.ts';
import { lossOf, minimise } from './minimise.ts';
import { predictionOf } from './prediction.ts';

/** An input whose fitted uncertainty isn't the same on both sides, or isn't what the curvature at the best value says. */
export interface Bend {
  readonly id: string;
  /** Standard uncertainties towards lower and higher values that the profile gives, in units of the fitted u [1]; 0 where there is no solution. */
  readonly low: number;
  readonly high: number;
}

/** Two standard uncertainties: far enough to see what a 95 % interval would see. */
const REACH = 2;

/**
 * Inputs along which the posterior bends: the input is moved by 2u each way, the others follow to their best values there (profile
 * likelihood), and the loss should rise by 4. Where the uncertainty that the rise stands for differs from u by more than a tenth, the input is
 * listed. A first look takes the others along a straight line; only what it suspects is fitted again. Inputs held at a limit aren't looked at:
 * their distribution is known not to be normal. `asked`: only these.
 *
 * Source: profile likelihood, D. M. Bates, D. G. Watts, "Nonlinear Regression Analysis and Its Applications" (Wiley 1988), section 6.1, from memory.
 */
export function bending(problem: FitProblem, fit: Fit, asked: (id: string) => boolean = () => true): readonly Bend[] {
  const space = fittedSpace(problem, fit);
  const { coordinates, limits, best, covariance } = space;
  const n = best.length;
  const predictor = predictionOf(problem, coordinates, limits);
  const lossAt = (point: Float64Array) => {
    const there = predictor.at(point);
    return there.ending === 'solved' ? lossOf(problem, coordinates, point, there) : Number.POSITIVE_INFINITY;
  };
  const least = lossAt(best);
  return fit.inputs.flatMap(({ id, held }, i): Bend[] => {
    const u = Math.sqrt(covariance[i * (n + 1)]);
    if (held !== null || u === 0 || !asked(id)) return [];
    const [low, high] = [-1, 1].map((side) => {
      const along = best.map((value, j) => value + (side * REACH * covariance[j * n + i]) / u);
      if (outside(limits, along)) return 1;
      const straight = sideOf(lossAt(along) - least);
      if (Math.abs(straight - 1) <= 0.1) return straight;
      const pinned = { low: limits.low.slice(), high: limits.high.slice() };
      pinned.low[i] = pinned.high[i] = along[i];
      const found = minimise(problem, coordinates, pinned, along);
      return found.ending === 'converged' ? sideOf(lossOf(problem, coordinates, found.scaled, found.here) - least) : 0;
    });
    return Math.abs(low - 1) > 0.1 || Math.abs(high - 1) > 0.1 ? [{ id, low, high }] : [];
  });
}

/** The uncertainty that a rise of the loss over two of them stands for [u]. */
function sideOf(rise: number): number {
  return rise > 0 ? REACH / Math.sqrt(rise) : Number.POSITIVE_INFINITY;
}

function outside(limits: ScaledLimits, point: Float64Array): boolean {
  return point.some((value, i) => value < limits.low[i] || value > limits.high[i]);
}

/** A fit in its scaled coordinates. */
export interface FittedSpace {
  readonly coordinates: Coordinates;
  readonly limits: ScaledLimits;
  readonly best: Float64Array;
  readonly covariance: Float64Array;
}

export function fittedSpace(problem: FitProblem, fit: Fit): FittedSpace {
  if (fit.ending !== 'converged') throw new Error('a fit without a result has no posterior');
  const coordinates = coordinatesOf(problem);
  const { centre, scale } = coordinates;
  const n = centre.length;
  const { mean, covariance } = fit.joint;
  return {
    coordinates,
    limits: scaledLimits(coordinates, problem.limits ?? {}, problem.rectanglesHold ?? false),
    best: mean.map((value, i) => (value - centre[i]) / scale[i]),
    covariance: covariance.map((value, k) => value / scale[Math.floor(k / n)] / scale[k % n]),
  };
}
