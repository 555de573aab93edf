import type { StockPart } from './stock.ts';

/** What is soldered at a sense point, beside or instead of what was there. */
export interface PointFit {
  /** Whether the resistors that the step began with are still there. */
  readonly original: boolean;
  /** Resistors of the stock: across the original ones, or in their place. */
  readonly added: readonly StockPart[];
  /** Resistor across the sense lines, beside what was there; null: none. */
  readonly across: StockPart | null;
}

export type Kind = 'replace' | 'stack' | 'divider';

export const untouched: PointFit = { original: true, added: [], across: null };

/** What a move from one fit to another takes at the iron. */
export interface Work {
  readonly soldered: number;
  readonly removed: number;
}

/** Work at one point; `originals`: resistors that the step began with. At most two parts of the stock are there. */
export function workBetween(before: PointFit, after: PointFit, originals: number): Work {
  const kept = inBoth(before.added, after.added);
  let soldered = after.added.length - kept;
  let removed = before.added.length - kept;
  if (before.original && !after.original) removed += originals;
  if (!before.original && after.original) soldered += originals;
  if (before.across !== after.across) {
    if (before.across) removed++;
    if (after.across) soldered++;
  }
  return { soldered, removed };
}

function inBoth(a: readonly StockPart[], b: readonly StockPart[]): number {
  if (a.length === 0 || b.length === 0) return 0;
  const first = a[0] === b[0] ? 0 : a[0] === b[1] ? 1 : -1;
  if (a.length === 1) return first < 0 ? 0 : 1;
  if (first < 0) return a[1] === b[0] || a[1] === b[1] ? 1 : 0;
  return a[1] === b[1 - first] ? 2 : 1;
}

/**
 * What the work of a step counts in the order of the options, in points [1]; one point weighs like 1 % of error or of standard uncertainty.
 * A new part is one more that can short, and a reading lost lifts the power; where the current's only way is a joint made by hand, its opening cuts
 * the rail. Weights: own rule, no source.
 */
export const weights = {
  operation: 0.5,
  canShort: 0.5,
  /** Something is taken off that was there before: a later step should only add. */
  removal: 0.5,
  onlyWay: 0.5,
  /** For each tenth of its derated rating beyond a half, of each part. */
  load: 0.5,
} as const;

/** Points for the work at one point: none where nothing changes, 1 or more otherwise. */
export function workPoints(before: PointFit, after: PointFit, originals: number): number {
  const { soldered, removed } = workBetween(before, after, originals);
  if (soldered + removed === 0) return 0;
  return (
    soldered * (weights.operation + weights.canShort) +
    removed * (weights.operation + weights.removal) +
    (after.original || !before.original ? 0 : weights.onlyWay)
  );
}

/** The fewest points that any work counts. */
export const leastWork = 1;

/** Points for a part's share of its derated rating. */
export function loadPoints(share: number): number {
  return weights.load * 10 * Math.max(0, share - 0.5);
}
