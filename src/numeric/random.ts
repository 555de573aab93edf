/** A seeded stream of pseudo-random numbers; the same seed gives the same numbers. */
export interface RandomStream {
  /** A whole number from 0 to 2³² − 1. */
  next(): number;
  /** Strictly between 0 and 1. */
  uniform(): number;
  /** Standard normal: mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * xoshiro128**, its state filled from the seed by SplitMix32-like steps of MurmurHash3's finaliser.
 * Source: D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) 36:1–36:32;
 * normal numbers by the polar method: G. Marsaglia and T. A. Bray, SIAM Review 6 (1964) 260–264.
 */
export function randomStream(seed: number): RandomStream {
  let weyl = seed | 0;
  const fill = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let z = Math.imul(weyl ^ (weyl >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return z ^ (z >>> 16);
  };
  return xoshiro(fill(), fill(), fill(), fill());
}

/** The stream from a given state, not all zero. */
export function xoshiro(first: number, second: number, third: number, fourth: number): RandomStream {
  let [a, b, c, d] = [first | 0, second | 0, third | 0, fourth | 0];
  let spare = Number.NaN;
  const next = (): number => {
    const times5 = Math.imul(b, 5);
    const result = Math.imul((times5 << 7) | (times5 >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result >>> 0;
  };
  const uniform = (): number => (next() + 0.5) * 2 ** -32;
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const square = u * u + v * v;
      if (square >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = v * scale;
      return u * scale;
    }
  };
  return { next, uniform, normal };
}
