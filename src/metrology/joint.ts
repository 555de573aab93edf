import type { Model } from './model.ts';
import { valueWithin, type Within } from './within.ts';

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
  /** What has two ends keeps them when it is drawn; null where there are none. Left out: nothing has any. */
  readonly within?: readonly (Within | null)[];
}

/** The value [SI] that a coordinate of a joint distribution stands for; `k` is its place there. */
export function valueAtCoordinate(
  { logarithmic, within, mean, covariance, ids }: Joint,
  k: number,
  coordinate: number,
): number {
  if (logarithmic[k]) return Math.exp(coordinate);
  const ends = within?.[k];
  return ends ? valueWithin(ends, (coordinate - mean[k]) / Math.sqrt(covariance[k * (ids.length + 1)])) : coordinate;
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
