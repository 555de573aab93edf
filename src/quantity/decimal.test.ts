import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decimalOf, minus, over, plus, readDecimal, times, toDouble, writeDecimal } from './decimal.ts';

const seed = 20_261_125;
const doubles = fc.double({ noNaN: true, noDefaultInfinity: true });

test(`a double is its shortest decimal, and comes back (seed ${seed})`, () => {
  for (const value of [5e-324, 2.2250738585072014e-308, Number.MAX_VALUE, -0.1])
    expect(toDouble(decimalOf(value))).toBe(value);
  fc.assert(
    fc.property(doubles, (value) => {
      expect(toDouble(decimalOf(value)) === value).toBe(true);
      // The language writes a double with the digits that it takes to tell it apart; written out again they look the same.
      expect(writeDecimal(decimalOf(value), 17)).toBe(String(value + 0).replace('e+', 'e'));
    }),
    { seed, numRuns: 1000 },
  );
});

test('sums and products are exact where those of doubles are not', () => {
  const [tenth, fifth] = [readDecimal('0.1')!, readDecimal('.2')!];
  expect(writeDecimal(plus(tenth, fifth), 30)).toBe('0.3');
  expect(writeDecimal(times(tenth, fifth), 30)).toBe('0.02');
  expect(writeDecimal(minus(readDecimal('1e20')!, readDecimal('1e-5')!), 30)).toBe('99999999999999999999.99999');
  expect(writeDecimal(over(readDecimal('1')!, readDecimal('-3')!), 10)).toBe('-0.3333333333');
  expect(writeDecimal(over(readDecimal('1')!, readDecimal('7e-250')!), 6)).toBe('1.42857e249');
});

test.each([
  ['0.0999', 2, '0.1'],
  ['1.25', 2, '1.3'],
  ['-1.25', 2, '-1.3'],
  ['1.2499', 2, '1.2'],
  ['999.9', 3, '1000'],
  ['123456', 2, '120000'],
  ['0.000001', 3, '0.000001'],
  ['0.0000001', 3, '1e-7'],
  ['1.5e21', 3, '1.5e21'],
  ['1e20', 3, '100000000000000000000'],
  ['0', 3, '0'],
  ['-0.5e-2', 3, '-0.005'],
  ['+5.', 3, '5'],
])('%s with %s digits is %s', (number, digits, text) => {
  expect(writeDecimal(readDecimal(number)!, digits)).toBe(text);
});

test('powers of ten that no double comes near are not read', () => {
  for (const digits of ['1e701', '1e-999999999', '1e99999999999999999999']) expect(readDecimal(digits)).toBeNull();
});
