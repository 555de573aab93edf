import { cholesky } from '../numeric/dense.ts';
import { sobol } from '../numeric/sobol.ts';
import { toDistribution } from './distribution.ts';
import type { Joint } from './joint.ts';
import { drawTowards } from './learnt-draws.ts';
import type { Model } from './model.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Which numbers are drawn together, and how. */
export interface DrawOptions {
  /** Names the scrambling of the sequence; the same seed gives the same draws. */
  readonly seed: number;
  /** Dimension of the sequence that belongs to an input id; give the same one at every step for the same id. By default counted up through the model. */
  readonly dimensionOf?: (inputId: string) => number;
  /** Dimensions of the sequence in all; needed with `dimensionOf`. */
  readonly dimensions?: number;
  /** Inputs that a fit has correlated; all others are independent. */
  readonly joint?: Joint;
}

/** Draws of a model's uncertain inputs, a block at a time. */
export interface Draws {
  /** Positions of the uncertain inputs in the model. */
  readonly inputs: readonly number[];
  /** One column an uncertain input, in the order of `inputs`: its values [SI] in the draws of the block. */
  readonly columns: readonly Float64Array[];
  /** Draws the block that begins at draw number `from`. */
  fill(from: number): void;
}

/**
 * Draws by the inverse of each input's distribution on a scrambled Sobol sequence.
 * Correlated inputs: independent normal numbers times the Cholesky factor of their covariance (JCGM 101:2008, C.5); what a fit has learnt is drawn
 * from what was stated, towards what was observed.
 */
export function drawsOf(model: Model, options: DrawOptions, blockLength: number): Draws {
  const { joint } = options;
  const jointIds = joint?.ids ?? [];
  const independent = model.inputs.flatMap((input, i) =>
    input.spread === null || jointIds.includes(input.id) ? [] : [{ ...input, spread: input.spread, i }],
  );
  const ids = [...independent.map((input) => input.id), ...jointIds];
  const dimensionOf = options.dimensionOf ?? ((id: string) => ids.indexOf(id));
  const learning = joint?.learning;
  const dimensions = options.dimensions ?? Math.max(1, ids.length);
  const noise = Array.from({ length: learning?.observations ?? 0 }, () => new Float64Array(blockLength));
  const sequence = sobol(dimensions + noise.length, options.seed);
  const columnsOf = new Map(ids.map((id) => [id, new Float64Array(blockLength)]));
  const factor = joint && !learning ? factorOf(joint) : null;
  const drawn = [
    ...independent.map((input) => ({ i: input.i, column: columnsOf.get(input.id)! })),
    ...model.inputs.flatMap((input, i) =>
      jointIds.includes(input.id) ? [{ i, column: columnsOf.get(input.id)! }] : [],
    ),
  ];

  return {
    inputs: drawn.map((each) => each.i),
    columns: drawn.map((each) => each.column),
    fill(from) {
      for (const { id, spread, value } of independent) {
        const column = columnsOf.get(id)!;
        sequence.column(dimensionOf(id), from, column);
        toDistribution(column, spread, value);
      }
      if (!joint) return;
      const together = jointIds.map((id) => columnsOf.get(id)!);
      together.forEach((column, k) => {
        sequence.column(dimensionOf(jointIds[k]), from, column);
        if (!learning) toNormal(column);
      });
      noise.forEach((column, k) => {
        sequence.column(dimensions + k, from, column);
        toNormal(column);
      });
      if (learning) drawTowards(learning, together, noise);
      else if (factor) correlate(together, factor, joint);
    },
  };
}

function toNormal(column: Float64Array): void {
  for (let s = 0; s < column.length; s++) column[s] = normalQuantile(column[s]);
}

/** Cholesky factor of a covariance; one that is singular to rounding gets the least variance that makes it a covariance again. */
export function factorOf({ covariance, ids }: Joint): Float64Array {
  const n = ids.length;
  const widened = covariance.map((value, k) => (k % (n + 1) === 0 ? value * (1 + 1e-9) : value));
  const factor = cholesky(covariance, n) ?? cholesky(widened, n);
  if (!factor) throw new Error(`no covariance: ${ids.join(', ')}`);
  return factor;
}

/** Turns independent normal columns into correlated ones in place: the last one first, because each needs only those before it. */
function correlate(columns: readonly Float64Array[], factor: Float64Array, joint: Joint): void {
  const n = columns.length;
  for (let k = n - 1; k >= 0; k--) {
    const column = columns[k];
    for (let s = 0; s < column.length; s++) {
      let coordinate = joint.mean[k];
      for (let j = 0; j <= k; j++) coordinate += factor[k * n + j] * columns[j][s];
      column[s] = joint.logarithmic[k] ? Math.exp(coordinate) : coordinate;
    }
  }
}
