import { expect, test } from 'vitest';
import { seriesValues } from './e-series.ts';

// IEC 60063, table 1 (E24), as printed in its many reprints; E96 spot values of the same standard, from memory.
test('a decade of E24 is as the standard prints it', () => {
  expect(seriesValues('E24', 10, 91)).toEqual([
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
  ]);
});

test('a decade of E96 has 96 values, from 1.00 over 4.99 to 9.76', () => {
  const decade = seriesValues('E96', 1, 9.76);
  expect(decade).toHaveLength(96);
  for (const value of [1, 1.02, 1.05, 1.07, 1.1, 2.67, 3.74, 4.64, 4.99, 9.53, 9.76]) expect(decade).toContain(value);
  expect(seriesValues('E96', 1, 10)).toHaveLength(97);
});

test('both ends belong to it, and its values are the decimals a person writes', () => {
  expect(seriesValues('E24', 0.0091, 0.011)).toEqual([0.0091, 0.01, 0.011]);
  expect(seriesValues('E24', 92, 99)).toEqual([]);
  expect(seriesValues('E96', 97_600, 100_000)).toEqual([97_600, 100_000]);
});
