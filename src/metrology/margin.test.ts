import { describe, expect, test } from 'vitest';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import { margins, numericalTolerance } from './margin.ts';
import type { Ending, Model } from './model.ts';
import { monteCarlo } from './monte-carlo.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_103;

function marginOf(model: Model, samples = 20_000) {
  const run = samples > 0 ? monteCarlo(model, { samples, seed: SEED }) : undefined;
  return margins(model, sensitivities(model), run)![0];
}

const linear = exampleModel({
  inputs: { load: [90, normal(3)], rating: [100, rectangle(100, 4)] },
  outputs: { load: ([load]) => load, limit: ([, rating]) => rating, margin: ([load, rating]) => rating - load },
  margins: { margin: 'load' },
});

describe('a linear margin', () => {
  test('first order alone', () => {
    const margin = marginOf(linear, 0);
    expect(margin).toMatchObject({
      id: 'margin',
      value: 90,
      limit: 100,
      margin: 10,
      method: 'first-order',
      disagree: null,
    });
    expect(margin.u).toBeCloseTo(5, 9);
    // Φ(−2) = 1 − 0.977249868051821 (Abramowitz & Stegun, table 26.1).
    expect(margin.exceed).toBeCloseTo(1 - 0.977249868051821, 9);
    expect(margin.exceedBounds).toBeNull();
  });

  test(`agrees with its Monte Carlo run (seed ${SEED})`, () => {
    expect(marginOf(linear)).toMatchObject({ method: 'first-order', disagree: false });
  });

  test('few draws are no reason to disagree', () => {
    expect(marginOf(linear, 500).disagree).toBe(false);
  });
});

test('a kinked margin: the methods disagree, and the run is used', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { value: ([a]) => Math.abs(a), limit: () => 2, margin: ([a]) => 2 - Math.abs(a) },
    margins: { margin: 'value' },
  });
  const margin = marginOf(model);
  expect(margin).toMatchObject({ method: 'monte-carlo', disagree: true, bent: ['a'], margin: 2 });
  // P(|a| > 2) = 0.0455 (Abramowitz & Stegun, table 26.1: 2·(1 − 0.977249868)).
  expect(margin.exceed).toBeCloseTo(0.0455, 3);
  expect(margin.exceedBounds!.low).toBeLessThan(0.0455);
  expect(margin.exceedBounds!.high).toBeGreaterThan(0.0455);
});

describe('the method that is used, and why', () => {
  // y = a + 0.6·p·q, all normal with u = 8, 1 and 8: first order u = 8, second order u = √(64 + 0.36·64) = 9.33.
  const held = (bend: number, limit = 100) =>
    exampleModel({
      inputs: { a: [0, normal(8)], p: [0, normal(1)], q: [0, normal(8)] },
      outputs: {
        value: ([a, p, q]) => a + bend * p * q,
        limit: () => limit,
        margin: ([a, p, q]) => limit - a - bend * p * q,
      },
      margins: { margin: 'value' },
    });

  test('first order alone, when there are no draws', () => {
    expect(marginOf(held(0.6), 0)).toMatchObject({ method: 'first-order', why: 'alone', u: expect.closeTo(8, 6) });
  });

  test('first order, where the draws give the same interval', () => {
    expect(marginOf(held(0.1))).toMatchObject({ method: 'first-order', why: 'confirmed', disagree: false });
  });

  test('second order, where the draws give its interval and not that of first order', () => {
    const margin = marginOf(held(0.6, 10));
    const u = 8 * Math.sqrt(1.36);
    expect(margin).toMatchObject({ method: 'second-order', why: 'confirmed', disagree: true });
    expect(margin.u).toBeCloseTo(u, 6);
    expect(margin.interval.low).toBeCloseTo(10 - 1.959963984540054 * u, 5);
    // ∫Φ(−10/(8·√(1 + 0.36·p²)))·φ(p)dp = 0.136177 by the rectangle rule; a normal distribution of this u has 0.141890, outside what is counted.
    expect(margin.exceedBounds!.low).toBeLessThan(0.136177);
    expect(margin.exceedBounds!.high).toBeGreaterThan(0.136177);
    expect(margin.exceed).toBeCloseTo(0.136177, 2);
  });

  test('Monte Carlo, where the margin is straight but one wide rectangle decides', () => {
    // JCGM 101:2008, 9.2.4: ±17.0 in truth, ±19.9 by first order.
    const wide = exampleModel({
      inputs: { a: [0, normal(1)], b: [0, rectangle(0, 9)] },
      outputs: { value: ([a, b]) => a + b, limit: () => 100, margin: ([a, b]) => 100 - a - b },
      margins: { margin: 'value' },
    });
    expect(marginOf(wide)).toMatchObject({ method: 'monte-carlo', why: 'shape', disagree: true });
  });

  test('Monte Carlo, where the draws give neither', () => {
    const square = exampleModel({
      inputs: { a: [0, normal(3)] },
      outputs: { value: ([a]) => a * a, limit: () => 100, margin: ([a]) => 100 - a * a },
      margins: { margin: 'value' },
    });
    const margin = marginOf(square);
    expect(margin).toMatchObject({ method: 'monte-carlo', why: 'bends', disagree: true });
    // The shortest interval of 100 − 9χ²(1) ends at 100; χ²₀.₉₅(1) = 3.841459.
    expect(margin.shortest.high).toBeCloseTo(100, 3);
    expect(Math.abs(margin.shortest.low - (100 - 9 * 3.841459))).toBeLessThan(0.5);
  });
});

describe('an uncertainty from few readings', () => {
  const few = (degreesOfFreedom: number, others = 0) =>
    exampleModel({
      inputs: { a: [90, { shape: 't', u: 3, degreesOfFreedom }], b: [0, normal(others)] },
      outputs: { value: ([a, b]) => a + b, limit: () => 100, margin: ([a, b]) => 100 - a - b },
      margins: { margin: 'value' },
    });

  test('widens the interval by Student’s factor: t₀.₉₇₅(4) = 2.776', () => {
    // JCGM 100:2008, table G.2: 2.78.
    const margin = marginOf(few(4), 0);
    expect(margin.degreesOfFreedom).toBeCloseTo(4, 9);
    expect(margin.u).toBeCloseTo(3, 9);
    expect((10 - margin.interval.low) / 3).toBeCloseTo(2.776, 3);
  });

  test(`is confirmed by draws from Student's distribution (seed ${SEED})`, () => {
    expect(marginOf(few(4))).toMatchObject({ method: 'first-order', why: 'confirmed' });
  });

  test('matters less beside what is known well: ν = u⁴/(u₁⁴/ν₁)', () => {
    expect(marginOf(few(4, 4), 0).degreesOfFreedom).toBeCloseTo((625 / 81) * 4, 9);
  });

  test('is none of a sum where nothing has few', () => {
    expect(marginOf(linear, 0).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
  });
});

test('a run with draws that have no solution is used even where first order looks fine', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { value: ([a]) => a, limit: () => 100, margin: ([a]) => 100 - a },
    margins: { margin: 'value' },
    ending: ([a]) => (a > 2 ? 'runaway' : 'solved'),
  });
  const margin = marginOf(model);
  expect(margin).toMatchObject({ method: 'monte-carlo', why: 'lost-draws', disagree: true });
  // 1 − Φ(2).
  expect(margin.exceed).toBeCloseTo(0.02275, 3);
});

test('no solution on either side of the best values: nothing is known, so the limit counts as exceeded', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { value: ([a]) => a, limit: () => 100, margin: ([a]) => 100 - a },
    margins: { margin: 'value' },
    ending: ([a]) => (a === 0 ? 'solved' : 'unsettled'),
  });
  expect(marginOf(model, 0)).toMatchObject({ exceed: 1, interval: { low: Number.NEGATIVE_INFINITY } });
});

test('no solution at the best values: no margin is known', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { value: () => 0, limit: () => 1, margin: () => 1 },
    margins: { margin: 'value' },
    ending: () => 'runaway',
  });
  expect(margins(model, sensitivities(model))).toBeNull();
});

test('an exact margin is exceeded or not', () => {
  const exact = (limit: number) =>
    exampleModel({
      inputs: { a: [5, null] },
      outputs: { value: ([a]) => a, limit: () => limit, margin: ([a]) => limit - a },
      margins: { margin: 'value' },
    });
  expect(marginOf(exact(6), 0).exceed).toBe(0);
  expect(marginOf(exact(4), 0).exceed).toBe(1);
});

// JCGM 101:2008, 7.9.2 note: u = 0.00035 written with two digits gives δ = 0.5·10⁻⁵; with one digit 0.0004 and δ = 0.5·10⁻⁴. Others from the rule.
test.each([
  [0.00035, 0.5e-4],
  [2, 0.5],
  [0.097, 0.05],
  [35, 5],
])('numerical tolerance of u = %d', (u, tolerance) => {
  expect(numericalTolerance(u) / tolerance).toBeCloseTo(1, 12);
});

describe('margins at their edges', () => {
  const held = (margin: number, u: number | null, ending?: (x: Float64Array) => Ending) =>
    exampleModel({
      inputs: { value: [100 - margin, u === null ? null : normal(u)] },
      outputs: { value: ([value]) => value, limit: () => 100, margin: ([value]) => 100 - value },
      margins: { margin: 'value' },
      ending,
    });

  test('exactly on the limit: half the cases exceed it, and none where nothing is uncertain', () => {
    expect(marginOf(held(0, 1), 0)).toMatchObject({ margin: 0, exceed: 0.5 });
    expect(marginOf(held(0, null), 0)).toMatchObject({ margin: 0, u: 0, exceed: 0, interval: { low: 0, high: 0 } });
    expect(marginOf(held(-1e-9, null), 0).exceed).toBe(1);
    expect(marginOf(held(0, 1)).exceed).toBeCloseTo(0.5, 2);
  });

  test('no solution anywhere but at the best values: nothing is known, and unknown is not safe', () => {
    const alone = held(50, 1, ([value]) => (value === 50 ? 'solved' : 'runaway'));
    for (const samples of [0, 100])
      expect(marginOf(alone, samples)).toMatchObject({
        u: Number.POSITIVE_INFINITY,
        exceed: 1,
        interval: { low: Number.NEGATIVE_INFINITY },
      });
  });
});
