import type { Spread } from '../quantity/spread.ts';
import { normalQuantile } from './normal-quantile.ts';
import { studentQuantile } from './student-t.ts';

/**
 * Value of an input [SI] that it is below with the probability `below`, 0 < below < 1: the inverse of its distribution. `above` is 1 − below, given by
 * itself where that keeps digits far out.
 *
 * Source: JCGM 101:2008, 6.4.2 to 6.4.9 (each shape's distribution, inverted; the curvilinear trapezoid by Newton's method).
 */
export function quantile(spread: Spread, value: number, below: number, above = 1 - below): number {
  switch (spread.shape) {
    case 'normal':
      return value + spread.u * normalOf(below, above);
    case 't': {
      const { u, degreesOfFreedom } = spread;
      return (
        value +
        u * (below < above ? studentQuantile(below, degreesOfFreedom) : -studentQuantile(above, degreesOfFreedom))
      );
    }
    case 'log-normal':
      return value * Math.exp(spread.sigma * normalOf(below, above));
    case 'choice':
      return chosen(spread.values, spread.probabilities, below);
    case 'sorted':
      return outsideHole(spread, below, above);
    case 'triangular': {
      const { low, high } = spread;
      const peak = Math.min(Math.max(value, low), high);
      const width = high - low;
      return below * width < peak - low
        ? low + Math.sqrt(below * width * (peak - low))
        : high - Math.sqrt(above * width * (high - peak));
    }
    default: {
      const { low, high } = spread;
      const distance = fromNearestEnd(spread, Math.min(below, above));
      return below < above ? low + distance : high - distance;
    }
  }
}

/** Fills a column of probabilities with the values [SI] of a distribution, in place. */
export function toDistribution(column: Float64Array, spread: Spread, value: number): void {
  const n = column.length;
  // The three that boards are full of have loops of their own.
  if (spread.shape === 'rectangular') {
    for (let s = 0; s < n; s++) column[s] = spread.low + (spread.high - spread.low) * column[s];
  } else if (spread.shape === 'normal') {
    for (let s = 0; s < n; s++) column[s] = value + spread.u * normalQuantile(column[s]);
  } else if (spread.shape === 'log-normal') {
    for (let s = 0; s < n; s++) column[s] = value * Math.exp(spread.sigma * normalQuantile(column[s]));
  } else {
    for (let s = 0; s < n; s++) column[s] = quantile(spread, value, column[s]);
  }
}

function normalOf(below: number, above: number): number {
  return below < above ? normalQuantile(below) : -normalQuantile(above);
}

type Symmetric = Extract<Spread, { readonly shape: 'rectangular' | 'u-shaped' | 'trapezoidal' | 'curvilinear' }>;

/** How far inside its nearest end [SI] a number of a symmetric shape lies, of which a share `tail` ≤ ½ lies farther out. */
function fromNearestEnd(spread: Symmetric, tail: number): number {
  const width = spread.high - spread.low;
  switch (spread.shape) {
    case 'rectangular':
      return width * tail;
    case 'u-shaped':
      return width * Math.sin((Math.PI / 2) * tail) ** 2;
    case 'trapezoidal': {
      const half = width / 2;
      const slope = half - spread.flat;
      // Of the slope: distance²/(2·slope·(half + flat)).
      const ofSlope = slope / (2 * (half + spread.flat));
      return tail < ofSlope
        ? Math.sqrt(2 * tail * slope * (half + spread.flat))
        : slope + (tail - ofSlope) * (half + spread.flat);
    }
    case 'curvilinear':
      return -spread.by + fromOuterEnd(width / 2, spread.by, tail);
  }
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

function outsideHole(spread: Extract<Spread, { readonly shape: 'sorted' }>, below: number, above: number): number {
  const { low, high, holeLow, holeHigh } = spread;
  const width = holeLow - low + (high - holeHigh);
  return below * width < holeLow - low ? low + below * width : Math.max(holeHigh, high - above * width);
}

/** The first value, counted up by size, at which the probabilities reach `below`. */
function chosen(values: readonly number[], probabilities: readonly number[], below: number): number {
  const order = [...values.keys()].sort((a, b) => values[a] - values[b]);
  let reached = 0;
  for (const k of order) {
    reached += probabilities[k];
    if (below < reached) return values[k];
  }
  return values[order[order.length - 1]];
}
