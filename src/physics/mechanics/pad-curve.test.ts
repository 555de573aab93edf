import { expect, test } from 'vitest';
import { planPadCurve } from './pad-curve.ts';

test('a curve starts at nothing, never falls, and goes on straight', () => {
  const curve = planPadCurve([0.1, 0.3, 0.5], [20e3, 100e3, 500e3])!;
  expect(curve.pressureAt(0)).toBe(0);
  expect(curve.pressureAt(-0.1)).toBe(0);
  expect(curve.slopeAt(-0.1)).toBe(0);
  for (let i = 0; i < 600; i++) {
    expect(curve.pressureAt((i + 1) / 1000)).toBeGreaterThan(curve.pressureAt(i / 1000));
  }
  const step = curve.pressureAt(0.7) - curve.pressureAt(0.6);
  expect(curve.pressureAt(0.8) - curve.pressureAt(0.7)).toBeCloseTo(step, 3);
  expect(10 * step).toBeCloseTo(curve.slopeAt(0.6), -1);
});

test('the slope is that of the pressure', () => {
  const curve = planPadCurve([0.4], [800e3])!;
  for (const strain of [0.05, 0.2, 0.39]) expect(curve.slopeAt(strain) / 2e6).toBeCloseTo(1, 6);
});

test('it covers what was measured', () => {
  const curve = planPadCurve([0.1, 0.4], [20e3, 200e3])!;
  expect([-0.01, 0, 0.4, 0.41].map((strain) => curve.covers(strain))).toEqual([false, true, true, false]);
});

test.each([
  ['no points', [], []],
  ['one list is longer', [0.1, 0.2], [1e3]],
  ['strains that fall', [0.2, 0.1], [1e3, 2e3]],
  ['a strain of nothing', [0, 0.1], [1e3, 2e3]],
  ['a pad that is squeezed to nothing', [0.5, 1], [1e3, 2e3]],
  ['pressures that fall', [0.1, 0.2], [2e3, 1e3]],
  ['pressures that stay', [0.1, 0.2], [1e3, 1e3]],
  ['no pressure', [0.1, 0.2], [0, 1e3]],
  ['no number', [0.1, Number.NaN], [1e3, 2e3]],
])('no curve: %s', (_, strains, pressures) => {
  expect(planPadCurve(strains, pressures)).toBeNull();
});
