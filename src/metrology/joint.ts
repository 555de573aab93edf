import type { Learning } from './learnt-draws.ts';
import type { Model } from './model.ts';

/**
 * A joint normal distribution of several inputs, as a fit leaves them: their uncertainties are no longer independent.
 * Figures belong to the coordinate: the value [SI], or for a logarithmic input ln(value / 1 SI unit).
 */
export interface Joint {
  readonly ids: readonly string[];
  readonly mean: Float64Array;
  /** Covariance, row by row, `ids.length` squared. */
  readonly covariance: Float64Array;
  /** True where the coordinate is the natural logarithm. */
  readonly logarithmic: readonly boolean[];
  /** What the numbers are drawn from; left out: the normal distribution itself. */
  readonly learning?: Learning;
}

/** Two different inputs of a model, by position, and their correlation coefficient [1]. */
export interface Correlation {
  readonly i: number;
  readonly j: number;
  readonly r: number;
}

/** Correlations between a model's inputs, each pair in both orders; none without a joint distribution. */
export function correlationsOf(model: Model, joint: Joint | undefined): readonly Correlation[] {
  if (!joint) return [];
  const n = joint.ids.length;
  const positions = new Map(model.inputs.map((input, i) => [input.id, i]));
  const present = joint.ids.flatMap((id, k) => (positions.has(id) ? [{ k, i: positions.get(id)! }] : []));
  const { covariance } = joint;
  return present.flatMap((first) =>
    present.flatMap((second) => {
      const r =
        covariance[first.k * n + second.k] / Math.sqrt(covariance[first.k * (n + 1)] * covariance[second.k * (n + 1)]);
      return first === second || r === 0 ? [] : [{ i: first.i, j: second.i, r }];
    }),
  );
}
