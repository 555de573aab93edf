import { array, assert, double, integer, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mannKendall, theilSen } from './mann-kendall.ts';
import { type QuantileDefinition, quantileOf } from './quantile.ts';
import { rankSum } from './rank-sum.ts';
import { ranksOf } from './ranks.ts';
import { geometricMean } from './ratio.ts';
import { adjustByBenjaminiHochberg, adjustByHolm } from './several-tests.ts';
import { warmUpOf } from './warm-up.ts';
import { weightedMean } from './weighted-mean.ts';

const seed = 41;
const reading = integer({ min: -1000, max: 1000 }).map((k) => k / 8);
const readings = (minLength: number) => array(reading, { minLength, maxLength: 25 });
const chance = double({ min: 0, max: 1, noNaN: true });

test('a quantile of any definition lies among the readings, never falls with its share, and moves with the readings', () => {
  const definition = integer({ min: 1, max: 9 }).map((k) => k as QuantileDefinition);
  assert(
    property(readings(1), chance, chance, definition, (values, p, q, type) => {
      const sorted = Float64Array.from(values).sort();
      const [low, high] = [Math.min(p, q), Math.max(p, q)].map((share) => quantileOf(sorted, share, type));
      expect(low).toBeLessThanOrEqual(high + 1e-9);
      expect(low).toBeGreaterThanOrEqual(sorted[0]);
      expect(high).toBeLessThanOrEqual(sorted[sorted.length - 1]);
      const moved = sorted.map((value) => 2 * value + 16);
      expect(quantileOf(moved, p, type)).toBeCloseTo(2 * quantileOf(sorted, p, type) + 16, 8);
    }),
    { seed },
  );
});

test('the definitions that are symmetric see the same from both ends', () => {
  assert(
    property(readings(1), double({ min: 0.01, max: 0.99, noNaN: true }), (values, p) => {
      const sorted = Float64Array.from(values).sort();
      const turned = sorted.map((value) => -value).reverse();
      for (const type of [5, 6, 7, 8, 9] as const)
        expect(quantileOf(turned, 1 - p, type)).toBeCloseTo(-quantileOf(sorted, p, type), 6);
    }),
    { seed },
  );
});

describe('adjusted probabilities', () => {
  const chances = array(chance, { minLength: 1, maxLength: 12 });

  test('are never below their own, keep their order, and Holm’s are the larger', () => {
    assert(
      property(chances, (list) => {
        const [holm, rates] = [adjustByHolm(list), adjustByBenjaminiHochberg(list)];
        list.forEach((own, i) => {
          expect(rates[i]).toBeGreaterThanOrEqual(own);
          expect(holm[i]).toBeGreaterThanOrEqual(rates[i] - 1e-15);
          expect(holm[i]).toBeLessThanOrEqual(1);
          list.forEach((other, j) => {
            if (own < other) expect(holm[i]).toBeLessThanOrEqual(holm[j]);
            if (own < other) expect(rates[i]).toBeLessThanOrEqual(rates[j]);
          });
        });
      }),
      { seed },
    );
  });

  test('of a single test is its own', () => {
    expect([adjustByHolm([0.03]), adjustByBenjaminiHochberg([0.03])]).toEqual([[0.03], [0.03]]);
  });
});

test('a trend turned round in time, or in sign, is the opposite trend', () => {
  assert(
    property(readings(4), (values) => {
      const [there, back] = [mannKendall(values), mannKendall([...values].reverse())];
      const down = mannKendall(values.map((value) => -value));
      expect(back?.s ?? 0).toBe(0 - (there?.s ?? 0) + 0);
      expect(down?.variance).toBe(there?.variance);
      expect((down?.z ?? 0) + (there?.z ?? 0)).toBe(0);
      const slopes = theilSen(values);
      if (!slopes) return;
      expect(slopes.low).toBeLessThanOrEqual(slopes.slope);
      expect(slopes.high).toBeGreaterThanOrEqual(slopes.slope);
    }),
    { seed },
  );
});

test('a straight line has its slope, whatever the times', () => {
  const times = [0, 1, 4, 9, 11, 30];
  const line = times.map((t) => 5 - 0.25 * t);
  expect(theilSen(line, times)).toMatchObject({ slope: -0.25, low: -0.25, high: -0.25 });
  expect(mannKendall(line)!.tau).toBe(-1);
});

test('ranks sum to n(n + 1)/2, ties or not, and two samples share their pairs', () => {
  assert(
    property(readings(2), readings(2), (one, other) => {
      expect(ranksOf(one).reduce((sum, rank) => sum + rank, 0)).toBeCloseTo((one.length * (one.length + 1)) / 2, 9);
      const [there, back] = [rankSum(one, other), rankSum(other, one)];
      if (!there || !back) return;
      expect(there.u + back.u).toBeCloseTo(one.length * other.length, 9);
      expect(there.chance).toBeCloseTo(back.chance, 12);
    }),
    { seed },
  );
});

test('a weighted mean of equal uncertainties is the mean, with u/√n; alone, it has no Birge ratio', () => {
  const { mean, u, birgeRatio } = weightedMean([1, 2, 6], [0.3, 0.3, 0.3]);
  expect(mean).toBeCloseTo(3, 12);
  expect(u).toBeCloseTo(0.3 / Math.sqrt(3), 12);
  // By hand: χ² = (4 + 1 + 9)/0.09, two degrees of freedom.
  expect(birgeRatio).toBeCloseTo(Math.sqrt(14 / 0.09 / 2), 9);
  expect(weightedMean([4], [0.1])).toMatchObject({ mean: 4, birgeRatio: null, uAgreed: 0.1 });
  expect(() => weightedMean([4], [0])).toThrow('uncertainty 0');
});

test('the geometric mean of inverse ratios is the inverse; of a single one it has no interval', () => {
  const ratios = [1.2, 0.9, 1.05, 1.4];
  const inverse = geometricMean(ratios.map((ratio) => 1 / ratio));
  expect(inverse.ratio * geometricMean(ratios).ratio).toBeCloseTo(1, 12);
  expect(inverse.interval![0] * geometricMean(ratios).interval![1]).toBeCloseTo(1, 12);
  expect(geometricMean([1.5])).toMatchObject({ interval: null });
});

test('a level series has nothing to cut but noise; one that still falls has its best cut at the last one looked at', () => {
  expect(warmUpOf([5, 5, 5, 5, 5, 5])).toMatchObject({ cut: 0, mean: 5 });
  expect(warmUpOf([12, 11, 10, 9, 8, 7, 6, 5, 4, 3])).toMatchObject({ cut: 5, found: false });
  expect(warmUpOf([1, 2, 3])).toBeNull();
});
