import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { counted, Sample } from './sample.ts';

const oneToHundred = Float64Array.from({ length: 100 }, (_, i) => i + 1);

test('mean and standard deviation of 1…100', () => {
  const sample = new Sample(oneToHundred, false);
  // Closed forms: (n + 1)/2 and √(n(n + 1)/12).
  expect(sample.mean).toBeCloseTo(50.5, 12);
  expect(sample.u).toBeCloseTo(Math.sqrt((100 * 101) / 12), 12);
});

test('the coverage interval is the pair of sorted draws that JCGM 101:2008 7.7 names', () => {
  // M = 100, p = 0.95: q = 95, (M − q)/2 = 2.5 is no integer, so r = 3 and the interval is [y(3), y(98)].
  expect(new Sample(oneToHundred.slice().reverse(), false).interval(0.95)).toEqual({ low: 3, high: 98 });
  // p = 0.9: q = 90, r = 5: [y(5), y(95)].
  expect(new Sample(oneToHundred, false).interval(0.9)).toEqual({ low: 5, high: 95 });
});

test('the shortest interval is the nearest pair of those with the share between them', () => {
  // 90 values of ever larger distance, as squares: the shortest that spans q = 86 of them begins at the first.
  const squares = Float64Array.from({ length: 90 }, (_, i) => i ** 2);
  expect(new Sample(squares, false).shortestInterval(0.95)).toEqual({ low: 0, high: 86 ** 2 });
  expect(
    new Sample(
      squares.map((each) => -each),
      false,
    ).shortestInterval(0.95),
  ).toEqual({ low: -(86 ** 2), high: -0 });
  // Evenly spaced all pairs tie, and the middle one is taken: of 100, q = 90, the first, second … tenth pair.
  expect(new Sample(oneToHundred, false).shortestInterval(0.9)).toEqual({ low: 5, high: 95 });
  expect(new Sample(Float64Array.of(7), false).shortestInterval()).toEqual({ low: 7, high: 7 });
});

test('more coverage never makes an interval narrower, and none of the same coverage is narrower than the shortest (seed 20261128)', () => {
  const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 300 });
  const coverage = fc.integer({ min: 1, max: 99 }).map((hundredths) => hundredths / 100);
  const width = ({ low, high }: { low: number; high: number }) => high - low;
  fc.assert(
    fc.property(values, coverage, coverage, (drawn, a, b) => {
      const sample = new Sample(Float64Array.from(drawn), false);
      const [less, more] = [Math.min(a, b), Math.max(a, b)];
      expect(sample.interval(more).low).toBeLessThanOrEqual(sample.interval(less).low);
      expect(sample.interval(more).high).toBeGreaterThanOrEqual(sample.interval(less).high);
      expect(width(sample.shortestInterval(more))).toBeGreaterThanOrEqual(width(sample.shortestInterval(less)));
      expect(width(sample.shortestInterval(a))).toBeLessThanOrEqual(width(sample.interval(a)));
    }),
    { seed: 20_261_128, numRuns: 200 },
  );
});

describe('draws without a solution', () => {
  const values = oneToHundred.slice();
  for (let i = 0; i < 10; i++) values[i * 7] = Number.NaN;

  test('are counted, and kept out of the mean', () => {
    const sample = new Sample(values, true);
    expect(sample.lost).toBe(10);
    expect(Number.isFinite(sample.mean)).toBe(true);
  });

  test('are a bad end in every probability', () => {
    const sample = new Sample(values, true);
    expect(sample.below(0).probability).toBe(0.1);
    expect(sample.above(1000).probability).toBe(0.1);
  });

  test('leave a margin without a lower bound', () => {
    expect(new Sample(values, true).interval(0.95).low).toBe(Number.NEGATIVE_INFINITY);
    expect(new Sample(values, true).shortestInterval(0.95).low).toBe(Number.NEGATIVE_INFINITY);
    // Of the 90 others, 2 is the smallest; q = 86 and r = 2.
    expect(new Sample(values, false).interval(0.95).low).toBe(3);
  });
});

test('draws of which none, or one, has a solution say nothing about the spread', () => {
  for (const values of [
    [Number.NaN, Number.NaN],
    [Number.NaN, 3],
  ]) {
    const sample = new Sample(Float64Array.from(values), true);
    expect(sample.u).toBeNaN();
    expect(sample.below(0).probability).toBe(values.filter(Number.isNaN).length / 2);
    expect(sample.interval().low).toBe(Number.NEGATIVE_INFINITY);
  }
  expect(new Sample(Float64Array.of(Number.NaN, Number.NaN), false).interval()).toEqual({
    low: Number.NaN,
    high: Number.NaN,
  });
});

describe('probability from a count', () => {
  test('nothing counted in 20 000 draws still leaves an upper bound', () => {
    // Wilson's interval at 0 of n: z²/(n + z²).
    const z2 = 3.841458820694124;
    expect(counted(0, 20_000)).toEqual({ probability: 0, u: 0, low: 0, high: expect.closeTo(z2 / (20_000 + z2), 15) });
  });

  test('1 of 29 and 81 of 263', () => {
    // R. G. Newcombe, Statistics in Medicine 17 (1998) 857–872, table I, method 3 (score, without continuity correction).
    expect(counted(1, 29).low).toBeCloseTo(0.0061, 4);
    expect(counted(1, 29).high).toBeCloseTo(0.1718, 4);
    expect(counted(81, 263).low).toBeCloseTo(0.2553, 4);
    expect(counted(81, 263).high).toBeCloseTo(0.3662, 4);
  });
});
