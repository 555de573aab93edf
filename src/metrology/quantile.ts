/**
 * The nine definitions of a sample quantile in use, by their numbers in Hyndman and Fan. 1: the step of the distribution; 2: the same,
 * averaged where it jumps; 3: the nearest reading, even numbers first; 4 to 9: straight lines between readings, put at different places.
 */
export type QuantileDefinition = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Their names, for people. */
export const quantileDefinitions: Readonly<Record<QuantileDefinition, string>> = {
  1: 'inverse of the distribution',
  2: 'inverse of the distribution, averaged at jumps',
  3: 'nearest reading, even first',
  4: 'linear in the distribution',
  5: 'Hazen',
  6: 'Weibull',
  7: 'Gumbel; the default of many spreadsheets',
  8: 'median-unbiased',
  9: 'Blom; unbiased for normal readings',
};

/** α and β of pₖ = (k − α)/(n + 1 − α − β), the share of readings below the k-th. */
const places: Readonly<Record<4 | 5 | 6 | 7 | 8 | 9, readonly [alpha: number, beta: number]>> = {
  4: [0, 1],
  5: [1 / 2, 1 / 2],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};

/**
 * Value below which a share p of the readings lies [unit of the readings], for readings in rising order. Definition 8 where none is named:
 * it is their recommendation, because its place among all readings is right whatever their distribution.
 * Source: R. J. Hyndman, Y. Fan, "Sample quantiles in statistical packages", Am. Stat. 50 (1996) 361–365.
 */
export function quantileOf(sorted: ArrayLike<number>, p: number, definition: QuantileDefinition = 8): number {
  const n = sorted.length;
  if (n === 0) throw new Error('no readings');
  const at = (k: number) => sorted[Math.min(n, Math.max(1, k)) - 1];
  // A product such as 0.1·10 may miss its whole number by the last bit.
  const fuzz = 4 * Number.EPSILON;
  if (definition <= 3) {
    const position = n * p - (definition === 3 ? 0.5 : 0);
    const below = Math.floor(position + fuzz * n);
    const onJump = Math.abs(position - below) <= fuzz * n;
    if (!onJump) return at(below + 1);
    if (definition === 2) return (at(below) + at(below + 1)) / 2;
    return definition === 1 || below % 2 === 0 ? at(below) : at(below + 1);
  }
  const [alpha, beta] = places[definition as keyof typeof places];
  const position = alpha + p * (n + 1 - alpha - beta);
  const below = Math.floor(position + fuzz * n);
  const between = position - below;
  return Math.abs(between) <= fuzz * n ? at(below) : at(below) + between * (at(below + 1) - at(below));
}
