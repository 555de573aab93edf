/**
 * Complementary error function erfc(x) = 2/√π · ∫ₓ^∞ exp(−t²) dt [1].
 *
 * Three rational minimax approximations: |x| ≤ 0.46875, up to 4, beyond 4; relative error below 6e-16.
 * Source: W. J. Cody, "Rational Chebyshev approximations for the error function", Math. Comp. 23 (1969) 631–637.
 */
export function complementaryError(x: number): number {
  const size = Math.abs(x);
  if (size <= 0.46875) return 1 - x * ratio(NEAR_TOP, NEAR_BOTTOM, x * x);
  let tail: number;
  if (size <= 4) {
    tail = ratio(MIDDLE_TOP, MIDDLE_BOTTOM, size);
  } else {
    const inverse = 1 / (size * size);
    tail = (1 / Math.sqrt(Math.PI) - inverse * ratio(FAR_TOP, FAR_BOTTOM, inverse)) / size;
  }
  // exp(−x²) in two factors: the square of x rounded to 1/16 is exact, so no digits are lost far out.
  const coarse = Math.trunc(size * 16) / 16;
  tail *= Math.exp(-coarse * coarse) * Math.exp(-(size - coarse) * (size + coarse));
  return x < 0 ? 2 - tail : tail;
}

/** Probability that a standard normal number is below z [1]: Φ(z) = erfc(−z/√2)/2. Keeps its relative accuracy in the lower tail. */
export function normalBelow(z: number): number {
  return complementaryError(-z / Math.SQRT2) / 2;
}

/**
 * Probability that a chi-square number with ν degrees of freedom is above `chiSquare` [1].
 *
 * z = [(χ²/ν)^⅓ − (1 − 2/(9ν))] / √(2/(9ν)), probability = Φ(−z); good to about 0.005 for ν ≥ 3, coarser below.
 * Source: E. B. Wilson, M. M. Hilferty, "The distribution of chi-square", Proc. Nat. Acad. Sci. 17 (1931) 684–688.
 */
export function chiSquareAbove(chiSquare: number, degreesOfFreedom: number): number {
  const variance = 2 / (9 * degreesOfFreedom);
  return normalBelow(-(Math.cbrt(chiSquare / degreesOfFreedom) - (1 - variance)) / Math.sqrt(variance));
}

/** Polynomial quotient, highest power first. */
function ratio(top: readonly number[], bottom: readonly number[], t: number): number {
  let above = 0;
  let below = 0;
  for (const coefficient of top) above = above * t + coefficient;
  for (const coefficient of bottom) below = below * t + coefficient;
  return above / below;
}

const NEAR_TOP = [0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694];
const NEAR_BOTTOM = [1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const MIDDLE_TOP = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001, 881.952221241769,
  1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
];
const MIDDLE_BOTTOM = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
];
const FAR_TOP = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275,
  0.0006587491615298378,
];
const FAR_BOTTOM = [
  1, 2.568520192289822, 1.8729528499234604, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
];
