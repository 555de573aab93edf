/**
 * Sum of independent errors [their unit].
 *
 * e = √Σe_i²
 *
 * e_i  errors of the same kind and level of confidence; each may have either sign
 * Valid for errors that have nothing to do with each other; where they share a cause, they add up straight.
 * Source: Texas Instruments, INA240 data sheet SBOS662C, total error by root sum of squares; GUM (JCGM 100:2008), 5.1.2.
 */
export function rootSumSquare(errors: readonly number[]): number {
  return Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0));
}
