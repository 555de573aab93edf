import { describe, expect, test } from 'vitest';
import { type KindName, kinds } from './kind.ts';
import { parseUnit, prettyUnit, readUnit, sameDimension } from './unit.ts';
import { prefixable, prefixes } from './unit-table.ts';

function size(text: string): number {
  const unit = parseUnit(text);
  if (!unit) throw new Error(`${text} is no unit`);
  return unit.factor * 10 ** unit.ten;
}

// The International System of Units (SI brochure), 9th edition, table 7.
test.each([
  ['p', 1e-12],
  ['n', 1e-9],
  ['u', 1e-6],
  ['µ', 1e-6],
  ['m', 1e-3],
  ['c', 1e-2],
  ['d', 1e-1],
  ['k', 1e3],
  ['M', 1e6],
  ['G', 1e9],
])('the prefix %s is %s', (prefix, expected) => {
  expect(size(`${prefix}V`) / expected).toBeCloseTo(1, 15);
});

test('no unit with a prefix is mistaken for another one', () => {
  for (const prefix of Object.keys(prefixes))
    for (const [symbol, { dimension }] of Object.entries(prefixable)) {
      // Peta isn't a prefix here, so that Pa is a pascal; cd, min and ft are units of their own and begin with a prefix or end in a unit.
      if (Object.hasOwn(prefixable, prefix + symbol)) throw new Error(prefix + symbol);
      expect(parseUnit(prefix + symbol)?.dimension, prefix + symbol).toEqual(dimension);
    }
});

describe('products, quotients and powers', () => {
  // Each pair is one unit in two spellings, by the rules of the SI brochure, 5.4.
  test.each([
    ['W/(m·K)', 'W·m^-1·K^-1'],
    ['W/(m²·K)', 'W*m⁻²*K⁻¹'],
    ['K·mm²/W', 'mm2 K/W'],
    ['mm²K/W', 'K*mm^2/W'],
    ['J/(g·K)', 'J/g/K'],
    ['g/(A·h)', 'g/A/h'],
    ['m³/h', 'm3/h'],
    ['N·m', 'N⋅m'],
    ['mV/°C', 'mV/K'],
    ['(m/s)²', 'm²/s²'],
    ['1/K', 'K^-1'],
  ])('%s is %s', (one, other) => {
    expect(sameDimension(parseUnit(one)!.dimension, parseUnit(other)!.dimension)).toBe(true);
    expect(size(one) / size(other)).toBeCloseTo(1, 14);
  });

  test.each([
    '',
    ' ',
    '/',
    'V/',
    '/V',
    'V//A',
    'V·',
    '(V',
    'V)',
    '()',
    'V^',
    'V^0',
    'V^10',
    'V-A',
    '2',
    'mmV',
    'kpsi',
    'toString',
    '__proto__',
    `${'('.repeat(40)}V${')'.repeat(40)}`,
  ])('"%s" is no unit', (text) => {
    expect(parseUnit(text)).toBeNull();
  });
});

describe('a unit for a kind', () => {
  test.each<[string, KindName, boolean]>([
    ['degC', 'temperature', true],
    ['C', 'temperature', true],
    ['degC', 'temperature-difference', false],
    ['C', 'charge', true],
    ['K', 'temperature-difference', true],
    ['%', 'ratio', true],
    ['%', 'count', false],
    ['rad', 'ratio', false],
    ['%', 'angle', false],
    ['mΩ', 'voltage', false],
    ['W/mK', 'thermal-conductivity', true],
    ['W/mK', 'thermal-conductance', true],
  ])('%s of %s: %s', (text, kind, fits) => {
    expect(readUnit(text, kind) !== null).toBe(fits);
  });

  test('every kind has a unit in SI that is one of it', () => {
    for (const [name, { siUnit }] of Object.entries(kinds)) {
      const unit = readUnit(siUnit, name as KindName);
      expect(unit, name).toMatchObject({ factor: 1, ten: 0, zero: 0 });
    }
  });
});

test.each([
  ['mohm', 'mΩ'],
  ['kOhm', 'kΩ'],
  ['um', 'µm'],
  ['degC', '°C'],
  ['K*mm2/W', 'K·mm²/W'],
  ['m^-1', 'm⁻¹'],
  ['W/(m^2*K)', 'W/(m²·K)'],
  ['lbf·in', 'lbf·in'],
])('%s is shown as %s', (written, shown) => {
  expect(prettyUnit(written)).toBe(shown);
  expect(parseUnit(shown)).toEqual(parseUnit(written));
});
