import { endsOf } from '../quantity/spread.ts';
import type { Coordinates } from './coordinates.ts';
import { normalBelow } from './probability.ts';

/** Where a value may not go [SI]; an end that isn't given is open. */
export interface Limits {
  readonly low?: number;
  readonly high?: number;
}

/** The same in a fit's coordinates, one of each free input; ±∞ where nothing is given. */
export interface ScaledLimits {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Limits of the free inputs: the given ones, and the ends of rectangles and their like when `rectangles` hold. */
export function scaledLimits(
  coordinates: Coordinates,
  given: Readonly<Record<string, Limits>>,
  rectangles: boolean,
): ScaledLimits {
  const { inputs, centre, scale, logarithmic } = coordinates;
  const ends = inputs.map(({ id, spread }, i) => {
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = given[id] ?? {};
    const rectangle = spread && rectangles ? endsOf(spread) : null;
    const scaled = (value: number) => ((logarithmic[i] ? Math.log(Math.max(0, value)) : value) - centre[i]) / scale[i];
    const within = {
      low: scaled(Math.max(low, rectangle?.low ?? low)),
      high: scaled(Math.min(high, rectangle?.high ?? high)),
    };
    if (!(within.low <= 0 && within.high >= 0)) throw new Error(`the stated value of "${id}" is outside its limits`);
    return within;
  });
  return { low: Float64Array.from(ends, ({ low }) => low), high: Float64Array.from(ends, ({ high }) => high) };
}

/** Nearest point inside. */
export function inside(limits: ScaledLimits, point: Float64Array): Float64Array {
  return point.map((value, i) => Math.min(Math.max(value, limits.low[i]), limits.high[i]));
}

/** For each coordinate: +1 at its upper limit and pulled beyond it, −1 the same at the lower one, else 0. */
export function heldBy(limits: ScaledLimits, point: Float64Array, gradient: Float64Array): Int8Array {
  return Int8Array.from(point, (value, i) =>
    value >= limits.high[i] && gradient[i] > 0 ? 1 : value <= limits.low[i] && gradient[i] < 0 ? -1 : 0,
  );
}

/**
 * Covariance about the fitted point when some coordinates are held at a limit: along each of them the distribution is what is left of the normal
 * one inside the limit, with the mean square distance from the limit u²·(1 + z² − z·φ(z)/Φ(−z)); the other coordinates follow it linearly.
 *
 * u: standard uncertainty without the limit; z: how far beyond the limit the best value would lie, in units of u; φ, Φ: density and
 * distribution of a standard normal number. Valid to first order, several limits one after the other.
 * Source: D. Simon, D. L. Simon, "Constrained Kalman filtering via density function truncation", Int. J. Systems Science 41 (2010) 159–171, from memory.
 */
export function truncatedCovariance(
  covariance: Float64Array,
  gradient: Float64Array,
  held: Int8Array,
): { covariance: Float64Array; beyond: Float64Array } {
  const n = gradient.length;
  const result = covariance.slice();
  const beyond = new Float64Array(n);
  // How far the best point without limits lies from the one inside them.
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) beyond[i] += covariance[i * n + j] * gradient[j];
  const distance = beyond.slice();
  for (let k = 0; k < n; k++) {
    if (held[k] === 0) continue;
    const variance = result[k * n + k];
    const column = Float64Array.from({ length: n }, (_, i) => result[i * n + k] / variance);
    const z = Math.max(0, (held[k] * distance[k]) / Math.sqrt(variance));
    const kept = variance * (1 - squareInside(z));
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) result[i * n + j] -= column[i] * column[j] * kept;
    const moved = distance[k];
    for (let i = 0; i < n; i++) distance[i] -= column[i] * moved;
  }
  return { covariance: result, beyond };
}

/** Mean square distance from the limit [u²] of what a normal distribution has left at z beyond its centre. */
function squareInside(z: number): number {
  // Beyond 20 the two large terms cancel; what is left is the exponential's 2/z² to 1 %.
  if (z > 20) return 2 / z ** 2;
  const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
  return 1 + z ** 2 - (z * density) / normalBelow(-z);
}
