import { expect, test } from 'vitest';
import { load, supply } from '../board/sketch.test-data.ts';
import { solveSketch } from '../board/solve-sketch.test-data.ts';
import type { Margin as BareMargin } from '../metrology/margin.ts';
import { writeMargin } from './margin-figures.ts';

const { board } = solveSketch({
  parts: [supply('adapter', 20), load('rest', 'adapter', 10)],
  limits: '{mine: {of: parts.adapter.voltage, under: 21 V, reason: a test}}',
});
const counted = (changed: Partial<BareMargin>) =>
  writeMargin(
    board,
    {
      id: 'limits.mine.margin',
      hold: board.outputs[board.limits[0].marginOutput].hold!,
      value: 20,
      limit: 21,
      margin: 1,
      u: 0.2,
      interval: { low: 0.6, high: 1.4 },
      exceed: 0.02,
      exceedBounds: { low: 0.01, high: 0.03 },
      method: 'monte-carlo',
      disagree: true,
      bent: [],
      ...changed,
    },
    () => null,
  ).exceed;

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
      exceed: 1,
      exceedBounds: { low: 0.99, high: 1 },
      method: 'monte-carlo',
      disagree: null,
      bent: [],
    },
    () => null,
  );
  expect(lost.interval.low.text).toBe('no end: some draws have no solution');
  expect(lost).toMatchObject({ state: 'close', disagree: false });
});
