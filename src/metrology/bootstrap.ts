import { randomStream } from '../numeric/random.ts';
import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';
import { quantileOf } from './quantile.ts';
import { scatterOf } from './scatter.ts';

/** A number computed from one or more samples. */
export type Statistic = (samples: readonly Float64Array[]) => number;

/** What a statistic comes to for the samples, and for samples drawn from them again and again. */
export interface Bootstrap {
  readonly estimate: number;
  /** Standard deviation of the replicates. */
  readonly u: number;
  /** In rising order. */
  readonly replicates: Float64Array;
  /** Share of the replicates below the estimate as a normal quantile (half of those equal to it counted): how far it is from their middle. */
  readonly bias: number;
  /** How the uncertainty grows with the estimate, by leaving out one reading at a time. */
  readonly acceleration: number;
  readonly seed: number;
}

/**
 * Draws each sample again from itself, with replacement, `draws` times. For pairs, draw row numbers: one sample of 0, 1, 2, … whose
 * statistic looks the pairs up.
 * Source: B. Efron, R. J. Tibshirani, An Introduction to the Bootstrap (1993), chapters 6 and 14; acceleration of several samples: A. C.
 * Davison, D. V. Hinkley, Bootstrap Methods and their Application (1997), section 5.3.2, with the jackknife's influences.
 */
export function bootstrap(
  samples: readonly ArrayLike<number>[],
  statistic: Statistic,
  draws: number,
  seed: number,
): Bootstrap {
  const own = samples.map((sample) => Float64Array.from(sample));
  const estimate = statistic(own);
  const random = randomStream(seed);
  const drawn = own.map((sample) => new Float64Array(sample.length));
  const replicates = Float64Array.from({ length: draws }, () => {
    own.forEach((sample, k) => {
      for (let i = 0; i < sample.length; i++) drawn[k][i] = sample[Math.floor(random.uniform() * sample.length)];
    });
    return statistic(drawn);
  }).sort();
  // Sums taken in another order differ in their last bits: such replicates are equal to the estimate.
  const fuzz = 1e-9 * (replicates[draws - 1] - replicates[0]);
  let below = 0;
  for (const value of replicates) below += Math.abs(value - estimate) <= fuzz ? 0.5 : value < estimate ? 1 : 0;
  // Half a replicate from either end: none below is no proof that none could be.
  const share = Math.min(draws - 0.5, Math.max(0.5, below)) / draws;
  return {
    estimate,
    u: Math.sqrt(scatterOf(replicates).variance),
    replicates,
    bias: normalQuantile(share),
    acceleration: accelerationOf(own, statistic),
    seed,
  };
}

/** Interval between the replicates' own quantiles. */
export function percentileInterval({ replicates }: Bootstrap, confidence = 0.95): [low: number, high: number] {
  return [quantileOf(replicates, (1 - confidence) / 2), quantileOf(replicates, (1 + confidence) / 2)];
}

/**
 * Interval between replicates' quantiles moved for bias and acceleration (BCa): p = Φ(z₀ + (z₀ + z)/(1 − a(z₀ + z))).
 * Source: B. Efron, "Better bootstrap confidence intervals", J. Am. Stat. Assoc. 82 (1987) 171–185.
 */
export function acceleratedInterval(
  { replicates, bias, acceleration }: Bootstrap,
  confidence = 0.95,
): [low: number, high: number] {
  const end = (p: number) => {
    const z = bias + normalQuantile(p);
    return quantileOf(replicates, normalBelow(bias + z / (1 - acceleration * z)));
  };
  return [end((1 - confidence) / 2), end((1 + confidence) / 2)];
}

/** Jackknife of one sample: bias and standard uncertainty of a statistic from leaving out one reading at a time. */
export function jackknife(sample: ArrayLike<number>, statistic: Statistic): { bias: number; u: number } {
  const own = Float64Array.from(sample);
  const n = own.length;
  const { mean, variance } = scatterOf(leavingOut([own], 0, statistic));
  return { bias: (n - 1) * (mean - statistic([own])), u: ((n - 1) / Math.sqrt(n)) * Math.sqrt(variance) };
}

/** a = Σₖ Σᵢ (lₖᵢ/nₖ)³ / (6·[Σₖ Σᵢ (lₖᵢ/nₖ)²]^1.5), lₖᵢ: influence of reading i of sample k; 0 where none has any. */
function accelerationOf(samples: readonly Float64Array[], statistic: Statistic): number {
  let squares = 0;
  let cubes = 0;
  for (let k = 0; k < samples.length; k++) {
    const left = leavingOut(samples, k, statistic);
    const { n, mean } = scatterOf(left);
    for (const value of left) {
      const influence = ((n - 1) * (mean - value)) / n;
      squares += influence ** 2;
      cubes += influence ** 3;
    }
  }
  return squares > 0 ? cubes / (6 * squares ** 1.5) : 0;
}

/** The statistic without each reading of sample k in turn. */
function leavingOut(samples: readonly Float64Array[], k: number, statistic: Statistic): Float64Array {
  return samples[k].map((_, out) =>
    statistic(samples.map((sample, other) => (other === k ? sample.filter((_, i) => i !== out) : sample))),
  );
}
