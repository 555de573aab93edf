import { findRoot } from '../numeric/root.ts';
import type { FormulaInput } from './formula.ts';

/** An output as one input moves and the others stay [SI]; NaN where there is no result. */
export type Curve = (x: number) => number;

/** Where a curve has a value, and what it reaches. */
export interface Inverse {
  /** Every place found, rising [SI]. */
  readonly roots: readonly number[];
  /** Least and greatest value over the whole search [SI]; null when there is no result anywhere. */
  readonly reached: { readonly low: number; readonly high: number } | null;
  /** A range throughout which the curve has the value: no single place answers. */
  readonly plateau: { readonly from: number; readonly to: number } | null;
}

/** Where an input is looked for: decades to both sides of its size, steps in each, and the reach of a temperature [K]. */
const decades = 12;
const stepsInDecade = 16;
const hottest = 5000;
const kelvinStep = 2;
const mostCounted = 1000;

/** The values of an input among which the search begins [SI], rising, inside what can exist. `size`: how large it usually is. */
export function searchPoints(
  { kind, low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY, lowOpen }: FormulaInput,
  size: number,
): number[] {
  if (kind === 'count') {
    const first = Math.max(0, Math.ceil(low));
    return Array.from({ length: Math.min(high, mostCounted) - first + 1 }, (_, i) => first + i);
  }
  const points = [low, high];
  if (kind === 'temperature')
    for (let kelvin = kelvinStep; kelvin <= hottest; kelvin += kelvinStep) points.push(kelvin);
  else
    for (let k = -decades * stepsInDecade; k <= decades * stepsInDecade; k++) {
      const point = (size === 0 ? 1 : Math.abs(size)) * 10 ** (k / stepsInDecade);
      points.push(point, -point, 0);
    }
  for (let k = 1; k < 200; k++) points.push(low + ((high - low) * k) / 200);
  const inside = points.filter((x) => Number.isFinite(x) && (lowOpen ? x > low : x >= low) && x <= high);
  return [...new Set(inside)].sort((a, b) => a - b);
}

/**
 * Every place where a curve has `target`: between neighbours of `points` (rising) with the target between their values, at the edge of the
 * range with results, and around turning points. A jump across the target is no place.
 */
export function invert(curve: Curve, points: readonly number[], target: number): Inverse {
  const f = (x: number) => curve(x) - target;
  const looked = withTurns(
    withEdges(
      points.map((x) => ({ x, y: f(x) })),
      f,
    ),
    f,
  ).filter(({ y }) => Number.isFinite(y));
  if (looked.length === 0) return { roots: [], reached: null, plateau: null };
  const values = looked.map(({ y }) => y + target);
  const reached = { low: Math.min(...values), high: Math.max(...values) };
  const roots: number[] = [];
  for (let i = 0; i < looked.length; i++) {
    const [{ x, y }, next] = [looked[i], looked[i + 1]];
    if (y === 0 && next?.y === 0) {
      const end = looked.slice(i).findIndex((point) => point.y !== 0);
      return { roots: [], reached, plateau: { from: x, to: looked.at(end < 0 ? -1 : i + end - 1)!.x } };
    }
    if (y === 0) roots.push(x);
    else if (next && Math.sign(y) * Math.sign(next.y) < 0) {
      const root = findRoot(f, x, next.x);
      if (isMet(root.residual, target, y + target, next.y + target)) roots.push(root.x);
    }
  }
  return { roots: roots.filter((x, i) => i === 0 || x - roots[i - 1] > 1e-9 * Math.abs(x)), reached, plateau: null };
}

/** The place nearest to `start` where a curve has `target`, between `low` and `high`; NaN when none is found. For a curve that moved a little. */
export function followRoot(curve: Curve, start: number, target: number, low: number, high: number): number {
  const f = (x: number) => curve(x) - target;
  let [below, above] = [start, start];
  let [atBelow, atAbove] = [f(start), f(start)];
  if (atBelow === 0) return start;
  if (!Number.isFinite(atBelow)) return Number.NaN;
  for (const share of [0.003, 0.03, 0.1, 0.3, 0.7, 0.97, 3, 1000]) {
    for (const side of [-1, 1]) {
      const from = side < 0 ? below : above;
      const atFrom = side < 0 ? atBelow : atAbove;
      // Away from zero by the same ratio as towards it, so that positive values stay positive until the last two.
      const towardsZero = side * start < 0;
      const reach = (start === 0 ? 1 : Math.abs(start)) * (towardsZero || share > 1 ? share : share / (1 - share));
      const goal = Math.min(high, Math.max(low, start + side * reach));
      const to = Number.isFinite(f(goal)) ? goal : edgeBetween(f, from, goal);
      const atTo = f(to);
      if (Math.sign(atFrom) * Math.sign(atTo) <= 0) {
        const { x, residual } = findRoot(f, from, to);
        return isMet(residual, target, atFrom + target, atTo + target) ? x : Number.NaN;
      }
      if (side < 0) [below, atBelow] = [to, atTo];
      else [above, atAbove] = [to, atTo];
    }
  }
  return Number.NaN;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Whether what is left is rounding, and not a jump or a pole. */
function isMet(residual: number, target: number, before: number, after: number): boolean {
  return Math.abs(residual) <= 1e-9 * Math.max(Math.abs(target), Math.min(Math.abs(before), Math.abs(after)));
}

/** Between a point with a result and one without, the last point with one. */
function withEdges(points: readonly Point[], f: Curve): Point[] {
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    if (!next || Number.isFinite(point.y) === Number.isFinite(next.y)) return [point];
    const x = Number.isFinite(point.y) ? edgeBetween(f, point.x, next.x) : edgeBetween(f, next.x, point.x);
    return x === point.x || x === next.x ? [point] : [point, { x, y: f(x) }];
  });
}

function edgeBetween(f: Curve, solved: number, unsolved: number): number {
  let [inside, outside] = [solved, unsolved];
  for (let i = 0; i < 60; i++) {
    const middle = (inside + outside) / 2;
    if (Number.isFinite(f(middle))) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** Where the curve comes near the target and turns back, or goes over it and comes back, the turning point, by golden section. */
function withTurns(points: readonly Point[], f: Curve): Point[] {
  return points.flatMap((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (!before || !after || !isTurn(before.y, point.y, after.y)) return [point];
    const side = Math.sign(point.y);
    const x = leastBetween((at) => side * f(at), before.x, after.x);
    const turn = { x, y: f(x) };
    return x < point.x ? [turn, point] : [point, turn];
  });
}

function isTurn(before: number, here: number, after: number): boolean {
  const sameSide = Math.sign(before) === Math.sign(here) && Math.sign(after) === Math.sign(here);
  return sameSide && Math.abs(here) < Math.abs(before) && Math.abs(here) < Math.abs(after);
}

/** Source: J. Kiefer, Proc. Am. Math. Soc. 4 (1953) 502–506. */
function leastBetween(f: Curve, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < 80; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}
