import { describe, expect, test } from 'vitest';
import { standardUncertainty } from './spread.ts';

describe('the standard uncertainty of a number', () => {
  // JCGM 100:2008 (GUM), 4.3.7: half width over √3; its example in 4.3.7 is copper's coefficient of expansion, 16.52(40)e-6 1/K with u = 0.23e-6 1/K.
  test('known to lie between two ends', () => {
    const copper = standardUncertainty({ shape: 'rectangular', low: 16.12e-6, high: 16.92e-6 }, 16.52e-6);
    expect(copper).toBeCloseTo(0.4e-6 / Math.sqrt(3), 20);
    expect(Number(copper.toPrecision(2))).toBe(0.23e-6);
  });

  // GUM, 4.3.8: for unequal sides the estimated variance is (a+ − a−)²/12, whatever the best value.
  test('with unequal sides', () => {
    expect(standardUncertainty({ shape: 'rectangular', low: 7, high: 13 }, 8)).toBeCloseTo(6 / Math.sqrt(12), 14);
  });

  test('stated by itself', () => {
    expect(standardUncertainty({ shape: 'normal', u: 2 }, 10)).toBe(2);
  });

  // By the definition of the distribution: y = m·exp(σ·z) with z standard normal, integrated by the trapezoidal rule.
  test.each([0.01, 0.2, 0.5, 1])('log-normal with a sigma of %s, about a median of 45', (sigma) => {
    const step = 1 / 64;
    let [weights, mean, square] = [0, 0, 0];
    for (let z = -12; z <= 12; z += step) {
      const weight = Math.exp((-z * z) / 2);
      const y = 45 * Math.exp(sigma * z);
      weights += weight;
      mean += weight * y;
      square += weight * y * y;
    }
    const variance = square / weights - (mean / weights) ** 2;
    expect(standardUncertainty({ shape: 'log-normal', sigma }, 45) / Math.sqrt(variance)).toBeCloseTo(1, 9);
  });
});
