import { expect, test } from 'vitest';
import { runNumber } from './number.ts';

const row = (text: string, name: string) =>
  runNumber(text)
    .text.split('\n')
    .find((line) => line.trim().startsWith(name))
    ?.trim()
    .slice(name.length)
    .trim();

// JCGM 101:2008, 6.4 for u; the other figures by hand: half widths 2 K and 10 mΩ with a hole of 5 mΩ, 95 % of each.
test.each([
  ['25 degC ± 2 K (triangular)', 'standard uncertainty', '0.8165 K'],
  ['25 degC ± 2 K (U-shaped)', '95 % of the cases', '23.01 °C to 26.99 °C'],
  ['100 mΩ ± 10 % (without ± 5 %)', 'standard uncertainty', '7.638 mΩ'],
  ['100 mΩ ± 10 % (without ± 5 %)', '95 % of the cases', '90.25 mΩ to 109.75 mΩ'],
  ['10 mΩ (75 %) or 14 mΩ (25 %)', 'skewness', '1.155'],
  ['5 V ± 0.001 V', 'certainly between', '4.999000 V and 5.001000 V'],
  ['5 V +10 % -5 %', 'mean', '5.125 V'],
  ['5.02(3) V (4 readings)', 'degrees of freedom', '3.000'],
  ['5.02(3) V (4 readings)', 'kurtosis (normal: 3)', 'none: its ends are too heavy'],
  ['5.02(3) V', 'kurtosis (normal: 3)', '3.000'],
])('%s: %s is %s', (text, name, shown) => {
  expect(row(text, name)).toBe(shown);
});

test('a number without an uncertainty says so', () => {
  expect(runNumber('5 V').text).toContain('no uncertainty is stated');
});

test.each(['5 furlong', '5 V ± 1 % (9 dof)', 'five'])('%s is refused', (text) => {
  expect(() => runNumber(text)).toThrow();
});
