import { describe, expect, test } from 'vitest';
import { normalQuantile } from './normal-quantile.ts';
import { learntWithin, valueWithin } from './within.ts';

const stated = { low: 0, high: 2, mean: 1, u: 2 / Math.sqrt(12) };

/** Mean and standard deviation by the midpoint rule over the probability. */
function figuresOf(ends: Parameters<typeof valueWithin>[0]) {
  const n = 20_000;
  const values = Array.from({ length: n }, (_, k) => valueWithin(ends, normalQuantile((k + 0.5) / n)));
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  return { values, mean, u: Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / n) };
}

/** The same by integrating the density itself. */
function byDensity({ low, high, centre, u }: { low: number; high: number; centre: number; u: number }) {
  let [weight, first, second] = [0, 0, 0];
  for (let k = 0; k < 20_000; k++) {
    const x = low + ((k + 0.5) / 20_000) * (high - low);
    const density = Math.exp(-0.5 * ((x - centre) / u) ** 2);
    weight += density;
    first += density * x;
    second += density * x * x;
  }
  return { mean: first / weight, u: Math.sqrt(second / weight - (first / weight) ** 2) };
}

describe('a rectangle after a fit', () => {
  test('of which nothing was learnt is the rectangle', () => {
    const ends = learntWithin(stated, { mean: 1, u: stated.u });
    expect(ends.u).toBe(Number.POSITIVE_INFINITY);
    const { mean, u } = figuresOf(ends);
    expect(mean).toBeCloseTo(1, 6);
    expect(u).toBeCloseTo(stated.u, 4);
  });

  test('that a reading of 1.7 ± 0.5 was learnt from is their product', () => {
    // As a fit with a normal distribution in the rectangle's place finds it.
    const weight = 1 / stated.u ** 2 + 1 / 0.5 ** 2;
    const fitted = { mean: (1 / stated.u ** 2 + 1.7 / 0.5 ** 2) / weight, u: 1 / Math.sqrt(weight) };
    const ends = learntWithin(stated, fitted);
    expect(ends.centre).toBeCloseTo(1.7, 12);
    expect(ends.u).toBeCloseTo(0.5, 12);
    const [drawn, exact] = [figuresOf(ends), byDensity(ends)];
    expect(drawn.mean).toBeCloseTo(exact.mean, 4);
    expect(drawn.u).toBeCloseTo(exact.u, 4);
  });

  test.each([-4, 0.3, 6, 30])('never leaves its ends and rises with the probability, centre %d', (centre) => {
    const ends = { low: 0, high: 2, centre, u: 0.5 };
    const { values, mean } = figuresOf(ends);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThanOrEqual(2);
    for (let k = 1; k < values.length; k++) expect(values[k]).toBeGreaterThanOrEqual(values[k - 1]);
    if (centre < 10) expect(mean).toBeCloseTo(byDensity(ends).mean, 3);
    else expect(mean).toBeGreaterThan(1.98);
  });
});
