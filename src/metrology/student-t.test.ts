import { describe, expect, test } from 'vitest';
import { incompleteBeta, logGamma } from './incomplete-beta.ts';
import { normalQuantile } from './normal-quantile.ts';
import { studentAbove, studentQuantile } from './student-t.ts';

describe('Student’s distribution', () => {
  // Closed forms: ν = 1 is Cauchy's, P = ½ − atan(t)/π; ν = 2: P = ½ − t/(2√(2 + t²)).
  test.each([-30, -1, -0.01, 0, 0.3, 1, 2.5, 12.7])(
    'above %d: closed forms for one and two degrees of freedom',
    (t) => {
      expect(studentAbove(t, 1)).toBeCloseTo(0.5 - Math.atan(t) / Math.PI, 14);
      expect(studentAbove(t, 2)).toBeCloseTo(0.5 - t / (2 * Math.sqrt(2 + t * t)), 14);
    },
  );

  test('far out its tail keeps its digits: ν = 2, t = 1e5', () => {
    // Closed form, expanded: P = 1/(2t²) · (1 − 3/(2t²)) to 1e-19.
    expect(studentAbove(1e5, 2) * 2e10).toBeCloseTo(1, 9);
  });

  test.each([0.7, 1, 3.3, 17.78, 400, 1e6])('quantile and probability undo each other, %d degrees of freedom', (nu) => {
    for (const tail of [1e-9, 0.001, 0.025, 0.2, 0.4999, 0.6, 0.99])
      expect(Math.abs(studentAbove(studentQuantile(1 - tail, nu), nu) / tail - 1)).toBeLessThan(1e-6);
  });

  test('of very many degrees of freedom it is the normal distribution', () => {
    expect(studentQuantile(0.975, 1e9)).toBe(normalQuantile(0.975));
    expect(studentQuantile(0.975, 1e7)).toBeCloseTo(normalQuantile(0.975), 6);
  });
});

test('the incomplete beta function of whole numbers is a binomial sum', () => {
  // I_x(3, 2) = 4x³ − 3x⁴; I_x(1, b) = 1 − (1 − x)ᵇ.
  for (const x of [0.001, 0.2, 0.5, 0.7, 0.999]) {
    expect(incompleteBeta(x, 3, 2)).toBeCloseTo(4 * x ** 3 - 3 * x ** 4, 14);
    expect(incompleteBeta(x, 1, 7.5)).toBeCloseTo(1 - (1 - x) ** 7.5, 14);
  }
  expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
});

test('the gamma function: factorials, and √π at a half', () => {
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
  expect(logGamma(1)).toBeCloseTo(0, 14);
  expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 13);
  expect(logGamma(13)).toBeCloseTo(Math.log(479001600), 13);
});
