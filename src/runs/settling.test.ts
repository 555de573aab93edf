import { describe, expect, test } from 'vitest';
import { noise } from '../metrology/noise.test-data.ts';
import { settlingOf } from './settling.ts';

const rule = { averaged: 10, allowed: 0.25, resolution: null, say: (amount: number) => `${amount.toPrecision(2)} K` };

/** Readings at 10 Hz of a temperature that goes from 40 to 40 + rise with a time constant. */
function heating(seconds: number, rise: number, constant: number, sd = 0, step = 0) {
  const draw = noise(31);
  const time = Float64Array.from({ length: 10 * seconds }, (_, i) => i / 10);
  const values = time.map((t) => {
    const value = 40 + rise * (1 - Math.exp(-t / constant)) + sd * draw();
    return step > 0 ? step * Math.round(value / step) : value;
  });
  return [time, values] as const;
}

describe('an exponential approach', () => {
  // Closed form: rise·exp(−t/τ) is still to come at t = length − 5 s, the middle of the last ten seconds.
  test.each([
    [60, 30, 12],
    [120, 30, 25],
    [150, 8, 30],
  ])('of %d s, %d K, time constant %d s: what is still to come', (seconds, rise, constant) => {
    const { remaining, timeConstant, settled } = settlingOf(...heating(seconds, rise, constant), rule);
    const due = rise * Math.exp(-(seconds - 5) / constant);
    expect(remaining! / due).toBeCloseTo(1, 1);
    expect(timeConstant! / constant).toBeCloseTo(1, 1);
    expect(settled).toBe(due < 0.25);
  });

  test('in whole degrees with noise of half a degree is known to half a degree', () => {
    const { remaining } = settlingOf(...heating(60, 30, 15, 0.5, 1), { ...rule, resolution: 1 });
    expect(Math.abs(remaining! - 30 * Math.exp(-55 / 15))).toBeLessThan(0.5);
  });

  test('in whole degrees without noise: a last lone step says nothing, the steps before it do', () => {
    const { remaining, settled } = settlingOf(...heating(130, -31, 23.6, 0, 1), { ...rule, resolution: 1 });
    expect(Math.abs(remaining! + 31 * Math.exp(-125 / 23.6))).toBeLessThan(0.25);
    expect(settled).toBe(true);
  });

  test('much slower than the window has not settled, and it is said how much it moves', () => {
    const { settled, remaining, why } = settlingOf(...heating(60, 30, 300), rule);
    expect(settled).toBe(false);
    // Closed form of the movement over the last quarter of the record.
    const moved = 30 * (Math.exp(-45 / 300) - Math.exp(-60 / 300));
    expect(remaining! / moved).toBeGreaterThan(0.9);
    expect(why).toMatch(/^still moving: .* K in the last \d+ s; drift .* K a minute$/);
  });
});

test('a fast part doesn’t hide a slow one', () => {
  const [time, fast] = heating(60, 30, 3);
  const [, slow] = heating(60, 6, 60);
  const both = fast.map((value, i) => value + slow[i]);
  expect(settlingOf(time, both, rule).settled).toBe(false);
});

test('noise alone has settled, a drift in it has not', () => {
  const [time, still] = heating(60, 0, 1, 0.3);
  expect(settlingOf(time, still, rule).settled).toBe(true);
  const drifting = still.map((value, i) => value + time[i] / 30);
  const { settled, drift, uDrift } = settlingOf(time, drifting, rule);
  expect(settled).toBe(false);
  expect(Math.abs(drift! - 1 / 30)).toBeLessThan(3 * uDrift!);
});

test('readings that never change have settled', () => {
  const [time, values] = heating(60, 0, 1);
  // A whole-degree sensor leaves 1 K/√12 uncertain in any mean; no less is asked of its level.
  const coarse = { ...rule, allowed: 0.289, resolution: 1 };
  expect(settlingOf(time, values, coarse)).toMatchObject({ settled: true, remaining: 0, drift: 0 });
});

test('readings too coarse or too loud for what is asked show nothing', () => {
  const loud = settlingOf(...heating(60, 0, 1, 8), rule);
  expect(loud).toMatchObject({ settled: false, why: expect.stringMatching(/^too short or too noisy to tell; drift/) });
  // By hand: two roundings of 1 K at the ends of 10 s hide 1/√6 K in 10 s, more than the 0.25 K that is allowed.
  expect(settlingOf(...heating(20, 0, 1), { ...rule, resolution: 1 }).settled).toBe(false);
});

test('a window of a few seconds says nothing', () => {
  expect(settlingOf(...heating(10, 0, 1), rule)).toMatchObject({ settled: false, remaining: null });
  expect(settlingOf(new Float64Array(), new Float64Array(), rule).settled).toBe(false);
});

describe('noise that is like its neighbours, standard deviation 0.3 K, seed 9', () => {
  /** Of forty windows of 60 s at 10 Hz: how many are said to have settled, to move, or not to be known. Correlation φ from reading to reading. */
  function verdicts(phi: number, signal: (t: number) => number, seconds = 60) {
    const draw = noise(9);
    const counts = { settled: 0, moving: 0, open: 0 };
    for (let k = 0; k < 40; k++) {
      let error = draw();
      const time = Float64Array.from({ length: 10 * seconds }, (_, i) => i / 10);
      const values = time.map((t) => {
        error = phi * error + Math.sqrt(1 - phi * phi) * draw();
        return 40 + signal(t) + 0.3 * error;
      });
      const { settled, why } = settlingOf(time, values, rule);
      counts[settled ? 'settled' : why.startsWith('too short or too noisy') ? 'open' : 'moving']++;
    }
    return counts;
  }

  test('at its level: seldom said to move; where a minute is too short, that is said', () => {
    expect(verdicts(0.9, () => 0).moving).toBeLessThanOrEqual(4);
    expect(verdicts(0.9, () => 0, 120).settled).toBeGreaterThan(32);
    expect(verdicts(0.98, () => 0).moving).toBeLessThanOrEqual(5);
  });

  test('a drift of 1 K a minute hardly ever passes, correlation time five seconds', () => {
    expect(verdicts(0.98, (t) => t / 60).settled).toBeLessThanOrEqual(6);
  });

  test('a kelvin still to come, time constant as long as the window, hardly ever passes', () => {
    expect(verdicts(0.9, (t) => -Math.exp((55 - t) / 60)).settled).toBeLessThanOrEqual(3);
  });
});

test('a jump in the last seconds is seen by the R-test', () => {
  const [time, level] = heating(120, 0, 1, 0.05);
  const jumped = level.map((value, i) => value + (time[i] > 114 ? 0.6 : 0));
  const { settled, why } = settlingOf(time, jumped, rule);
  expect(settled).toBe(false);
  expect(why).toMatch(/^changed by 0\.\d+ K at the end/);
});
