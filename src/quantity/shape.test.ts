import { describe, expect, test } from 'vitest';
import type { KindName } from './kind.ts';
import { readQuantity } from './read.ts';
import { type Spread, standardUncertainty } from './spread.ts';

function quantity(text: string, kind: KindName) {
  const read = readQuantity(text, kind);
  if (!read.ok) throw new Error(`${text}: ${JSON.stringify(read.fault)}`);
  return read.quantity;
}

function u(text: string, kind: KindName): number {
  const { spread, value } = quantity(text, kind);
  return standardUncertainty(spread!, value);
}

describe('the shape stands in brackets', () => {
  test.each<[string, KindName, Spread]>([
    ['25 degC ± 2 K (triangular)', 'temperature', { shape: 'triangular', low: 296.15, high: 300.15 }],
    ['5 V +10 % -5 % (triangular)', 'voltage', { shape: 'triangular', low: 4.75, high: 5.5 }],
    ['20..30 degC (U-shaped)', 'temperature', { shape: 'u-shaped', low: 293.15, high: 303.15 }],
    ['5 V ± 1 V (rectangular)', 'voltage', { shape: 'rectangular', low: 4, high: 6 }],
    ['25 ± 2 degC (flat ± 0.5 K)', 'temperature', { shape: 'trapezoidal', low: 296.15, high: 300.15, flat: 0.5 }],
    ['5 V ± 20 % (limits ± 1 %)', 'voltage', { shape: 'curvilinear', low: 4, high: 6, by: 0.05 }],
    ['4..6 V (limits ± 1 V)', 'voltage', { shape: 'curvilinear', low: 4, high: 6, by: 1 }],
    [
      '100 ohm ± 10 % (without ± 5 %)',
      'resistance',
      { shape: 'sorted', low: 90, high: 110, holeLow: 95, holeHigh: 105 },
    ],
    [
      '90..110 ohm (without 95..102 ohm)',
      'resistance',
      { shape: 'sorted', low: 90, high: 110, holeLow: 95, holeHigh: 102 },
    ],
    [
      '8 W/(m·K) ± 25 % (flat ± 0.5 W/(m·K))',
      'thermal-conductivity',
      { shape: 'trapezoidal', low: 6, high: 10, flat: 0.5 },
    ],
    ['5.02(3) V (10 readings)', 'voltage', { shape: 't', u: 0.03, degreesOfFreedom: 9 }],
    ['5.02(3) V (9 dof)', 'voltage', { shape: 't', u: 0.03, degreesOfFreedom: 9 }],
    ['5.02 V ± 0.06 V (k=2, 12.5 degrees of freedom)', 'voltage', { shape: 't', u: 0.03, degreesOfFreedom: 12.5 }],
    ['5 V ~ 0.5 V (8 dof)', 'voltage', { shape: 't', u: 0.5, degreesOfFreedom: 8 }],
    ['0.50(1) (5 readings)', 'ratio', { shape: 't', u: 0.01, degreesOfFreedom: 4 }],
  ])('%s', (text, kind, spread) => {
    expect(quantity(text, kind).spread).toEqual(spread);
  });

  // GUM, 4.3.4: a 10 Ω standard resistor, 10.000 742 Ω ± 129 µΩ at 99 % has u = 129 µΩ / 2.58 = 50 µΩ.
  // GUM, 4.3.5: even odds that a length is 10.11 mm ± 0.04 mm make u = 1.48 · 0.04 mm ≈ 0.06 mm.
  test.each<[string, KindName, number, number]>([
    ['10.000742 ohm ± 129 uohm (99 %)', 'resistance', 50e-6, 0.5e-6],
    ['5 V ± 3 V (99.73 %)', 'voltage', 1, 1e-9],
    ['10.11 mm ± 0.04 mm (50 %)', 'length', 1.48 * 4e-5, 0.005 * 4e-5],
    ['5 V ± 1.96 V (95 %)', 'voltage', 1, 1e-4],
    ['5 V ± 1.645 V (90%)', 'voltage', 1, 1e-3],
    ['5 V ± 2.576 V (99 %)', 'voltage', 1, 1e-3],
    ['5 V ± 2 V (95.45 %)', 'voltage', 1, 1e-9],
  ])('%s is normal, by the share between its ends', (text, kind, expected, tolerance) => {
    expect(quantity(text, kind).spread?.shape).toBe('normal');
    expect(Math.abs(u(text, kind) - expected)).toBeLessThanOrEqual(tolerance);
  });

  // GUM, H.1.3.4: a comparator with ±0.02 µm "three standard deviations, ν = 8": the standard uncertainty is 6.7 nm.
  test('of an expanded uncertainty with its degrees of freedom', () => {
    const { spread } = quantity('0 um ± 0.02 um (k=3, 8 dof)', 'length');
    expect(spread).toEqual({ shape: 't', u: 0.02e-6 / 3, degreesOfFreedom: 8 });
    expect(Number((1e9 * u('0 um ± 0.02 um (k=3, 8 dof)', 'length')).toPrecision(2))).toBe(6.7);
  });
});

describe('one of several values: their mean is the best one', () => {
  test.each<[string, KindName, number, number[], number[]]>([
    ['10 ohm or 14 ohm', 'resistance', 12, [10, 14], [0.5, 0.5]],
    ['one of 10, 12 or 14 ohm', 'resistance', 12, [10, 12, 14], [1 / 3, 1 / 3, 1 / 3]],
    ['one of 10 ohm, 14 ohm', 'resistance', 12, [10, 14], [0.5, 0.5]],
    ['10 (75 %) or 14 ohm (25 %)', 'resistance', 11, [10, 14], [0.75, 0.25]],
    ['10 ohm (33.3 %) or 20 ohm (33.3 %) or 30 ohm (33.4 %)', 'resistance', 20.01, [10, 20, 30], [0.333, 0.333, 0.334]],
    ['20 or 30 degC', 'temperature', 298.15, [293.15, 303.15], [0.5, 0.5]],
    ['90 % or 80 %', 'ratio', 0.85, [0.9, 0.8], [0.5, 0.5]],
    ['20 W/(m·K) or 30 W/(m·K)', 'thermal-conductivity', 25, [20, 30], [0.5, 0.5]],
    ['-5 V or 5 V', 'voltage', 0, [-5, 5], [0.5, 0.5]],
  ])('%s', (text, kind, mean, values, probabilities) => {
    const read = quantity(text, kind);
    expect(read.value).toBe(mean);
    expect(read.spread).toEqual({ shape: 'choice', values, probabilities });
  });
});
