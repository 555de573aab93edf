import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type KindName, kinds } from './kind.ts';
import { readQuantity } from './read.ts';
import type { Spread } from './spread.ts';
import { fromUnit, showValue, toUnit, writeForFile, writeValue } from './write.ts';

const seed = 20_261_125;

const units: readonly [KindName, string][] = [
  ['resistance', 'mΩ'],
  ['temperature', 'degC'],
  ['temperature', 'degF'],
  ['temperature-difference', 'K'],
  ['volume-flow', 'CFM'],
  ['pressure', 'psi'],
  ['torque', 'lbf·in'],
  ['ratio', '%'],
  ['ratio', ''],
  ['length', 'mil'],
  ['electrochemical-equivalent', 'g/(A·h)'],
  ['voltage', 'mV'],
  ...(Object.keys(kinds) as KindName[]).map((kind): [KindName, string] => [kind, kinds[kind].siUnit]),
];

const positive = fc.double({ min: 1e-14, max: 1e12, noNaN: true });
const relative = fc.double({ min: 1e-6, max: 3, noNaN: true });

function readBack(value: number, spread: Spread | null, unit: string, kind: KindName) {
  const text = writeForFile(value, spread, unit, kind);
  const read = readQuantity(text, kind);
  if (!read.ok) throw new Error(`${text}: ${read.fault.code}`);
  expect(read.quantity.text).toBe(text);
  return { value: read.quantity.value, spread: read.quantity.spread };
}

describe(`what is written to a file reads back to the last bit (seed ${seed})`, () => {
  const pair = fc.constantFrom(...units);

  test('values of either sign', () => {
    fc.assert(
      fc.property(pair, positive, fc.boolean(), ([kind, unit], size, negative) => {
        // No temperature is below absolute zero.
        const value = negative && kind !== 'temperature' ? -size : size;
        expect(readBack(value, null, unit, kind)).toEqual({ value, spread: null });
      }),
      { seed, numRuns: 2000 },
    );
  });

  test('normal and log-normal spreads', () => {
    fc.assert(
      fc.property(pair, positive, relative, fc.boolean(), ([kind, unit], value, part, logarithmic) => {
        const spread: Spread = logarithmic
          ? { shape: 'log-normal', sigma: part }
          : { shape: 'normal', u: part * value };
        expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
      }),
      { seed, numRuns: 2000 },
    );
  });

  test('rectangles, as they are read', () => {
    fc.assert(
      fc.property(pair, positive, relative, ([kind, unit], low, part) => {
        const high = low * (1 + part);
        const value = low + (high - low) / 2;
        const spread: Spread = { shape: 'rectangular', low, high };
        expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
      }),
      { seed, numRuns: 1000 },
    );
  });

  test('rectangles about any value inside, its ends included', () => {
    fc.assert(
      fc.property(
        pair,
        positive,
        relative,
        fc.double({ min: 0, max: 1, noNaN: true }),
        ([kind, unit], low, part, share) => {
          const high = low * (1 + part);
          const value = Math.min(high, low + share * (high - low));
          const spread: Spread = { shape: 'rectangular', low, high };
          expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
        },
      ),
      { seed, numRuns: 2000 },
    );
  });

  test('all other shapes, with any figures', () => {
    const shape = fc.constantFrom('t', 'triangular', 'u-shaped', 'trapezoidal', 'curvilinear', 'sorted' as const);
    const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(pair, positive, relative, shape, share, share, ([kind, unit], low, part, name, p, q) => {
        const high = low * (1 + part);
        const value = low + p * (high - low);
        const figures = {
          u: part * low,
          degreesOfFreedom: 100 * q,
          flat: (q * (high - low)) / 2,
          by: (q * (high - low)) / 2,
          holeLow: low + Math.min(p, q) * 0.9 * (high - low),
          holeHigh: low + (Math.max(p, q) + 0.005) * (high - low),
        };
        const spread = {
          t: { shape: 't', u: figures.u, degreesOfFreedom: figures.degreesOfFreedom },
          triangular: { shape: 'triangular', low, high },
          'u-shaped': { shape: 'u-shaped', low, high },
          trapezoidal: { shape: 'trapezoidal', low, high, flat: figures.flat },
          curvilinear: { shape: 'curvilinear', low, high, by: figures.by },
          sorted: { shape: 'sorted', low, high, holeLow: figures.holeLow, holeHigh: figures.holeHigh },
        }[name] as Spread;
        expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
      }),
      { seed, numRuns: 3000 },
    );
  });

  test('several values, as they are read', () => {
    const digits = fc.integer({ min: 1, max: 99_999 });
    const percent = fc.integer({ min: 1, max: 998 });
    fc.assert(
      fc.property(
        pair,
        fc.uniqueArray(digits, { minLength: 2, maxLength: 4 }),
        fc.option(percent),
        ([kind, unit], each, first) => {
          const shares = first === null ? null : [first, ...each.slice(1).map((_, k) => (k === 0 ? 999 - first : 0.5))];
          const weights = shares && each.length === 2 ? [shares[0] + 0.5, shares[1] + 0.5] : null;
          const text = each
            .map((value, k) => `${value / 8} ${unit === '1' ? '' : unit}${weights ? ` (${weights[k] / 10} %)` : ''}`)
            .join(' or ');
          const read = readQuantity(text, kind);
          if (!read.ok) throw new Error(`${text}: ${read.fault.code}`);
          const { value, spread } = read.quantity;
          expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
        },
      ),
      { seed, numRuns: 1000 },
    );
  });

  test('values and spreads many decades apart', () => {
    fc.assert(
      fc.property(pair, positive, positive, positive, ([kind, unit], value, down, up) => {
        const spread: Spread = { shape: 'rectangular', low: value - down, high: value + up };
        fc.pre(spread.low < spread.high);
        expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
        expect(readBack(value, { shape: 'normal', u: up }, unit, kind)).toEqual({
          value,
          spread: { shape: 'normal', u: up },
        });
      }),
      { seed, numRuns: 1000 },
    );
  });

  test('the unit stays, whatever its factor', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units.slice(0, 12)),
        fc.double({ min: 1e-4, max: 1e6, noNaN: true }),
        ([kind, unit], value) => {
          expect(writeForFile(value, { shape: 'normal', u: value / 7 }, unit, kind)).toMatch(
            unit === '' ? /^[\d.e-]+ ±/ : ` ${unit} ±`,
          );
        },
      ),
      { seed, numRuns: 1000 },
    );
  });

  test.each<[number, Spread | null, string, KindName, string]>([
    [0.00502, { shape: 'normal', u: 3e-5 }, 'mΩ', 'resistance', '5.02 mΩ ± 0.03 mΩ (k=1)'],
    [0.005, { shape: 'rectangular', low: 0.00495, high: 0.00505 }, 'mΩ', 'resistance', '5 mΩ ± 1 %'],
    [298.25, { shape: 'rectangular', low: 296.25, high: 300.25 }, 'degC', 'temperature', '25.1 degC ± 2 K'],
    [5, { shape: 'rectangular', low: 4.75, high: 5.5 }, 'V', 'voltage', '5 V +0.5 V -0.25 V'],
    [0.9, { shape: 'rectangular', low: 0.88, high: 0.92 }, '%', 'ratio', '90 % ± 2 %'],
    [0.00254, null, 'in', 'length', '0.1 in'],
    [1200000, null, 'W', 'power', '1200000 W'],
    [0, { shape: 'normal', u: 1e-9 }, 'V', 'voltage', '0 V ± 1e-9 V (k=1)'],
  ])('%s with %j in %s is written with the fewest digits', (value, spread, unit, kind, text) => {
    expect(writeForFile(value, spread, unit, kind)).toBe(text);
  });

  test.each<[number, Spread | null]>([
    [Number.NaN, null],
    [Number.POSITIVE_INFINITY, null],
    [1, { shape: 'normal', u: 0 }],
    [1, { shape: 'normal', u: Number.NaN }],
    [1, { shape: 'rectangular', low: 2, high: 3 }],
    [1, { shape: 'rectangular', low: 1, high: 1 }],
    [-1, { shape: 'log-normal', sigma: 0.3 }],
    [1, { shape: 't', u: 1, degreesOfFreedom: 0 }],
    [1, { shape: 'triangular', low: 2, high: 3 }],
    [1, { shape: 'trapezoidal', low: 0, high: 2, flat: 1 }],
    [1, { shape: 'curvilinear', low: 0, high: 2, by: 1.5 }],
    [1, { shape: 'sorted', low: 0, high: 2, holeLow: 0, holeHigh: 1 }],
    [2, { shape: 'choice', values: [1, 2], probabilities: [0.5, 0.5] }],
    [1.5, { shape: 'choice', values: [1, 2, Number.NaN], probabilities: [0.5, 0.4, 0.1] }],
  ])('%s with %j is nothing that a file can hold', (value, spread) => {
    expect(() => writeForFile(value, spread, 'V', 'voltage')).toThrow("can't be written");
  });

  test.each<[string, KindName]>([
    ['5 mΩ ± 1 %', 'resistance'],
    ['5 V +10 % -5 %', 'voltage'],
    ['25 degC ± 2 K', 'temperature'],
    ['90 % ± 2 %', 'ratio'],
    ['6 lbf·in ± 10 %', 'torque'],
    ['45 um ~ 30 %', 'length'],
    ['5 mΩ ± 1 % (triangular)', 'resistance'],
    ['25 degC ± 2 K (U-shaped)', 'temperature'],
    ['25 degC ± 2 K (flat ± 1 K)', 'temperature'],
    ['25 degC ± 2 K (limits ± 0.5 K)', 'temperature'],
    ['100 mΩ ± 10 % (without 97..105 mΩ)', 'resistance'],
    ['10 mΩ (70 %) or 12 mΩ (30 %)', 'resistance'],
    ['20 degC or 30 degC', 'temperature'],
    ['5.02 mΩ ± 0.03 mΩ (k=1, 9 dof)', 'resistance'],
  ])('%s, and it stays in its unit', (text, kind) => {
    const read = readQuantity(text, kind);
    if (!read.ok) throw new Error(read.fault.code);
    const { value, spread, unit } = read.quantity;
    expect(read.quantity.text).toBe(text);
    expect(readBack(value, spread, unit, kind)).toEqual({ value, spread });
    expect(writeForFile(value, spread, unit, kind)).toContain(unit);
  });
});

describe('digits follow the uncertainty: two of them, and the value to the same place', () => {
  // JCGM 100:2008 (GUM), 7.2.6: u with two digits at most; 10.057 62 Ω with u = 27 mΩ is rounded to 10.058 Ω.
  test('a resistance as the GUM rounds it', () => {
    expect(writeValue(10.05762, 0.027, 'ohm', 'resistance')).toBe('10.058 Ω ± 0.027 Ω');
  });

  test.each<[number, number | null, string, KindName, string]>([
    [0.00502, 3e-5, 'mohm', 'resistance', '5.020 mΩ ± 0.030 mΩ'],
    [0.1, 0.0999, 'V', 'voltage', '0.10 V ± 0.10 V'],
    [54.321, 12.3, 'W', 'power', '54 W ± 12 W'],
    [12345, 678, 'W', 'power', '12350 W ± 680 W'],
    [353.15, 1.234, 'degC', 'temperature', '80.0 °C ± 1.2 K'],
    [298.15, null, 'degC', 'temperature', '25.00 °C'],
    [0.005, null, 'mΩ', 'resistance', '5.000 mΩ'],
    [0.8765432, null, '%', 'ratio', '87.65 %'],
    [0.8765432, 0.01, '', 'ratio', '0.877 ± 0.010'],
    [20, 1, 'degC', 'temperature-difference', '20.0 K ± 1.0 K'],
    [-1e-9, 0.1, 'V', 'voltage', '0.00 V ± 0.10 V'],
    [2.2e-5, null, 'uF', 'capacitance', '22.00 µF'],
    [4e-5, null, 'mm^2', 'area', '40.00 mm²'],
  ])('%s with u %s in %s of %s', (value, u, unit, kind, text) => {
    expect(writeValue(value, u, unit, kind)).toBe(text);
  });

  test('value, uncertainty and unit come apart for a table', () => {
    expect(showValue(0.00502, 3e-5, 'mΩ', 'resistance')).toEqual({
      value: '5.020',
      u: '0.030',
      unit: 'mΩ',
      uUnit: 'mΩ',
    });
  });
});

test('a value goes into a unit and back', () => {
  expect(toUnit(298.15, 'degC', 'temperature')).toBe(25);
  expect(fromUnit(25, 'degC', 'temperature')).toBe(298.15);
  expect(toUnit(0.005, 'mΩ', 'resistance')).toBe(5);
  expect(toUnit(0.0254, 'in', 'length')).toBe(1);
  expect(() => toUnit(1, 'V', 'resistance')).toThrow('resistance');
});

test(`from a unit and back nothing but rounding is lost (seed ${seed})`, () => {
  fc.assert(
    fc.property(fc.constantFrom(...units), positive, ([kind, unit], value) => {
      const zero = fromUnit(0, unit, kind);
      const back = fromUnit(toUnit(value, unit, kind), unit, kind);
      // Near the zero of a temperature scale the difference is what is rounded.
      expect(Math.abs(back - value)).toBeLessThanOrEqual(2 * Number.EPSILON * (value + Math.abs(zero)));
    }),
    { seed, numRuns: 1000 },
  );
});
