import { expect, test } from 'vitest';
import { adcVoltage, averagedUncertainty, quantisationUncertainty } from './adc.ts';
import { lowPassGain, settlingError, settlingTime } from './rc-filter.ts';

test('averaging lowers the part of resolution only where noise is half a step or more', () => {
  const one = quantisationUncertainty(1);
  expect(averagedUncertainty(1, 0, 1000)).toBeCloseTo(one, 15);
  expect(averagedUncertainty(1, 0.499, 1e6)).toBeCloseTo(one, 5);
  expect(averagedUncertainty(1, 0.5, 1e6)).toBeLessThan(1e-3);
  expect(averagedUncertainty(1, 0.5, 4)).toBeCloseTo(averagedUncertainty(1, 0.5, 1) / 2, 15);
});

test('gain and offset are taken out in the order they came in', () => {
  const code = (0.2 * 10 + 0.048) / 1e-3;
  expect(adcVoltage(code, 1e-3, 10, 0.048)).toBeCloseTo(0.2, 15);
});

test('after the settling time the part that is left is left', () => {
  expect(settlingError(1e3, 1e-6, settlingTime(1e3, 1e-6, 0.01))).toBeCloseTo(0.01, 15);
});

test('a filter passes everything at 0 Hz and less with every hertz', () => {
  expect(lowPassGain(0, 100)).toBe(1);
  expect(lowPassGain(200, 100)).toBeLessThan(lowPassGain(100, 100));
});
