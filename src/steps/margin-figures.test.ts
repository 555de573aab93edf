import { expect, test } from 'vitest';
import { load, supply } from '../board/sketch.test-data.ts';
import { solveSketch } from '../board/solve-sketch.test-data.ts';
import type { Margin as BareMargin } from '../metrology/margin.ts';
import type { TailProbability } from '../metrology/tail.ts';
import { writeMargin } from './margin-figures.ts';

const { board } = solveSketch({
  parts: [supply('adapter', 20), load('rest', 'adapter', 10)],
  limits: '{mine: {of: parts.adapter.voltage, under: 21 V, reason: a test}}',
});
const bare: BareMargin = {
  id: 'limits.mine.margin',
  hold: board.outputs[board.limits[0].marginOutput].hold!,
  value: 20,
  limit: 21,
  margin: 1,
  u: 0.2,
  interval: { low: 0.6, high: 1.4 },
  shortest: { low: 0.7, high: 1.4 },
  exceed: 0.02,
  exceedBounds: { low: 0.01, high: 0.03 },
  method: 'monte-carlo',
  why: 'bends',
  disagree: true,
  degreesOfFreedom: Number.POSITIVE_INFINITY,
  bent: [],
};
const counted = (changed: Partial<BareMargin>) => writeMargin(board, { ...bare, ...changed }, () => null).exceed;

test('a counted probability comes with half the width of its bounds', () => {
  expect(counted({})).toEqual({ value: 0.02, error: expect.closeTo(0.01, 12), text: '2.0 %' });
});

test('none counted is what a normal distribution leaves, at most the upper bound of the count', () => {
  const none = { exceed: 0, exceedBounds: { low: 0, high: 2e-4 } };
  // Φ(−5) = 2.86652e-7 (Abramowitz & Stegun, table 26.2: −log₁₀ = 6.54265).
  expect(counted(none).value / 2.86652e-7).toBeCloseTo(1, 4);
  expect(counted({ ...none, u: 0.5 }).value).toBe(2e-4);
  expect(counted(none).text).toBe('< 0.020 %');
});

test('one that is all but sure is never written as 0 or 100 %', () => {
  expect(counted({ exceed: 1e-9, exceedBounds: null }).text).toBe('< 0.0001 %');
  expect(counted({ exceed: 1, exceedBounds: null }).text).toBe('> 99.9999 %');
});

test('draws without a solution leave the interval without an end, in words', () => {
  const lost = writeMargin(
    board,
    {
      id: 'limits.mine.margin',
      hold: board.outputs[board.limits[0].marginOutput].hold!,
      value: 20,
      limit: 21,
      margin: 1,
      u: Number.POSITIVE_INFINITY,
      interval: { low: Number.NEGATIVE_INFINITY, high: Number.NEGATIVE_INFINITY },
      shortest: { low: Number.NEGATIVE_INFINITY, high: Number.NEGATIVE_INFINITY },
      exceed: 1,
      exceedBounds: { low: 0.99, high: 1 },
      method: 'monte-carlo',
      why: 'no-slopes',
      disagree: null,
      degreesOfFreedom: Number.NaN,
      bent: [],
    },
    () => null,
  );
  expect(lost.interval.low.text).toBe('no end: some draws have no solution');
  expect(lost).toMatchObject({ state: 'close', disagree: false });
});

test('the method is told in words, and degrees of freedom where they are few', () => {
  const written = (changed: Partial<BareMargin>) => writeMargin(board, { ...bare, ...changed }, () => null);
  expect(written({}).why).toBe('Monte Carlo; first order gives another interval, because the board bends here');
  expect(written({ method: 'second-order', why: 'confirmed' }).why).toMatch(/^second order, as the draws confirm/);
  expect(written({ method: 'first-order', why: 'confirmed' }).why).toBe('first order, as the draws confirm');
  expect(written({ degreesOfFreedom: 7.5 }).degreesOfFreedom).toBe(7.5);
  expect(written({}).degreesOfFreedom).toBeNull();
  expect(written({ degreesOfFreedom: Number.NaN }).degreesOfFreedom).toBeNull();
  expect(written({}).shortest.low.text).toBe('0.70 V');
});

test('a rare one is written with its own error, one that is too far away as less than the least', () => {
  const tail = { probability: 1.32e-5, u: 1.9e-6, low: 9e-6, high: 1.7e-5, distances: [4.2], evaluations: 900 };
  const rare = (changed: Partial<TailProbability>) =>
    writeMargin(board, { ...bare, exceed: 0, exceedBounds: { low: 0, high: 2e-4 } }, () => null, {
      ...tail,
      method: 'importance-sampling',
      ending: 'settled',
      ...changed,
    }).exceed;
  expect(rare({})).toEqual({ value: 1.32e-5, error: expect.closeTo(4e-6, 12), text: '1.3e-5 ± 0.2e-5' });
  expect(rare({ u: 1e-8 }).text).toBe('1.32e-5 ± 0.01e-5');
  expect(rare({ probability: 9.97e-6, u: 4e-7 }).text).toBe('1.00e-5 ± 0.04e-5');
  expect(rare({ ending: 'disputed' }).text).toBe('< 2e-5');
  expect(rare({ ending: 'out-of-reach', probability: 0 })).toMatchObject({ text: '< 1e-9' });
  expect(rare({ ending: 'out-of-reach', probability: 0 }).value).toBeGreaterThan(0);
});
