/**
 * Step a series was rounded to [unit of the series]: the largest number that all differences between its values are multiples
 * of. Null where none shows: fewer than three different values, or values that hardly repeat.
 */
export function resolutionOf(values: ArrayLike<number>): number | null {
  const distinct = [...new Set(Array.from(values))].sort((a, b) => a - b);
  if (distinct.length < 3 || distinct.length > values.length / 3) return null;
  const span = distinct[distinct.length - 1] - distinct[0];
  // Differences of rounded readings are exact only to the rounding of the numbers themselves.
  const noise = 1e-9 * Math.max(span, Math.abs(distinct[0]), Math.abs(distinct[distinct.length - 1]));
  let step = 0;
  for (let i = 1; i < distinct.length; i++) step = commonStep(step, distinct[i] - distinct[i - 1], noise);
  return step > 100 * noise ? step : null;
}

/** Euclid's algorithm for numbers that are multiples of a common step up to `noise`. */
function commonStep(a: number, b: number, noise: number): number {
  while (b > noise) {
    const rest = a % b;
    a = b;
    b = b - rest < noise ? 0 : rest;
  }
  return a;
}
