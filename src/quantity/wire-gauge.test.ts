import { describe, expect, test } from 'vitest';
import { readWireGauge, wireGaugeDiameter } from './wire-gauge.ts';

describe('the diameter of a wire by its number', () => {
  // ASTM B258, table 1, in mils: gauges are given to four digits there, 0000 and 36 exactly (the two that define the series).
  test.each([
    [-3, 460.0],
    [0, 324.9],
    [10, 101.9],
    [18, 40.3],
    [24, 20.1],
    [30, 10.0],
    [36, 5.0],
    [40, 3.1],
  ])('number %s: %s mil', (gauge, mils) => {
    expect(Math.round(wireGaugeDiameter(gauge) / 2.54e-6) / 10).toBe(mils);
  });

  test('0000 is 11.684 mm, 18 is 1.0237 mm, 36 is 0.127 mm', () => {
    expect(1e3 * wireGaugeDiameter(-3)).toBeCloseTo(11.684, 10);
    expect(1e3 * wireGaugeDiameter(18)).toBeCloseTo(1.0237, 4);
    expect(1e3 * wireGaugeDiameter(36)).toBeCloseTo(0.127, 12);
  });
});

describe('the ways to write it', () => {
  test.each([
    ['AWG 18', 18],
    ['18 AWG', 18],
    ['awg18', 18],
    [' AWG  18 ', 18],
    ['AWG 0', 0],
    ['1/0 AWG', 0],
    ['AWG 00', -1],
    ['2/0 AWG', -1],
    ['AWG 000', -2],
    ['AWG 4/0', -3],
    ['0000 AWG', -3],
  ])('%s', (text, gauge) => {
    expect(readWireGauge(text)).toBe(wireGaugeDiameter(gauge));
  });

  test.each([
    '18',
    'AWG',
    'AWG -1',
    'AWG 00000',
    'AWG 5/0',
    'AWG 18.5',
    'AWG 100',
    'AWG 57',
    'AWG 18 AWG',
    '18 SWG',
    '18 AWG ± 1 %',
  ])('%s is none', (text) => {
    expect(readWireGauge(text)).toBeNull();
  });
});
