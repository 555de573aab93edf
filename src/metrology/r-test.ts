/** The three running means of the R-test. */
export interface RState {
  /** Filtered reading. */
  readonly filtered: number;
  /** Filtered square of readings about the filtered reading before them. */
  readonly aboutFiltered: number;
  /** Filtered square of the steps between neighbours. */
  readonly aboutNeighbour: number;
  readonly last: number;
}

/** Weights of the newest reading in the three running means, λ₁ to λ₃. */
export type RWeights = readonly [filtered: number, aboutFiltered: number, aboutNeighbour: number];

const usual: RWeights = [0.2, 0.1, 0.1];

/**
 * What R stays below in 95 % and in 99 % of independent normal series at their level [1], for the weights 0.2, 0.1, 0.1.
 * Source: simulation of 200 000 series of 200 readings by an independent program.
 */
export const rCritical = { usual: 1.438, rare: 1.731 } as const;

/**
 * One reading more: squares about the filtered reading of before, ν² = λ₂(x − x_f)² + (1 − λ₂)ν², then x_f = λ₁x + (1 − λ₁)x_f, and squares
 * about the neighbour, δ² = λ₃(x − x_before)² + (1 − λ₃)δ².
 * Source: S. Cao, R. R. Rhinehart, "An efficient method for on-line identification of steady state", J. Process Control 5 (1995) 363–374.
 */
export function rStep(state: RState, reading: number, weights: RWeights = usual): RState {
  const [first, second, third] = weights;
  return {
    filtered: first * reading + (1 - first) * state.filtered,
    aboutFiltered: second * (reading - state.filtered) ** 2 + (1 - second) * state.aboutFiltered,
    aboutNeighbour: third * (reading - state.last) ** 2 + (1 - third) * state.aboutNeighbour,
    last: reading,
  };
}

/** R = (2 − λ₁)·ν²/δ² [1]: about 1 at a level, more on the way. NaN while nothing has moved. */
export function rRatio({ aboutFiltered, aboutNeighbour }: RState, weights: RWeights = usual): number {
  return ((2 - weights[0]) * aboutFiltered) / aboutNeighbour;
}

/**
 * R at the last reading of a series [1], and the filtered reading there, started from its first ten: their mean and scatter. Readings have
 * to be independent of their neighbours, or R is large at any level: take means over more than the autocorrelation time. Null for fewer
 * than thirty, or where nothing moves.
 */
export function rTest(values: ArrayLike<number>): { readonly ratio: number; readonly filtered: number } | null {
  const startup = 10;
  if (values.length < 3 * startup) return null;
  let mean = 0;
  for (let i = 0; i < startup; i++) mean += values[i] / startup;
  let squares = 0;
  for (let i = 0; i < startup; i++) squares += (values[i] - mean) ** 2 / (startup - 1);
  // At a level ν² is 2/(2 − λ₁) and δ² twice the variance.
  let state: RState = {
    filtered: mean,
    aboutFiltered: (2 * squares) / (2 - usual[0]),
    aboutNeighbour: 2 * squares,
    last: values[startup - 1],
  };
  for (let i = startup; i < values.length; i++) state = rStep(state, values[i]);
  const ratio = rRatio(state);
  return Number.isFinite(ratio) ? { ratio, filtered: state.filtered } : null;
}
