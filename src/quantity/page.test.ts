import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type KindName, kinds } from './kind.ts';
import { readQuantity, readUnit } from './read.ts';
import { standardUncertainty } from './spread.ts';

const page = readFileSync(new URL('../../docs/quantities.md', import.meta.url), 'utf8');
const kindNames = Object.keys(kinds) as KindName[];

/** Code of one column of the table under a heading. */
function codes(heading: string, column: number): string[] {
  const section = page.split(/^## /m).find((part) => part.startsWith(heading))!;
  const rows = section.split('\n').filter((line) => /^\| (?!---|you write)/.test(line));
  return rows.flatMap((row) => [...row.split('|')[column].matchAll(/`([^`]+)`/g)].map((found) => found[1]));
}

test.each(codes('The unit', 2).filter((code) => code !== 'AWG 18'))('the page names %s, and it is a unit', (unit) => {
  expect(kindNames.some((kind) => readUnit(unit, kind))).toBe(true);
});

test.each(codes('The uncertainty', 1))('the page shows %s, and it is read with an uncertainty', (text) => {
  const readings = kindNames.map((kind) => readQuantity(text, kind));
  expect(readings.some((reading) => reading.ok && reading.quantity.spread !== null)).toBe(true);
});

test('the page shows what is refused, and it is', () => {
  const refused: Record<string, [KindName, string]> = {
    '5': ['resistance', 'missing-unit'],
    '5 mΩ ± 0.05': ['resistance', 'missing-unit'],
    '5 mOhms': ['resistance', 'unknown-unit'],
    '5 mΩ (guess)': ['resistance', 'unknown-unit'],
    '5 mΩ': ['temperature', 'wrong-dimension'],
    '5 m Ω': ['resistance', 'wrong-dimension'],
    '5 V ± 1 A': ['voltage', 'wrong-dimension'],
    '0,5 mΩ': ['resistance', 'comma'],
    '1 000 W': ['power', 'split-number'],
    "1'000 W": ['power', 'split-number'],
    '5 V ± -1 %': ['voltage', 'bad-tolerance'],
    '5 V ± 0 V': ['voltage', 'bad-tolerance'],
    '5 V +10 %': ['voltage', 'bad-tolerance'],
    '5 - 6 V': ['voltage', 'bad-tolerance'],
    '5.02(3) mΩ ± 1 %': ['resistance', 'two-uncertainties'],
    '0.4..0.6 K/W ± 10 %': ['thermal-resistance', 'two-uncertainties'],
    '5 V ± 1 % (triangle)': ['voltage', 'unknown-shape'],
    '5 V ± 1 % (9 dof)': ['voltage', 'bad-shape'],
    '5.02(3) V (triangular)': ['voltage', 'bad-shape'],
    '5 V ± 1 V (flat ± 2 V)': ['voltage', 'shape-too-wide'],
    '10 V or 12 V ± 1 %': ['voltage', 'bad-choice'],
    '10 V (50 %) or 12 V (30 %)': ['voltage', 'bad-choice'],
    '0.9 or 80 %': ['ratio', 'bad-choice'],
    '0.6..0.4 K/W': ['thermal-resistance', 'bad-range'],
    '25 degC ± 1 %': ['temperature', 'percent-of-temperature'],
    '30 degC': ['temperature-difference', 'scale-for-difference'],
    '0.90 ± 2 %': ['ratio', 'ambiguous-tolerance'],
  };
  expect(codes('What is refused', 1)).toEqual(Object.keys(refused));
  for (const [text, [kind, code]] of Object.entries(refused)) {
    const reading = readQuantity(text, kind);
    expect(reading.ok || reading.fault.code, text).toBe(`quantity/${code}`);
  }
});

test('the standard uncertainties that the page names are those of the shapes', () => {
  const u = (text: string, kind: KindName) => {
    const reading = readQuantity(text, kind);
    if (!reading.ok || !reading.quantity.spread) throw new Error(text);
    return standardUncertainty(reading.quantity.spread, reading.quantity.value);
  };
  expect(u('25 degC ± 2 K (triangular)', 'temperature')).toBeCloseTo(2 / Math.sqrt(6), 12);
  expect(u('25 degC ± 2 K (U-shaped)', 'temperature')).toBeCloseTo(2 / Math.sqrt(2), 12);
  expect(u('25 degC ± 2 K (flat ± 1 K)', 'temperature')).toBeCloseTo(Math.sqrt(5) / Math.sqrt(6), 12);
  expect(u('5 mΩ ± 1 % (limits ± 0.2 %)', 'resistance') / 5e-5).toBeCloseTo(Math.sqrt(1 / 3 + 0.04 / 9), 12);
  expect(u('100 mΩ ± 10 % (without ± 5 %)', 'resistance') / 1e-3).toBeCloseTo(Math.sqrt((100 + 50 + 25) / 3), 11);
  expect(u('10 mΩ or 12 mΩ', 'resistance')).toBeCloseTo(1e-3, 14);
  expect(u('10 mΩ (70 %) or 12 mΩ (30 %)', 'resistance')).toBeCloseTo(1e-3 * Math.sqrt(0.84), 14);
});
