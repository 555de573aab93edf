import { describe, expect, test } from 'vitest';
import { sobol } from '../numeric/sobol.ts';
import { moments } from '../quantity/moments.ts';
import { endsOf, type Spread } from '../quantity/spread.ts';
import { quantile, toDistribution } from './distribution.ts';
import { normalBelow } from './probability.ts';
import { studentAbove } from './student-t.ts';

/** Probability of being below x, written down from the definitions of JCGM 101:2008, 6.4, each in another way than its inverse is. */
const distributions: readonly [string, number, Spread, (x: number) => number][] = [
  ['normal', 5, { shape: 'normal', u: 2 }, (x) => normalBelow((x - 5) / 2)],
  ['log-normal', 5, { shape: 'log-normal', sigma: 0.4 }, (x) => normalBelow(Math.log(x / 5) / 0.4)],
  ['t', 5, { shape: 't', u: 2, degreesOfFreedom: 7 }, (x) => 1 - studentAbove((x - 5) / 2, 7)],
  ['rectangular', 5, { shape: 'rectangular', low: 3, high: 9 }, (x) => (x - 3) / 6],
  [
    'triangular',
    5,
    { shape: 'triangular', low: 3, high: 9 },
    (x) => (x < 5 ? (x - 3) ** 2 / 12 : 1 - (9 - x) ** 2 / 24),
  ],
  ['u-shaped', 6, { shape: 'u-shaped', low: 3, high: 9 }, (x) => 0.5 + Math.asin((x - 6) / 3) / Math.PI],
  [
    // Density 1/4 in the middle, falling over a width of 2.
    'trapezoidal',
    6,
    { shape: 'trapezoidal', low: 3, high: 9, flat: 1 },
    (x) => (x < 5 ? (x - 3) ** 2 / 16 : x < 7 ? 0.25 + (x - 5) / 4 : 1 - (9 - x) ** 2 / 16),
  ],
  [
    // Half width w between 2.5 and 3.5, each as likely: the mean over w of a rectangle's distribution.
    'curvilinear',
    6,
    { shape: 'curvilinear', low: 3, high: 9, by: 0.5 },
    (x) => {
      const n = 20_000;
      let sum = 0;
      for (let k = 0; k < n; k++) sum += Math.min(1, Math.max(0, 0.5 + (x - 6) / (2 * (2.5 + (k + 0.5) / n))));
      return sum / n;
    },
  ],
  [
    'curvilinear, nothing certain but the middle',
    0,
    { shape: 'curvilinear', low: -1, high: 1, by: 1 },
    (x) => 0.5 + (x === 0 ? 0 : (x * (1 - Math.log(Math.abs(x) / 2))) / 4),
  ],
  [
    'sorted',
    6,
    { shape: 'sorted', low: 3, high: 9, holeLow: 5, holeHigh: 6 },
    (x) => (Math.min(x, 5) - 3 + Math.max(0, x - 6)) / 5,
  ],
];

describe('the value at a probability has that probability below it', () => {
  test.each(distributions)('%s', (_, value, spread, below) => {
    let last = Number.NEGATIVE_INFINITY;
    for (let p = 1 / 128; p < 1; p += 1 / 128) {
      const x = quantile(spread, value, p);
      expect(below(x)).toBeCloseTo(p, spread.shape === 'curvilinear' ? 8 : 12);
      expect(x).toBeGreaterThan(last);
      last = x;
    }
  });

  test.each(distributions)('%s keeps inside its ends, and reaches them', (_, value, spread) => {
    const ends = endsOf(spread);
    const [first, last] = [quantile(spread, value, 1e-15), quantile(spread, value, 1 - 1e-15, 1e-15)];
    if (!ends) return;
    expect(first).toBeGreaterThanOrEqual(ends.low);
    expect(last).toBeLessThanOrEqual(ends.high);
    expect(first - ends.low).toBeLessThan(1e-6);
    expect(ends.high - last).toBeLessThan(1e-6);
  });

  test('of several values each has its share', () => {
    const spread: Spread = { shape: 'choice', values: [15, 10, 12], probabilities: [0.2, 0.5, 0.3] };
    expect([0.01, 0.49, 0.51, 0.79, 0.81, 0.99].map((p) => quantile(spread, 11.6, p))).toEqual([
      10, 10, 12, 12, 15, 15,
    ]);
  });
});

describe('2^14 draws have the exact moments', () => {
  const seed = 20_261_125;
  const choice: [string, number, Spread] = [
    'choice',
    11.6,
    { shape: 'choice', values: [10, 12, 15], probabilities: [0.5, 0.3, 0.2] },
  ];
  test.each([...distributions.map(([name, value, spread]) => [name, value, spread] as const), choice])(
    `%s (seed ${seed})`,
    (_, value, spread) => {
      const column = new Float64Array(2 ** 14);
      sobol(1, seed).column(0, 0, column);
      toDistribution(column, spread, value);
      const mean = column.reduce((sum, x) => sum + x, 0) / column.length;
      const central = (power: number) => column.reduce((sum, x) => sum + (x - mean) ** power, 0) / column.length;
      const exact = moments(spread, value);
      const u = Math.sqrt(exact.variance!);
      expect(Math.abs(mean - exact.mean!)).toBeLessThan(1e-3 * u);
      expect(central(2) / exact.variance!).toBeCloseTo(1, 2);
      // The far ends of a wide distribution weigh most in the fourth power.
      const wide = spread.shape === 't' || spread.shape === 'log-normal';
      expect(Math.abs(central(3) - exact.third!) / u ** 3).toBeLessThan(wide ? 0.1 : 0.01);
      expect(Math.abs(central(4) / exact.fourth! - 1)).toBeLessThan(wide ? 0.2 : 0.01);
    },
  );
});
