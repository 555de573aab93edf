import type { Spread } from '../quantity/spread.ts';
import { quantile } from './distribution.ts';
import { factorOf } from './draws.ts';
import { outputIndex, startValues } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';
import { normalBelow } from './probability.ts';

/** A model's uncertain inputs as functions of independent standard normal numbers, one a dimension. */
export interface NormalSpace {
  /** Input id that a dimension moves; with correlated inputs, the one it moves first. */
  readonly ids: readonly string[];
  /** Writes the inputs that belong to the point `z` into `x` [SI]; exact inputs stay as they are. */
  place(z: Float64Array, x: Float64Array): void;
}

/**
 * Each independent input has the value below which the probability Φ(z) lies; inputs of a joint normal distribution are its mean plus the
 * Cholesky factor of its covariance times their z (M. Hohenbichler, R. Rackwitz, J. Eng. Mech. 107 (1981) 1227–1238).
 */
export function normalSpace(model: Model, joint?: Joint): NormalSpace {
  const jointIds = joint?.ids ?? [];
  const independent = model.inputs.flatMap(({ id, value, spread }, i) =>
    spread === null || jointIds.includes(id) ? [] : [{ id, i, value, spread }],
  );
  const together = jointIds.map((id) => model.inputs.findIndex((input) => input.id === id));
  const factor = joint && factorOf(joint);
  const first = independent.length;
  return {
    ids: [...independent.map(({ id }) => id), ...jointIds],
    place(z, x) {
      for (let d = 0; d < first; d++) {
        const { i, value, spread } = independent[d];
        x[i] = valueAt(spread, value, z[d]);
      }
      if (!joint || !factor) return;
      const n = together.length;
      for (let k = 0; k < n; k++) {
        if (together[k] < 0) continue;
        let coordinate = joint.mean[k];
        for (let j = 0; j <= k; j++) coordinate += factor[k * n + j] * z[first + j];
        x[together[k]] = joint.logarithmic[k] ? Math.exp(coordinate) : coordinate;
      }
    },
  };
}

/** Value of an input below which the probability Φ(z) lies [SI]. Both ends are reached with the same accuracy. */
export function valueAt(spread: Spread, value: number, z: number): number {
  switch (spread.shape) {
    case 'normal':
      return value + spread.u * z;
    case 'log-normal':
      return value * Math.exp(spread.sigma * z);
    default:
      return quantile(spread, value, normalBelow(z), normalBelow(-z));
  }
}

/** A margin over the normal space: below 0 where the limit is exceeded. */
export interface LimitState {
  readonly dimensions: number;
  /** Evaluations made so far. */
  readonly evaluations: number;
  /** Margin [SI]; −∞ where the model has no solution. */
  at(z: Float64Array): number;
}

export function limitState(model: Model, marginOutputId: string, space: NormalSpace): LimitState {
  const index = outputIndex(model, marginOutputId);
  const x = startValues(model);
  const y = new Float64Array(model.outputs.length);
  let evaluations = 0;
  return {
    dimensions: space.ids.length,
    get evaluations() {
      return evaluations;
    },
    at(z) {
      evaluations++;
      space.place(z, x);
      const solved = model.evaluate(x, y).ending === 'solved';
      return solved && !Number.isNaN(y[index]) ? y[index] : Number.NEGATIVE_INFINITY;
    },
  };
}
