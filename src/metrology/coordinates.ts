import { endsOf, standardUncertainty } from '../quantity/spread.ts';
import type { FitProblem } from './fit.ts';
import type { Limits } from './limits.ts';
import type { Input } from './model.ts';

/**
 * The numbers a fit moves: each free input, or its logarithm where it is positive by its nature, as distance from its stated value in units of
 * its stated uncertainty. So all of them are of size 1, and the stated knowledge is a unit matrix. Every shape counts as a normal distribution with the
 * same standard uncertainty about the best value; a log-normal one as such about its median.
 */
export interface Coordinates {
  readonly inputs: readonly Input[];
  readonly ids: readonly string[];
  readonly logarithmic: readonly boolean[];
  /** Stated value, or its logarithm. */
  readonly centre: Float64Array;
  /** Stated standard uncertainty of it; where nothing is stated, the value's own size. */
  readonly scale: Float64Array;
  /** Whether an uncertainty is stated. */
  readonly stated: readonly boolean[];
}

export function coordinatesOf(problem: FitProblem): Coordinates {
  const wanted = problem.free ?? problem.inputs.filter((input) => input.spread !== null).map((input) => input.id);
  const inputs = wanted.map((id) => {
    const input = problem.inputs.find((each) => each.id === id);
    if (!input) throw new Error(`free input "${id}" is not among the inputs`);
    return input;
  });
  const logarithmic = inputs.map((input) => countsByLogarithm(input, problem.limits?.[input.id]));
  return {
    inputs,
    ids: wanted,
    logarithmic,
    centre: Float64Array.from(inputs, (input, i) => (logarithmic[i] ? Math.log(input.value) : input.value)),
    scale: Float64Array.from(inputs, (input, i) => scaleOf(input, logarithmic[i])),
    stated: inputs.map((input) => input.spread !== null),
  };
}

/** Value of an input [SI] at a scaled coordinate. */
export function naturalValue(coordinates: Coordinates, i: number, scaled: number): number {
  const coordinate = coordinates.centre[i] + coordinates.scale[i] * scaled;
  return coordinates.logarithmic[i] ? Math.exp(coordinate) : coordinate;
}

/**
 * A number that can't be negative counts by its logarithm, as a log-normal one does: a board's numbers stand in products, and what a reading ties
 * together there is straight in the logarithms. Not where so much is open that the shape would matter, or where an end reaches zero.
 */
function countsByLogarithm({ spread, value }: Input, limits: Limits | undefined): boolean {
  if (spread === null) return false;
  if (spread.shape === 'log-normal') return true;
  const positive = limits?.low !== undefined && limits.low >= 0 && value > 0;
  return positive && (endsOf(spread)?.low ?? value) > 0 && standardUncertainty(spread, value) < 0.3 * value;
}

function scaleOf({ spread, value }: Input, logarithmic: boolean): number {
  if (spread === null) return Math.abs(value) || 1;
  if (spread.shape === 'log-normal') return spread.sigma;
  return standardUncertainty(spread, value) / (logarithmic ? value : 1);
}
