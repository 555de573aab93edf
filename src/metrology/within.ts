import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';

/**
 * What is known about one of several correlated numbers that has two ends: inside them, a normal distribution around `centre`. A `u` of ∞ is a
 * rectangle. It is what a rectangle becomes when something is learnt about it that would by itself be centre ± u.
 */
export interface Within {
  readonly low: number;
  readonly high: number;
  readonly centre: number;
  readonly u: number;
}

/** A rectangle [low, high] with mean and standard uncertainty, after a fit that treated it as a normal distribution and left `mean` and `u` of it. */
export function learntWithin(
  stated: { readonly low: number; readonly high: number; readonly mean: number; readonly u: number },
  fitted: { readonly mean: number; readonly u: number },
): Within {
  const { low, high } = stated;
  // What the observations alone say: the fitted figures less the stated ones, as weights add up.
  const weight = 1 / fitted.u ** 2 - 1 / stated.u ** 2;
  if (!(weight * stated.u ** 2 > 1e-9)) return { low, high, centre: stated.mean, u: Number.POSITIVE_INFINITY };
  const centre = (fitted.mean / fitted.u ** 2 - stated.mean / stated.u ** 2) / weight;
  return { low, high, centre, u: 1 / Math.sqrt(weight) };
}

/** The value below which the probability Φ(z) lies. */
export function valueWithin({ low, high, centre, u }: Within, z: number): number {
  const below = normalBelow(z);
  if (u === Number.POSITIVE_INFINITY) return low + below * (high - low);
  // From the end that is nearer to the centre's side, so that a far tail keeps its digits.
  const [a, b] = [(low - centre) / u, (high - centre) / u];
  const mirrored = a > 0;
  const [from, to] = mirrored ? [-b, -a] : [a, b];
  const share = mirrored ? normalBelow(-z) : below;
  const start = normalBelow(from);
  const width = normalBelow(to) - start;
  // All of it lies at one end, beyond what the digits of Φ tell.
  if (!(width > 1e-300)) return mirrored ? low : high;
  const at = normalQuantile(start + share * width) * u;
  return Math.min(high, Math.max(low, centre + (mirrored ? -at : at)));
}
