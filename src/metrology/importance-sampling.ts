import { type RandomStream, randomStream } from '../numeric/random.ts';
import { type DesignPoint, dot } from './design-point.ts';
import { normalQuantile } from './normal-quantile.ts';
import type { LimitState } from './normal-space.ts';
import { studentQuantile } from './student-t.ts';

/** A small probability with its own sampling error. */
export interface SampledProbability {
  readonly probability: number;
  /** Standard uncertainty from the finite number of draws. */
  readonly u: number;
  /** 95 % interval. */
  readonly low: number;
  readonly high: number;
}

export interface ImportanceOptions {
  readonly seed: number;
  /** Evaluations that it may use. */
  readonly most: number;
  /** Relative standard uncertainty that is small enough [1]. */
  readonly target: number;
  /** Probability below which no more than the least number of replicates is drawn. */
  readonly least: number;
}

/** Draws around each design point, and the least and largest number of replicates. */
const DRAWS = 64;
const LEAST = 8;

/**
 * Probability of a negative margin, by draws that are centred at its design points instead of the origin. Each counts with the ratio of the
 * densities, 1/Σₖ wₖ exp(z·zₖ − |zₖ|²/2). Along the direction of its design point the draws are evenly spaced from a random offset; across it they
 * are random. The error comes from independent replicates, which are added until it is small enough.
 *
 * Sources: M. Shinozuka, J. Struct. Eng. 109 (1983) 721–740; R. E. Melchers, Struct. Saf. 6 (1989) 3–10; several centres as one mixture:
 * E. Veach, L. Guibas, Proc. SIGGRAPH (1995) 419–428.
 */
export function importanceSampling(
  state: LimitState,
  centres: readonly DesignPoint[],
  { seed, most, target, least }: ImportanceOptions,
): SampledProbability {
  const stream = randomStream(seed);
  const estimates: number[] = [];
  const atMost = Math.max(LEAST, Math.floor(most / (DRAWS * centres.length)));
  let found = { mean: 0, u: Number.POSITIVE_INFINITY };
  const enough = () => found.u < target * found.mean || found.mean + 3 * found.u < least;
  while (estimates.length < LEAST || (estimates.length < atMost && !enough())) {
    estimates.push(replicate(state, centres, stream));
    found = meanOf(estimates);
  }
  const { mean, u } = found;
  const half = studentQuantile(0.975, estimates.length - 1) * u;
  return { probability: mean, u, low: Math.max(0, mean - half), high: Math.min(1, mean + half) };
}

function replicate(state: LimitState, centres: readonly DesignPoint[], stream: RandomStream): number {
  const z = new Float64Array(state.dimensions);
  let sum = 0;
  for (const { z: centre, direction } of centres) {
    // One offset for all, not one for each: which draw just passes the limit then differs between replicates, and their scatter shows it.
    const offset = stream.uniform();
    for (let s = 0; s < DRAWS; s++) {
      for (let d = 0; d < z.length; d++) z[d] = stream.normal();
      const shift = normalQuantile((s + offset) / DRAWS) - dot(z, direction);
      for (let d = 0; d < z.length; d++) z[d] += shift * direction[d] + centre[d];
      if (state.at(z) < 0) sum += weightAt(z, centres);
    }
  }
  return sum / DRAWS;
}

/** Ratio of the standard normal density to the sum of those around the centres [1]. */
export function weightAt(z: Float64Array, centres: readonly DesignPoint[]): number {
  let density = 0;
  for (const centre of centres) density += Math.exp(dot(z, centre.z) - dot(centre.z, centre.z) / 2);
  return 1 / density;
}

function meanOf(estimates: readonly number[]): { mean: number; u: number } {
  const n = estimates.length;
  const mean = estimates.reduce((sum, each) => sum + each, 0) / n;
  const squares = estimates.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return { mean, u: n > 1 ? Math.sqrt(squares / (n - 1) / n) : Number.POSITIVE_INFINITY };
}
