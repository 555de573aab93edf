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
