import { cholesky } from '../numeric/dense.ts';
import { moments } from '../quantity/moments.ts';
import { endsOf, type Spread, standardUncertainty } from '../quantity/spread.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';

/** An independent way in which the inputs may differ from their expectations, with the central moments of the distance along it. */
export interface Direction {
  /** Input that is moved; of correlated inputs, the one that is moved first. */
  readonly id: string;
  /** Standard deviation [SI of the input, or 1 for correlated inputs]. */
  readonly u: number;
  readonly third: number;
  readonly fourth: number;
  /** A step that stays inside what is possible even when it is taken twice. */
  readonly step: number;
  /** Moves the inputs `x` by a distance along the direction; different directions may be added. */
  move(x: Float64Array, distance: number): void;
}

/** The expectations of a model's inputs, and the independent directions around them. */
export interface Directions {
  readonly expectations: Float64Array;
  readonly all: readonly Direction[];
}

/**
 * Independent inputs are directions themselves. Correlated ones are taken apart by the Cholesky factor of their covariance: standard normal numbers, each of which
 * moves several inputs. A t-distributed input counts as a normal one of the stated u, as in the GUM.
 */
export function directionsOf(model: Model, joint?: Joint): Directions {
  const expectations = Float64Array.from(model.inputs, ({ value }) => value);
  const all: Direction[] = [];
  for (const [i, { id, value, spread }] of model.inputs.entries()) {
    if (spread === null || joint?.ids.includes(id)) continue;
    const u = standardUncertainty(spread, value);
    if (u === 0) continue;
    const { mean, third, fourth } = momentsOf(spread, value, u);
    expectations[i] = mean;
    all.push({
      id,
      u,
      third,
      fourth,
      step: stepOf(spread, mean, u),
      move(x, distance) {
        x[i] += distance;
      },
    });
  }
  return joint ? { expectations, all: [...all, ...together(model, joint)] } : { expectations, all };
}

function momentsOf(spread: Spread, value: number, u: number) {
  if (spread.shape === 't' || spread.shape === 'normal') return { mean: value, third: 0, fourth: 3 * u ** 4 };
  const { mean, third, fourth } = moments(spread, value);
  return { mean: mean!, third: third!, fourth: fourth! };
}

/** A quarter of u; less where a positive number would lose its sign or a number its ends. */
function stepOf(spread: Spread, mean: number, u: number): number {
  if (spread.shape === 'log-normal') return Math.min(u / 4, Math.abs(mean) / 4);
  const ends = endsOf(spread);
  return ends ? Math.min(u / 4, (ends.high - mean) / 2, (mean - ends.low) / 2) : u / 4;
}

function together(model: Model, joint: Joint): Direction[] {
  const n = joint.ids.length;
  const factor = cholesky(
    joint.covariance.map((value, k) => (k % (n + 1) === 0 ? value * (1 + 1e-9) : value)),
    n,
  );
  if (!factor) throw new Error(`no covariance: ${joint.ids.join(', ')}`);
  const positions = joint.ids.map((id) => model.inputs.findIndex((input) => input.id === id));
  return joint.ids.map((id, column) => ({
    id,
    u: 1,
    third: 0,
    fourth: 3,
    step: 1 / 4,
    move(x, distance) {
      for (let k = column; k < n; k++) {
        if (positions[k] < 0) continue;
        const by = factor[k * n + column] * distance;
        if (joint.logarithmic[k]) x[positions[k]] *= Math.exp(by);
        else x[positions[k]] += by;
      }
    },
  }));
}
