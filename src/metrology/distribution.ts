import type { Spread } from '../quantity/spread.ts';
import { normalQuantile } from './normal-quantile.ts';
import { studentQuantile } from './student-t.ts';
import { tabulatedStudent } from './student-table.ts';

/** Value [SI] that a number is below with the probability `below`; `above` is 1 − below, given by itself where that keeps digits far out. */
export type Inverse = (below: number, above: number) => number;

/**
 * The inverse of a distribution about a best value, for 0 < below < 1.
 *
 * Source: JCGM 101:2008, 6.4.2 to 6.4.9 (each shape's distribution, inverted; the curvilinear trapezoid by Newton's method).
 */
export function inverseOf(spread: Spread, value: number): Inverse {
  switch (spread.shape) {
    case 'normal':
      return (below, above) => value + spread.u * normalOf(below, above);
    case 't': {
      const { u, degreesOfFreedom: freedom } = spread;
      return (below, above) =>
        value + u * (below < above ? studentQuantile(below, freedom) : -studentQuantile(above, freedom));
    }
    case 'log-normal':
      return (below, above) => value * Math.exp(spread.sigma * normalOf(below, above));
    case 'triangular':
      return inverseOfTriangle(spread.low, spread.high, Math.min(Math.max(value, spread.low), spread.high));
    case 'sorted':
      return inverseWithHole(spread);
    case 'choice':
      return inverseOfChoice(spread.values, spread.probabilities);
    default: {
      const { low, high } = spread;
      const fromEnd = fromNearestEnd(spread);
      return (below, above) => (below < above ? low + fromEnd(below) : high - fromEnd(above));
    }
  }
}

/** The same at one probability. */
export function quantile(spread: Spread, value: number, below: number, above = 1 - below): number {
  return inverseOf(spread, value)(below, above);
}

/** Fills a column of probabilities with the values [SI] of a distribution, in place. */
export function toDistribution(column: Float64Array, spread: Spread, value: number): void {
  const n = column.length;
  // The three that boards are full of have loops of their own; Student's is dear without a table.
  if (spread.shape === 'rectangular') {
    for (let s = 0; s < n; s++) column[s] = spread.low + (spread.high - spread.low) * column[s];
  } else if (spread.shape === 'normal') {
    for (let s = 0; s < n; s++) column[s] = value + spread.u * normalQuantile(column[s]);
  } else if (spread.shape === 'log-normal') {
    for (let s = 0; s < n; s++) column[s] = value * Math.exp(spread.sigma * normalQuantile(column[s]));
  } else if (spread.shape === 't') {
    const inverse = tableOf(spread);
    for (let s = 0; s < n; s++) column[s] = value + spread.u * inverse(column[s]);
  } else {
    const inverse = inverseOf(spread, value);
    for (let s = 0; s < n; s++) column[s] = inverse(column[s], 1 - column[s]);
  }
}

const tables = new WeakMap<Spread, (probability: number) => number>();

/** The same table for every block of draws. */
function tableOf(spread: Extract<Spread, { readonly shape: 't' }>): (probability: number) => number {
  const table = tables.get(spread) ?? tabulatedStudent(spread.degreesOfFreedom);
  tables.set(spread, table);
  return table;
}

function normalOf(below: number, above: number): number {
  return below < above ? normalQuantile(below) : -normalQuantile(above);
}

type Symmetric = Extract<Spread, { readonly shape: 'rectangular' | 'u-shaped' | 'trapezoidal' | 'curvilinear' }>;

/** How far inside its nearest end [SI] a number of a symmetric shape lies, of which a share of at most ½ lies farther out. */
function fromNearestEnd(spread: Symmetric): (tail: number) => number {
  const width = spread.high - spread.low;
  switch (spread.shape) {
    case 'rectangular':
      return (tail) => width * tail;
    case 'u-shaped':
      return (tail) => width * Math.sin((Math.PI / 2) * tail) ** 2;
    case 'trapezoidal': {
      const slope = width / 2 - spread.flat;
      // The density of the flat part is 1/across.
      const across = width / 2 + spread.flat;
      const ofSlope = slope / (2 * across);
      return (tail) => (tail < ofSlope ? Math.sqrt(2 * tail * slope * across) : slope + (tail - ofSlope) * across);
    }
    case 'curvilinear':
      return (tail) => fromOuterEnd(width / 2, spread.by, tail) - spread.by;
  }
}

function inverseOfTriangle(low: number, high: number, peak: number): Inverse {
  const width = high - low;
  const [left, right] = [peak - low, high - peak];
  return (below, above) =>
    below * width < left ? low + Math.sqrt(below * width * left) : high - Math.sqrt(above * width * right);
}

function inverseWithHole({ low, high, holeLow, holeHigh }: Extract<Spread, { readonly shape: 'sorted' }>): Inverse {
  const left = holeLow - low;
  const width = left + (high - holeHigh);
  return (below, above) => (below * width < left ? low + below * width : Math.max(holeHigh, high - above * width));
}

/** The first value, counted up by size, at which the probabilities reach `below`. */
function inverseOfChoice(values: readonly number[], probabilities: readonly number[]): Inverse {
  const order = [...values.keys()].sort((a, b) => values[a] - values[b]);
  const sorted = order.map((k) => values[k]);
  const reached = order.map((_, k) => order.slice(0, k + 1).reduce((sum, each) => sum + probabilities[each], 0));
  const last = order.length - 1;
  return (below) => {
    let k = 0;
    while (k < last && below >= reached[k]) k++;
    return sorted[k];
  };
}

/**
 * Distance from the outer end of a curvilinear trapezoid, w + d from the middle, with half width w and d by which it isn't known.
 * Of what lies between the outer end and the distance y from the middle: T(y) = (e − y − y·ln(e/y))/(4d), e = w + d; from y = w − d inwards it is flat.
 */
function fromOuterEnd(half: number, by: number, tail: number): number {
  const end = half + by;
  const beyond = (x: number) => (x + (end - x) * Math.log1p(-x / end)) / (4 * by);
  const inner = 2 * by;
  const ofCurve = inner < end ? beyond(inner) : 0.5;
  if (tail >= ofCurve) return inner + ((tail - ofCurve) * 4 * by) / -Math.log1p(-inner / end);
  let [low, high] = [0, inner];
  let x = Math.min(Math.sqrt(8 * by * end * tail), inner / 2 + high / 4);
  for (let pass = 0; pass < 60; pass++) {
    const here = beyond(x);
    if (here < tail) low = x;
    else high = x;
    const next = x - (here - tail) / (-Math.log1p(-x / end) / (4 * by));
    const kept = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(kept - x) <= 4e-16 * end) return kept;
    x = kept;
  }
  return x;
}
