import { incompleteBeta, logGamma } from './incomplete-beta.ts';
import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';

/** From so many degrees of freedom on, Student's distribution is the normal one to eight digits. */
const asGoodAsNormal = 1e8;

/**
 * Probability that a Student number with ν degrees of freedom is above t [1]: P = I_x(ν/2, ½)/2 for t ≥ 0, x = ν/(ν + t²); keeps its
 * relative accuracy in the upper tail. ν may be any number above 0.
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 26.7.1.
 */
export function studentAbove(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom >= asGoodAsNormal) return normalBelow(-t);
  const square = t * t;
  // Near the middle 1 − x is the small number: taken as such, it keeps its digits; farther out the tail itself does.
  const tail =
    square < 3
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
  const density = densityOf(degreesOfFreedom);
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let t = startOf(tail, degreesOfFreedom);
  for (let pass = 0; pass < 1100; pass++) {
    const above = studentAbove(t, degreesOfFreedom);
    if (above > tail) low = t;
    else high = t;
    const next = t + (Math.log(above / tail) * above) / density(t);
    const kept = next > low && next < high ? next : high < Number.POSITIVE_INFINITY ? (low + high) / 2 : 2 * t;
    if (Math.abs(kept - t) <= 4e-15 * kept) return kept;
    t = kept;
  }
  return t;
}

/**
 * Density of Student's distribution with ν degrees of freedom [1]: Γ((ν + 1)/2)/(Γ(ν/2)·√(νπ))·(1 + t²/ν)^(−(ν + 1)/2).
 * Source: the derivative of 26.7.1 in the same handbook.
 */
export function studentDensity(t: number, degreesOfFreedom: number): number {
  return densityOf(degreesOfFreedom)(t);
}

function densityOf(n: number): (t: number) => number {
  if (n >= asGoodAsNormal) return (t) => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
  const top = logGamma((n + 1) / 2) - logGamma(n / 2) - Math.log(n * Math.PI) / 2;
  return (t) => Math.exp(top - ((n + 1) / 2) * Math.log1p((t * t) / n));
}

/**
 * Near the quantile, to three digits or more from one degree of freedom on. Source: G. W. Hill, "Algorithm 396: Student's t-quantiles",
 * Comm. ACM 13 (1970) 619–620.
 */
function startOf(tail: number, n: number): number {
  if (n < 1) return 1;
  const a = 1 / (n - 0.5);
  const b = 48 / (a * a);
  let c = (((20700 * a) / b - 98) * a - 16) * a + 96.36;
  const d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt((a * Math.PI) / 2) * n;
  let y = (d * 2 * tail) ** (2 / n);
  if (y > 0.05 + a) {
    const x = normalQuantile(tail);
    y = x * x;
    if (n < 5) c += 0.3 * (n - 4.5) * (x + 0.6);
    c = (((0.05 * d * x - 5) * x - 7) * x - 2) * x + b + c;
    y = (((((0.4 * y + 6.3) * y + 36) * y + 94.5) / c - y - 3) / b + 1) * x;
    y = Math.expm1(a * y * y);
  } else {
    y =
      ((1 / (((n + 6) / (n * y) - 0.089 * d - 0.822) * (n + 2) * 3) + 0.5 / (n + 4)) * y - 1) * ((n + 1) / (n + 2)) +
      1 / y;
  }
  const t = Math.sqrt(n * y);
  return t > 0 && t < Number.POSITIVE_INFINITY ? t : 1;
}
