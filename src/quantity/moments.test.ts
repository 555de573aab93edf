import { describe, expect, test } from 'vitest';
import { moments } from './moments.ts';
import { endsOf, type Spread, standardUncertainty } from './spread.ts';

/** Densities as JCGM 101:2008 defines them in 6.4, up to a factor, with the places where they break. */
const densities: readonly [string, number, Spread, (x: number) => number, readonly number[]][] = [
  ['rectangular', 5, { shape: 'rectangular', low: 3, high: 9 }, () => 1, [3, 9]],
  ['triangular', 5, { shape: 'triangular', low: 3, high: 9 }, (x) => (x < 5 ? (x - 3) / 2 : (9 - x) / 4), [3, 5, 9]],
  ['triangular, peak at an end', 3, { shape: 'triangular', low: 3, high: 9 }, (x) => 9 - x, [3, 9]],
  [
    'trapezoidal',
    6,
    { shape: 'trapezoidal', low: 3, high: 9, flat: 1 },
    (x) => Math.min(1, (3 - Math.abs(x - 6)) / 2),
    [3, 5, 7, 9],
  ],
  [
    'curvilinear trapezoid',
    6,
    { shape: 'curvilinear', low: 3, high: 9, by: 0.5 },
    (x) => Math.log(3.5 / Math.max(2.5, Math.abs(x - 6))),
    [2.5, 3.5, 8.5, 9.5],
  ],
  [
    'sorted',
    6,
    { shape: 'sorted', low: 3, high: 9, holeLow: 5, holeHigh: 6.5 },
    (x) => (x > 5 && x < 6.5 ? 0 : 1),
    [3, 5, 6.5, 9],
  ],
  [
    'log-normal',
    2,
    { shape: 'log-normal', sigma: 0.3 },
    (x) => Math.exp(-(Math.log(x / 2) ** 2) / 0.18) / x,
    [0.05, 2, 60],
  ],
  ['normal', 2, { shape: 'normal', u: 0.3 }, (x) => Math.exp(-((x - 2) ** 2) / 0.18), [-2, 2, 6]],
  [
    't, 9 degrees of freedom',
    2,
    { shape: 't', u: 0.3, degreesOfFreedom: 9 },
    (x) => (1 + ((x - 2) / 0.3) ** 2 / 9) ** -5,
    [-4000, -40, -2, 1, 3, 6, 44, 4000],
  ],
];

/** By Gauss's rule of five points in a hundred pieces between two breaks. */
function integral(f: (x: number) => number, breaks: readonly number[]): number {
  const points = [0, 0.5384693101056831, 0.906179845938664];
  const weights = [128 / 225, 0.4786286704993665, 0.2369268850561891];
  let sum = 0;
  for (let b = 1; b < breaks.length; b++) {
    const step = (breaks[b] - breaks[b - 1]) / 400;
    for (let piece = 0; piece < 400; piece++) {
      const middle = breaks[b - 1] + (piece + 0.5) * step;
      points.forEach((point, k) => {
        for (const x of k === 0 ? [middle] : [middle - (point * step) / 2, middle + (point * step) / 2])
          sum += (weights[k] * step * f(x)) / 2;
      });
    }
  }
  return sum;
}

describe('moments are those of the density', () => {
  test.each(densities)('%s', (_, value, spread, density, breaks) => {
    const whole = integral(density, breaks);
    const mean = integral((x) => x * density(x), breaks) / whole;
    const central = (power: number) => integral((x) => (x - mean) ** power * density(x), breaks) / whole;
    const found = moments(spread, value);
    expect(found.mean).toBeCloseTo(mean, 7);
    expect(found.variance! / central(2)).toBeCloseTo(1, 7);
    expect(found.third! / central(2) ** 1.5).toBeCloseTo(central(3) / central(2) ** 1.5, 6);
    expect(found.fourth! / central(4)).toBeCloseTo(1, 6);
  });

  // x = 6 + 3·cos φ with φ rectangular (JCGM 101:2008, 6.4.6.1).
  test('u-shaped', () => {
    const around = [0, Math.PI];
    const mean = (power: number) => integral((phase) => (3 * Math.cos(phase)) ** power, around) / Math.PI;
    const found = moments({ shape: 'u-shaped', low: 3, high: 9 }, 6);
    expect(found.mean).toBe(6);
    expect(found.variance).toBeCloseTo(mean(2), 12);
    expect(found.third).toBeCloseTo(mean(3), 12);
    expect(found.fourth).toBeCloseTo(mean(4), 12);
  });

  test('one of several values', () => {
    const found = moments({ shape: 'choice', values: [10, 12, 15], probabilities: [0.5, 0.3, 0.2] }, 11.6);
    // By hand: mean 11.6; distances −1.6, 0.4, 3.4.
    expect(found.mean).toBeCloseTo(11.6, 14);
    expect(found.variance).toBeCloseTo(0.5 * 2.56 + 0.3 * 0.16 + 0.2 * 11.56, 13);
    expect(found.third).toBeCloseTo(0.5 * -4.096 + 0.3 * 0.064 + 0.2 * 39.304, 13);
    expect(found.fourth).toBeCloseTo(0.5 * 6.5536 + 0.3 * 0.0256 + 0.2 * 133.6336, 12);
  });

  test("Student's distribution has as many moments as its degrees of freedom allow", () => {
    const of = (degreesOfFreedom: number) => Object.values(moments({ shape: 't', u: 1, degreesOfFreedom }, 0));
    expect(of(1)).toEqual([null, null, null, null]);
    expect(of(2)).toEqual([0, null, null, null]);
    expect(of(3)).toEqual([0, 3, null, null]);
    expect(of(4)).toEqual([0, 2, 0, null]);
    expect(of(6)).toEqual([0, 1.5, 0, 13.5]);
  });
});

test('a sorted bin is wider than the whole tolerance in u, never in its ends', () => {
  const whole: Spread = { shape: 'rectangular', low: 90, high: 110 };
  const sorted: Spread = { shape: 'sorted', low: 90, high: 110, holeLow: 95, holeHigh: 105 };
  // (10³ − 5³)/(3·(10 − 5)): E(x²) over the two outer pieces.
  expect(standardUncertainty(sorted, 100)).toBeCloseTo(Math.sqrt((10 ** 3 - 5 ** 3) / 15), 12);
  expect(standardUncertainty(sorted, 100)).toBeGreaterThan(standardUncertainty(whole, 100));
  expect(endsOf(sorted)).toEqual(endsOf(whole));
});

test('shapes run into each other at their limits', () => {
  const u = (spread: Spread) => standardUncertainty(spread, 6);
  const rectangle = u({ shape: 'rectangular', low: 3, high: 9 });
  expect(u({ shape: 'trapezoidal', low: 3, high: 9, flat: 3 })).toBeCloseTo(rectangle, 13);
  expect(u({ shape: 'trapezoidal', low: 3, high: 9, flat: 0 })).toBeCloseTo(
    u({ shape: 'triangular', low: 3, high: 9 }),
    13,
  );
  expect(u({ shape: 'curvilinear', low: 3, high: 9, by: 0 })).toBeCloseTo(rectangle, 13);
  expect(u({ shape: 'choice', values: [3, 9], probabilities: [0.5, 0.5] })).toBeCloseTo(3, 13);
});
