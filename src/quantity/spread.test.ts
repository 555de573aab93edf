import { describe, expect, test } from 'vitest';
import { meanOf, quantileOf, type Spread, standardUncertainty } from './spread.ts';

const normal: Spread = { shape: 'normal', u: 2 };
const rectangular: Spread = { shape: 'rectangular', low: 7, high: 13 };
const logNormal: Spread = { shape: 'log-normal', sigma: 0.5 };

describe('the standard deviation of a distribution', () => {
  test('rectangular: half width over root three (JCGM 100:2008, 4.3.7)', () => {
    expect(standardUncertainty(rectangular, 10)).toBeCloseTo(3 / Math.sqrt(3), 14);
  });

  test('normal: its u', () => {
    expect(standardUncertainty(normal, 10)).toBe(2);
  });
});

describe('the inverse of the cumulative distribution', () => {
  // Standard normal 97.5 % and 99.5 % points: JCGM 100:2008, table G.2 (last row, infinite degrees of freedom) 1.960 and 2.576.
  test('normal', () => {
    expect(quantileOf(normal, 10, 0.5)).toBe(10);
    expect((quantileOf(normal, 10, 0.975) - 10) / 2).toBeCloseTo(1.96, 3);
    expect((quantileOf(normal, 10, 0.995) - 10) / 2).toBeCloseTo(2.576, 3);
  });

  test('log-normal: median is the value, and the logarithm is normal', () => {
    expect(quantileOf(logNormal, 10, 0.5)).toBeCloseTo(10, 12);
    expect(Math.log(quantileOf(logNormal, 10, 0.975) / 10) / 0.5).toBeCloseTo(1.96, 3);
  });

  test('rectangular: straight from end to end', () => {
    expect(quantileOf(rectangular, 10, 0.25)).toBe(8.5);
  });
});

test.each([normal, rectangular, logNormal])(
  'mean and standard deviation are those of the quantile function: %j',
  (spread) => {
    const points = 200_000;
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < points; i++) {
      const draw = quantileOf(spread, 10, (i + 0.5) / points);
      sum += draw;
      squares += draw * draw;
    }
    const mean = sum / points;
    expect(mean / meanOf(spread, 10)).toBeCloseTo(1, 4);
    expect(Math.sqrt(squares / points - mean * mean) / standardUncertainty(spread, 10)).toBeCloseTo(1, 3);
  },
);
