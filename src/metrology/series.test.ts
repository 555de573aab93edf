import { describe, expect, test } from 'vitest';
import { autocorrelation, autocorrelationTime } from './autocorrelation.ts';
import { noise } from './noise.test-data.ts';
import { resolutionOf } from './resolution.ts';
import { meanOfSeries, trend } from './series.ts';

/** First-order autoregressive series with unit innovations, started in its stationary state. */
function autoregressive(phi: number, n: number, seed: number): Float64Array {
  const draw = noise(seed);
  let value = draw() / Math.sqrt(1 - phi * phi);
  return Float64Array.from({ length: n }, () => {
    const now = value;
    value = phi * value + draw();
    return now;
  });
}

describe('independent readings in a correlated series', () => {
  // Closed form for a first-order autoregressive series: nₑ/n = (1 − φ)/(1 + φ). Estimation error of τ: relative √(2(2M+1)/n) with
  // window M = 2.5 τ (Sokal 1989, section 3); the tolerance is three of it.
  test.each([
    [0, 20_000, 11],
    [0.5, 20_000, 12],
    [0.9, 40_000, 13],
    [0.98, 200_000, 14],
  ])('phi %d, %d readings, seed %d', (phi, n, seed) => {
    const tau = (1 + phi) / (1 - phi);
    const { nEffective } = meanOfSeries(autoregressive(phi, n, seed), null);
    expect(Math.abs((nEffective / n) * tau - 1)).toBeLessThan(3 * Math.sqrt((2 * (5 * tau + 1)) / n));
  });

  test('readings that swing against each other are not counted as more than they are', () => {
    expect(autocorrelationTime(autoregressive(-0.6, 5000, 15))).toBe(1);
  });

  test('the stated uncertainty is the scatter of the mean over many records', () => {
    const [phi, n, records] = [0.8, 1000, 400];
    const means = Array.from({ length: records }, (_, k) => meanOfSeries(autoregressive(phi, n, 100 + k), null));
    const scatter = Math.sqrt(means.reduce((sum, each) => sum + each.mean ** 2, 0) / records);
    const stated = means.reduce((sum, each) => sum + each.uMean!, 0) / records;
    // Closed form: 1/((1 − φ)·√n) for unit innovations; the scatter of 400 records is known to 1/√800 = 3.5 %.
    expect(stated * (1 - phi) * Math.sqrt(n)).toBeCloseTo(1, 1);
    expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.11);
  });
});

test('a short record of readings like their neighbours isn’t surer than it is: φ = 0.9, 100 readings', () => {
  const [phi, records] = [0.9, 600];
  const means = Array.from({ length: records }, (_, k) => meanOfSeries(autoregressive(phi, 100, 5000 + k), null));
  const scatter = Math.sqrt(means.reduce((sum, each) => sum + each.mean ** 2, 0) / records);
  const stated = Math.sqrt(means.reduce((sum, each) => sum + each.uMean! ** 2, 0) / records);
  // Closed form of the scatter: √(τ/n)/√(1 − φ²), τ = 19 − 2·0.9·(1 − 0.9¹⁰⁰)/(100·0.01). Without a correction for shortness 0.73 of it is stated.
  expect(scatter / (Math.sqrt((19 - 1.8) / 100) / Math.sqrt(1 - phi * phi))).toBeCloseTo(1, 0.8);
  expect(stated / scatter).toBeGreaterThan(0.95);
  expect(stated / scatter).toBeLessThan(1.5);
  expect(means.filter(({ mean, uMean }) => Math.abs(mean) < 2 * uMean!).length / records).toBeGreaterThan(0.84);
});

describe('readings on a grid', () => {
  test('a whole-degree sensor repeated a thousand times is never surer than its step over √12', () => {
    const draw = noise(21);
    const readings = Array.from({ length: 1000 }, () => Math.round(71.3 + 0.8 * draw()));
    expect(resolutionOf(readings)).toBe(1);
    expect(meanOfSeries(readings).uMean).toBeGreaterThan(1 / Math.sqrt(12));
  });

  test('a tenth step is seen through the rounding of decimal numbers', () => {
    const draw = noise(22);
    const readings = Array.from({ length: 1000 }, () => 273.15 + Math.round(10 * (0.3 * draw() + 45)) / 10);
    expect(resolutionOf(readings)).toBeCloseTo(0.1, 6);
  });

  test('smooth readings have no step', () => {
    expect(resolutionOf(autoregressive(0.5, 500, 23))).toBeNull();
  });

  test('a constant series with known resolution has the uncertainty of one rounding (GUM F.2.2.1: q/√12)', () => {
    const { mean, sd, uMean } = meanOfSeries(new Float64Array(60).fill(45), 1);
    expect([mean, sd]).toEqual([45, 0]);
    expect(uMean).toBeCloseTo(0.288675, 6);
  });

  test('a constant series with unknown resolution has no known uncertainty', () => {
    expect(meanOfSeries(new Float64Array(60).fill(45)).uMean).toBeNull();
    expect(meanOfSeries([45]).uMean).toBeNull();
  });

  test('a series that repeats every reading k times is worth its length over k', () => {
    const fresh = autoregressive(0, 2000, 24);
    const held = Float64Array.from({ length: 20_000 }, (_, i) => fresh[Math.floor(i / 10)]);
    expect(Math.abs(meanOfSeries(held, null).nEffective / 2000 - 1)).toBeLessThan(0.2);
  });
});

test('the mean of nearly equal large numbers keeps their last digits', () => {
  // NIST StRD NumAcc4: mean 10000000.2, standard deviation 0.1, lag-1 autocorrelation −0.999 (certified).
  const values = [10000000.2, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? 10000000.1 : 10000000.3))];
  const { mean, sd } = meanOfSeries(values, null);
  expect(Math.abs(mean / 10000000.2 - 1)).toBeLessThan(1e-14);
  expect(Math.abs(sd / 0.1 - 1)).toBeLessThan(1e-8);
  expect(autocorrelation(values, 1)).toBeCloseTo(-0.999, 9);
});

describe('trend', () => {
  test('slope of JCGM 100:2008 H.3', () => {
    // GUM H.3: slope 0.00218, standard uncertainty 0.00067 for independent residuals.
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const { slope, uSlope, nEffective } = trend(b, t, null)!;
    expect(slope).toBeCloseTo(0.00218, 5);
    expect(uSlope! * Math.sqrt((nEffective - 2) / 9)).toBeCloseTo(0.00067, 5);
  });

  test('the stated uncertainty is the scatter of the slope over many correlated records', () => {
    const [phi, n, records] = [0.7, 600, 300];
    const times = Array.from({ length: n }, (_, i) => i);
    const slopes = Array.from({ length: records }, (_, k) => trend(autoregressive(phi, n, 1000 + k), times, null)!);
    const scatter = Math.sqrt(slopes.reduce((sum, each) => sum + each.slope ** 2, 0) / records);
    const stated = slopes.reduce((sum, each) => sum + each.uSlope!, 0) / records;
    expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.15);
  });

  test('readings that never move hide a slope of up to their resolution', () => {
    const still = new Float64Array(61).fill(45);
    const times = Array.from({ length: 61 }, (_, i) => i);
    expect(trend(still, times)!.uSlope).toBeNull();
    expect(trend(still, times, 1)!.uSlope).toBeCloseTo(1 / Math.sqrt(6) / 60, 9);
  });

  test('no slope from two readings or from one moment', () => {
    expect(trend([1, 2], [0, 1])).toBeNull();
    expect(trend([1, 2, 3], [5, 5, 5])).toBeNull();
  });
});
