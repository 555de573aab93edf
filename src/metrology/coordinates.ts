import { standardUncertainty } from '../quantity/spread.ts';
import type { FitProblem } from './fit.ts';
import type { Input } from './model.ts';

/**
 * The numbers a fit moves: each free input, or its logarithm where it is log-normal, as distance from its stated value in units of
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
  const logarithmic = inputs.map((input) => input.spread?.shape === 'log-normal');
  return {
    inputs,
    ids: wanted,
    logarithmic,
    centre: Float64Array.from(inputs, (input, i) => (logarithmic[i] ? Math.log(input.value) : input.value)),
    scale: Float64Array.from(inputs, scaleOf),
    stated: inputs.map((input) => input.spread !== null),
  };
}

/** Value of an input [SI] at a scaled coordinate. */
export function naturalValue(coordinates: Coordinates, i: number, scaled: number): number {
  const coordinate = coordinates.centre[i] + coordinates.scale[i] * scaled;
  return coordinates.logarithmic[i] ? Math.exp(coordinate) : coordinate;
}

function scaleOf({ spread, value }: Input): number {
  if (spread === null) return Math.abs(value) || 1;
  return spread.shape === 'log-normal' ? spread.sigma : standardUncertainty(spread, value);
}
