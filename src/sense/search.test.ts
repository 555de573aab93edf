import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PointFit } from './fit.ts';
import { type SearchPoint, type SearchTarget, searchLadders } from './search.ts';
import { partByHand, type StockPart } from './stock.ts';

const parts: StockPart[] = Array.from({ length: 6 }, (_, i) =>
  partByHand({ kind: 'resistance', value: 1e-3 * (i + 1), unit: 'mohm', spread: null, text: `${i + 1} mohm` }),
);

/** Every fit of a small stock, written out. */
function fitsFrom(stock: readonly StockPart[]): PointFit[] {
  const fits: PointFit[] = [{ original: true, added: [], across: null }];
  for (const part of stock) {
    fits.push({ original: false, added: [part], across: null }, { original: true, added: [part], across: null });
    fits.push({ original: true, added: [], across: part });
  }
  for (let i = 0; i < stock.length; i++)
    for (let j = i; j < stock.length; j++) fits.push({ original: true, added: [stock[i], stock[j]], across: null });
  return fits;
}

/** Points for work, counted by hand: 1 for each part put on, 1 for each taken off, 0.5 where a new joint becomes the only way. */
function workOf(before: PointFit, after: PointFit): number {
  const items = (fit: PointFit) => [
    ...(fit.original ? ['original'] : []),
    ...fit.added.map(({ name }) => name),
    ...(fit.across ? [`across ${fit.across.name}`] : []),
  ];
  const left = items(before);
  let on = 0;
  for (const item of items(after)) {
    const place = left.indexOf(item);
    if (place < 0) on++;
    else left.splice(place, 1);
  }
  if (on + left.length === 0) return 0;
  return on + left.length + (before.original && !after.original ? 0.5 : 0);
}

/** All ladders' points, by looking at each. */
function bruteForce(points: readonly SearchPoint[], targets: readonly SearchTarget[]): number[] {
  const all = points.reduce<number[][]>(
    (chosen, { fits }) => chosen.flatMap((each) => fits.map((_, k) => [...each, k])),
    [[]],
  );
  const found: number[] = [];
  const climb = (t: number, from: readonly number[], counted: number) => {
    if (t === targets.length) {
      found.push(counted);
      return;
    }
    const { needed, reading, variance, load, offsetVariance } = targets[t];
    for (const fits of all) {
      const work = fits.reduce((sum, fit, i) => sum + workOf(points[i].fits[from[i]], points[i].fits[fit]), 0);
      const sum = fits.reduce((total, fit, i) => total + reading[i][fit], 0);
      const error = Math.abs(needed / sum - 1);
      if (work === 0 || !(error <= 0.1)) continue;
      const u = Math.sqrt(fits.reduce((total, fit, i) => total + variance[i][fit], offsetVariance)) / sum;
      const loaded = fits.reduce((total, fit, i) => total + load[i][fit], 0);
      climb(t + 1, fits, counted + 100 * error + 100 * u + loaded + work);
    }
  };
  climb(
    0,
    points.map(() => 0),
    0,
  );
  return found.sort((a, b) => a - b);
}

/** Any numbers will do: the search knows nothing of resistors. Some fits can't be used. */
function problem(sizes: readonly number[], steps: number) {
  const points = sizes.map((size): SearchPoint => ({ fits: fitsFrom(parts.slice(0, size)), originals: 1 }));
  const column = (low: number, high: number) =>
    fc.tuple(
      ...points.map(({ fits }) =>
        fc.array(fc.double({ min: low, max: high, noNaN: true }), { minLength: fits.length, maxLength: fits.length }),
      ),
    );
  const target = fc
    .tuple(
      fc.double({ min: 30, max: 60, noNaN: true }),
      column(5, 40),
      column(0, 0.02),
      column(0, 1),
      column(0, 1),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
    )
    .map(([needed, readings, relative, load, blocked, offset]): SearchTarget => {
      const reading = readings.map((each, i) =>
        Float64Array.from(each, (r, k) => (blocked[i][k] > 0.9 ? Number.NaN : r)),
      );
      return {
        needed,
        offsetVariance: offset ** 2,
        reading,
        variance: reading.map((each, i) => each.map((r, k) => (r * relative[i][k]) ** 2)),
        load: load.map((each) => Float64Array.from(each, (share) => Math.max(0, share - 0.7))),
      };
    });
  return fc.record({ points: fc.constant(points), targets: fc.array(target, { minLength: steps, maxLength: steps }) });
}

test.each([
  ['one point, one step', [6], 1, 60],
  ['two points, one step', [4, 5], 1, 40],
  ['three points, one step', [3, 2, 3], 1, 25],
  ['one point, three steps', [3], 3, 25],
  ['two points, two steps', [2, 2], 2, 25],
  ['three points, two steps', [1, 1, 1], 2, 20],
  ['three points, three steps', [1, 1, 1], 3, 15],
])(
  '%s: the best are those that a look at every combination finds',
  (_, sizes, steps, runs) => {
    fc.assert(
      fc.property(problem(sizes, steps), fc.integer({ min: 1, max: 12 }), ({ points, targets }, top) => {
        const found = searchLadders(points, targets, top);
        const all = bruteForce(points, targets);
        expect(found).toHaveLength(Math.min(top, all.length));
        found.forEach((ladder, k) => {
          expect(Math.abs(ladder.points - all[k])).toBeLessThan(1e-9);
        });
      }),
      { numRuns: runs, seed: 11, endOnFailure: true },
    );
  },
  60_000,
);

test('what it says of a step adds up to its points', () => {
  const [{ points, targets }] = fc.sample(problem([4, 5], 2), { numRuns: 1, seed: 3 });
  for (const { points: counted, steps } of searchLadders(points, targets, 5)) {
    const sum = steps.reduce(
      (total, { error, u, work, load }) => total + 100 * Math.abs(error) + 100 * u + work + load,
      0,
    );
    expect(Math.abs(counted - sum)).toBeLessThan(1e-9);
  }
});
