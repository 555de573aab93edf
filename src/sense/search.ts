import { leastWork, type PointFit, workPoints } from './fit.ts';

/** A sense point in a search: everything that may be there, first what the step begins with. */
export interface SearchPoint {
  readonly fits: readonly PointFit[];
  readonly originals: number;
}

/** What each fit of each point does at a target. A fit that can't be used there has NaN for its reading. */
export interface SearchTarget {
  /** Reading at which the target is met exactly: what is allowed, without the offsets' share [W]. */
  readonly needed: number;
  /** Variance of the offsets' share [W²]. */
  readonly offsetVariance: number;
  /** By point and fit: its share of the reading while the target flows [W]. */
  readonly reading: readonly Float64Array[];
  /** By point and fit: variance of that share [W²]. */
  readonly variance: readonly Float64Array[];
  /** By point and fit: points for dissipation. */
  readonly load: readonly Float64Array[];
}

/** One step of a ladder: a fit for every point. */
export interface FoundStep {
  readonly fits: readonly number[];
  /** Real power at the limit over the target, less 1. */
  readonly error: number;
  /** Standard uncertainty of the real power at the limit, relative [1]. */
  readonly u: number;
  readonly work: number;
  readonly load: number;
}

export interface FoundLadder {
  /** 100·|error| + 100·u + load + work, summed over the steps. */
  readonly points: number;
  readonly steps: readonly FoundStep[];
}

/** Nothing further from its target than this is an option. */
export const within = 0.1;

/** What one point can become by the same work. */
interface Group {
  readonly work: number;
  /** Rising readings. */
  readonly readings: Float64Array;
  readonly fits: Int32Array;
}

interface Moves {
  /** Groups of more work than this are left out. */
  readonly most: number;
  /** The least work first. */
  readonly groups: readonly Group[];
}

/**
 * The `top` ladders with the fewest points, one step for each target, fewest first. Every step changes something.
 *
 * Complete: a branch is left only where what it has already counted, and the least that everything after it must count, is more than the last of
 * those wanted. It deepens from a small allowance of points until enough are found; within an allowance, readings sorted by size leave only those
 * whose error fits into what work and uncertainty leave.
 */
export function searchLadders(
  points: readonly SearchPoint[],
  targets: readonly SearchTarget[],
  top: number,
): FoundLadder[] {
  const orders = targets.map(({ reading }) => reading.map(inOrder));
  const floors = targets.map((target) => 100 * leastUncertainty(target));
  const later = targets.map((_, t) => floors.slice(t + 1).reduce((sum, floor) => sum + floor + leastWork, 0));
  const least = floors[0] + leastWork + later[0];
  const moves = targets.map(() => points.map(() => new Map<number, Moves>()));
  let best: FoundLadder[] = [];
  let bound = 0;

  // One step's enumeration at a time: these are its own.
  let t = 0;
  let counted = 0;
  let visit: (step: FoundStep, counted: number) => void;
  const last = points.length - 1;
  const open: (readonly Group[])[] = points.map(() => []);
  const chosen: Group[] = [];
  const fits = points.map(() => 0);
  const lowest = new Float64Array(points.length + 1);
  const highest = new Float64Array(points.length + 1);

  const start = points.map(() => 0);
  for (let allowance = 0.25; ; allowance += Math.max(0.25, allowance / 2)) {
    best = [];
    bound = least + allowance;
    climb(0, start, 0, []);
    if (best.length >= top || allowance > mostPoints) return best;
  }

  function climb(step: number, from: readonly number[], before: number, below: readonly FoundStep[]): void {
    const found: { made: FoundStep; now: number }[] = [];
    enumerate(step, from, before, (made, now) => {
      if (step === targets.length - 1) keep({ points: now, steps: [...below, made] });
      else found.push({ made, now });
    });
    found.sort((a, b) => a.now - b.now);
    for (const { made, now } of found) {
      if (now + later[step] > bound) return;
      climb(step + 1, made.fits, now, [...below, made]);
    }
  }

  function keep(ladder: FoundLadder): void {
    let place = best.length;
    while (place > 0 && best[place - 1].points > ladder.points) place--;
    best.splice(place, 0, ladder);
    if (best.length > top) best.pop();
    if (best.length === top) bound = Math.min(bound, best[top - 1].points);
  }

  /** Every step from these fits that may still belong to one of the ladders wanted. */
  function enumerate(step: number, from: readonly number[], before: number, visitor: typeof visit): void {
    t = step;
    counted = before;
    visit = visitor;
    const most = bound - counted - later[t] - floors[t];
    for (let i = 0; i <= last; i++) {
      open[i] = movesFrom(i, from[i], most);
      if (open[i].length === 0) return;
    }
    choose(last, 0);
  }

  /** Takes a group for each point from the last one down, then looks for readings. */
  function choose(i: number, work: number): void {
    if (i < 0) {
      if (work > 0) descend(0, 0, targets[t].offsetVariance, 0, work);
      return;
    }
    for (const group of open[i]) {
      if (counted + work + group.work + floors[t] + later[t] > bound) return;
      chosen[i] = group;
      lowest[i] = lowest[i + 1] + group.readings[0];
      highest[i] = highest[i + 1] + group.readings[group.readings.length - 1];
      choose(i - 1, work + group.work);
    }
  }

  function descend(i: number, sum: number, spread: number, loaded: number, work: number): void {
    const error = Math.min(within, (bound - counted - later[t] - floors[t] - work - loaded) / 100);
    if (error < 0) return;
    const { needed, variance, load } = targets[t];
    // Rounding must not lose what lies right at an end.
    const slack = 1e-12 * needed;
    const from = needed / (1 + error) - sum - highest[i + 1] - slack;
    const to = needed / (1 - error) - sum - lowest[i + 1] + slack;
    const { readings, fits: ids } = chosen[i];
    for (let k = firstFrom(readings, from); k < readings.length && readings[k] <= to; k++) {
      const id = ids[k];
      fits[i] = id;
      const nowSpread = spread + variance[i][id];
      const nowLoaded = loaded + load[i][id];
      if (i < last) descend(i + 1, sum + readings[k], nowSpread, nowLoaded, work);
      else finish(sum + readings[k], nowSpread, nowLoaded, work);
    }
  }

  function finish(reading: number, spread: number, loaded: number, work: number): void {
    const error = targets[t].needed / reading - 1;
    const u = Math.sqrt(spread) / reading;
    const now = counted + 100 * Math.abs(error) + 100 * u + loaded + work;
    if (now + later[t] > bound || Math.abs(error) > within) return;
    visit({ fits: [...fits], error, u, work, load: loaded }, now);
  }

  /** What one point can become at the present target with no more than this work. */
  function movesFrom(i: number, from: number, most: number): readonly Group[] {
    const known = moves[t][i].get(from);
    if (known && known.most >= most) return known.groups;
    const { fits: there, originals } = points[i];
    const lists = new Map<number, number[]>();
    for (const to of orders[t][i]) {
      const work = workPoints(there[from], there[to], originals);
      if (work > most) continue;
      const list = lists.get(work);
      if (list) list.push(to);
      else lists.set(work, [to]);
    }
    const reading = targets[t].reading[i];
    const groups = [...lists].map(([work, list]): Group => {
      return { work, fits: Int32Array.from(list), readings: Float64Array.from(list, (fit) => reading[fit]) };
    });
    groups.sort((a, b) => a.work - b.work);
    moves[t][i].set(from, { most, groups });
    return groups;
  }
}

/** More than any ladder within its targets counts: then there are no more. */
const mostPoints = 4000;

/** Places of what can be used, by rising reading. */
function inOrder(readings: Float64Array): Int32Array {
  const usable = [...readings.keys()].filter((place) => !Number.isNaN(readings[place]));
  return Int32Array.from(usable.sort((a, b) => readings[a] - readings[b]));
}

/** First place with at least `value`. */
function firstFrom(rising: Float64Array, value: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * No choice of fits has a smaller relative uncertainty than this: with shares a of the reading (Σa = 1) and relative variances v, Σa²v is least at
 * a ∝ 1/v, where it is 1/Σ(1/v).
 */
function leastUncertainty({ reading, variance }: SearchTarget): number {
  let inverse = 0;
  reading.forEach((readings, i) => {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < readings.length; k++)
      if (!Number.isNaN(readings[k])) least = Math.min(least, variance[i][k] / readings[k] ** 2);
    inverse += 1 / least;
  });
  return inverse > 0 && Number.isFinite(inverse) ? Math.sqrt(1 / inverse) : 0;
}
