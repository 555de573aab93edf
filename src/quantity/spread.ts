import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

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

/** Expectation of the distribution [SI]; the best value itself for a normal one. */
export function meanOf(spread: Spread, value: number): number {
  switch (spread.shape) {
    case 'normal':
      return value;
    case 'rectangular':
      return (spread.low + spread.high) / 2;
    case 'log-normal':
      return value * Math.exp(spread.sigma ** 2 / 2);
  }
}

/** Inverse of the cumulative distribution [SI] at a probability between 0 and 1. */
export function quantileOf(spread: Spread, value: number, probability: number): number {
  switch (spread.shape) {
    case 'normal':
      return value + spread.u * normalQuantile(probability, 0, 1);
    case 'rectangular':
      return spread.low + (spread.high - spread.low) * probability;
    case 'log-normal':
      return value * Math.exp(spread.sigma * normalQuantile(probability, 0, 1));
  }
}
