import { incompleteBeta } from './incomplete-beta.ts';
import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';

/** From so many degrees of freedom on, Student's distribution is the normal one to eight digits. */
const asGoodAsNormal = 1e8;

/**
 * Probability that a Student number with ν degrees of freedom is above t [1]: P = I_x(ν/2, ½)/2 for t ≥ 0, x = ν/(ν + t²); keeps its relative accuracy
 * in the upper tail. ν may be any number above 0.
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.7.1.
 */
export function studentAbove(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom >= asGoodAsNormal) return normalBelow(-t);
  const square = t * t;
  // Near the middle 1 − x is the small number: taken as such, it keeps its digits.
  const tail =
    square < degreesOfFreedom
      ? (1 - incompleteBeta(square / (degreesOfFreedom + square), 0.5, degreesOfFreedom / 2)) / 2
      : incompleteBeta(degreesOfFreedom / (degreesOfFreedom + square), degreesOfFreedom / 2, 0.5) / 2;
  return t < 0 ? 1 - tail : tail;
}

/**
 * Student number with ν degrees of freedom below which a given probability lies [1], for 0 < p < 1: the inverse of `studentAbove`, by Newton's method
 * on the logarithm of the tail, kept between bounds.
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom >= asGoodAsNormal) return normalQuantile(probability);
  if (probability === 0.5) return 0;
  if (probability < 0.5) return -quantileOfTail(probability, degreesOfFreedom);
  return quantileOfTail(1 - probability, degreesOfFreedom);
}

/** t ≥ 0 above which `tail` lies. */
function quantileOfTail(tail: number, degreesOfFreedom: number): number {
  let low = 0;
  let high = 1;
  while (studentAbove(high, degreesOfFreedom) > tail) [low, high] = [high, 2 * high];
  let t = (low + high) / 2;
  const step = 1e-6;
  for (let pass = 0; pass < 100; pass++) {
    const above = studentAbove(t, degreesOfFreedom);
    if (above > tail) low = t;
    else high = t;
    const slope =
      (studentAbove(t * (1 + step), degreesOfFreedom) - studentAbove(t * (1 - step), degreesOfFreedom)) /
      (2 * t * step);
    const next = t + (Math.log(tail / above) * above) / slope;
    const kept = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(kept - t) <= 2e-15 * kept) return kept;
    t = kept;
  }
  return t;
}
