import type { Spread } from './spread.ts';

/** Mean [SI] and central moments [SI², SI³, SI⁴] of a distribution; null for one that doesn't exist. */
export interface Moments {
  readonly mean: number | null;
  readonly variance: number | null;
  readonly third: number | null;
  readonly fourth: number | null;
}

/**
 * Exact moments of the distribution about a best value.
 *
 * Sources: JCGM 101:2008, 6.4 and table 1 (mean and variance); N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 1 and 2
 * (1994, 1995), chapters 14 (log-normal), 26 (triangular), 28 (t), from memory; what is made of rectangles by integration.
 */
export function moments(spread: Spread, value: number): Moments {
  switch (spread.shape) {
    case 'normal':
      return symmetric(value, spread.u ** 2, 3 * spread.u ** 4);
    case 't':
      return momentsOfT(value, spread.u, spread.degreesOfFreedom);
    case 'log-normal':
      return momentsOfLogNormal(value, spread.sigma);
    case 'rectangular':
      return ofPieces([{ probability: 1, ...spread }]);
    case 'triangular':
      return momentsOfTriangle(spread.low, spread.high, Math.min(Math.max(value, spread.low), spread.high));
    case 'u-shaped': {
      const half = (spread.high - spread.low) / 2;
      return symmetric(spread.low + half, half ** 2 / 2, (3 * half ** 4) / 8);
    }
    case 'trapezoidal': {
      // The sum of two rectangles, of half widths (a + f)/2 and (a − f)/2.
      const half = (spread.high - spread.low) / 2;
      const [p, q] = [((half + spread.flat) / 2) ** 2, ((half - spread.flat) / 2) ** 2];
      return symmetric(spread.low + half, (p + q) / 3, (p * p + q * q) / 5 + (2 * p * q) / 3);
    }
    case 'curvilinear': {
      // A rectangle of half width w, where w is a rectangle itself: E(w²)/3 and E(w⁴)/5.
      const square = ((spread.high - spread.low) / 2) ** 2;
      const by = spread.by ** 2;
      const middle = spread.low + (spread.high - spread.low) / 2;
      return symmetric(middle, square / 3 + by / 9, (square ** 2 + 2 * square * by + by ** 2 / 5) / 5);
    }
    case 'sorted': {
      const { low, high, holeLow, holeHigh } = spread;
      const below = (holeLow - low) / (holeLow - low + (high - holeHigh));
      return ofPieces([
        { probability: below, low, high: holeLow },
        { probability: 1 - below, low: holeHigh, high },
      ]);
    }
    case 'choice':
      return ofPieces(
        spread.values.map((each, k) => ({ probability: spread.probabilities[k], low: each, high: each })),
      );
  }
}

function symmetric(mean: number, variance: number, fourth: number): Moments {
  return { mean, variance, third: 0, fourth };
}

/** With ν degrees of freedom the k-th moment exists only for k < ν: u²·ν/(ν − 2), 0, 3u⁴·ν²/((ν − 2)(ν − 4)). */
function momentsOfT(value: number, u: number, freedom: number): Moments {
  return {
    mean: freedom > 1 ? value : null,
    variance: freedom > 2 ? (u ** 2 * freedom) / (freedom - 2) : null,
    third: freedom > 3 ? 0 : null,
    fourth: freedom > 4 ? (3 * u ** 4 * freedom ** 2) / ((freedom - 2) * (freedom - 4)) : null,
  };
}

/** With E = exp(σ²) and the median m: m·√E; m²·E(E − 1); variance^1.5·(E + 2)√(E − 1); variance²·(E⁴ + 2E³ + 3E² − 3). */
function momentsOfLogNormal(median: number, sigma: number): Moments {
  const over = Math.expm1(sigma ** 2);
  const e = 1 + over;
  const variance = median ** 2 * e * over;
  return {
    mean: median * Math.exp(sigma ** 2 / 2),
    variance,
    third: variance ** 1.5 * (e + 2) * Math.sqrt(over),
    fourth: variance ** 2 * (e ** 4 + 2 * e ** 3 + 3 * e ** 2 - 3),
  };
}

/** Ends a, b and peak c, as distances from the middle of the ends, so that nothing cancels. */
function momentsOfTriangle(low: number, high: number, peak: number): Moments {
  const half = (high - low) / 2;
  const middle = low + half;
  const c = peak - middle;
  const variance = (3 * half ** 2 + c ** 2) / 18;
  return {
    mean: middle + c / 3,
    variance,
    third: (c * (c ** 2 - 9 * half ** 2)) / 135,
    fourth: 2.4 * variance ** 2,
  };
}

interface Piece {
  readonly probability: number;
  readonly low: number;
  readonly high: number;
}

/** Rectangles, or single values, each with its probability: about the mean, with distance d and half width h, d² + h²/3; d³ + d·h²; d⁴ + 2d²h² + h⁴/5. */
function ofPieces(pieces: readonly Piece[]): Moments {
  const start = pieces[0].low;
  const middleOf = ({ low, high }: Piece) => low - start + (high - low) / 2;
  const mean = pieces.reduce((sum, piece) => sum + piece.probability * middleOf(piece), 0);
  let [variance, third, fourth] = [0, 0, 0];
  for (const piece of pieces) {
    const d = middleOf(piece) - mean;
    const h = (piece.high - piece.low) / 2;
    variance += piece.probability * (d ** 2 + h ** 2 / 3);
    third += piece.probability * (d ** 3 + d * h ** 2);
    fourth += piece.probability * (d ** 4 + 2 * d ** 2 * h ** 2 + h ** 4 / 5);
  }
  return { mean: start + mean, variance, third, fourth };
}
