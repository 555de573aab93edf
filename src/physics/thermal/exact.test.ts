import { expect, test } from 'vitest';
import { exactly, quotient } from './exact.ts';

test('numbers of very different size become whole multiples of one power of two', () => {
  const { whole, bits } = exactly([0.75, 3 * 2 ** -980, 2 ** 500]);
  expect(whole[0]).toBe(3n << BigInt(bits - 2));
  expect(whole[1]).toBe(3n << BigInt(bits - 980));
  expect(whole[2]).toBe(1n << BigInt(bits + 500));
});

test('a quotient has all digits of a double, however long numerator and denominator are', () => {
  for (const length of [0n, 3n, 60n, 64n, 200n, 900n]) {
    expect(quotient(1n, 3n << length, Number(length))).toBe(1 / 3);
    expect(quotient(1n << length, 3n, -Number(length))).toBe(1 / 3);
    expect(quotient(5n << length, -7n << length, 0)).toBeCloseTo(-5 / 7, 15);
  }
  expect(quotient(3n, 1n, -1000)).toBe(3 * 2 ** -1000);
  expect(quotient(3n, 1n, 1000)).toBe(3 * 2 ** 1000);
});
