/**
 * What is known about a number beside its best value; all figures SI.
 * - `normal`: standard uncertainty u.
 * - `rectangular`: certainly between low and high, nothing else known (GUM 4.3.7).
 * - `log-normal`: a positive quantity with a large relative spread; `sigma` is the standard deviation of the natural logarithm, the median is the best value.
 */
export type Spread =
  | { readonly shape: 'normal'; readonly u: number }
  | { readonly shape: 'rectangular'; readonly low: number; readonly high: number }
  | { readonly shape: 'log-normal'; readonly sigma: number };

/** Standard deviation of the distribution around a best value [SI]. */
export function standardUncertainty(spread: Spread, value: number): number {
  switch (spread.shape) {
    case 'normal':
      return spread.u;
    case 'rectangular':
      return (spread.high - spread.low) / Math.sqrt(12);
    case 'log-normal':
      return Math.abs(value) * Math.sqrt(Math.expm1(spread.sigma ** 2) * Math.exp(spread.sigma ** 2));
  }
}
