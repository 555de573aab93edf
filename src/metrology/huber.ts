/** Beyond so many standard uncertainties a residual counts less than its square; 95 % efficient where the errors are normal after all. */
const BEND = 1.345;

/**
 * Huber's loss of a residual in units of its uncertainty [1], on the scale of a square: r² within k = 1.345, beyond it 2k|r| − k².
 * Source: P. J. Huber, "Robust estimation of a location parameter", Ann. Math. Stat. 35 (1964) 73–101.
 */
export function huberLoss(residual: number): number {
  const size = Math.abs(residual);
  return size <= BEND ? size ** 2 : 2 * BEND * size - BEND ** 2;
}

/** What a residual counts in iteratively reweighted least squares [1]: 1 within k = 1.345, k/|r| beyond. Source: as `huberLoss`. */
export function huberWeight(residual: number): number {
  return Math.min(1, BEND / Math.abs(residual));
}
