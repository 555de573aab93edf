import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findRoot } from './root.ts';

const seed = 20_261_125;

// Published zeros: the fixed point of cosine, 0.739085133215160641… (OEIS A003957), and Wallis's cubic
// x³ − 2x − 5, zero 2.094551481542326591… (OEIS A007493).
test.each<[string, (x: number) => number, number, number, number]>([
  ['cos x = x', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  ['x³ − 2x − 5', (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
  ['x³ − 2x − 5 with the ends exchanged', (x) => x ** 3 - 2 * x - 5, 3, 2, 2.0945514815423265],
  ['exp x = 2, far ends', (x) => Math.exp(x) - 2, -700, 700, Math.LN2],
  ['at an end', (x) => x, 0, 5, 0],
])('%s', (_, f, low, high, root) => {
  const found = findRoot(f, low, high);
  expect(found.ending).toBe('solved');
  expect(found.x).toBeCloseTo(root, 14);
  expect(found.residual).toBe(f(found.x));
});

test('a flat zero of ninth order ends by bisection within its passes', () => {
  const found = findRoot((x) => (x - 0.3) ** 9, -1, 1.7, 1e-9);
  expect(found.ending).toBe('solved');
  expect(Math.abs(found.x - 0.3)).toBeLessThan(1e-9);
});

test('a smooth function takes a handful of evaluations', () => {
  expect(findRoot((x) => Math.cos(x) - x, 0, 1).passes).toBeLessThan(12);
});

test('no change of sign, and no number, are results that say so', () => {
  expect(findRoot((x) => x * x + 1, -1, 1).ending).toBe('no-bracket');
  expect(findRoot(() => Number.NaN, -1, 1).ending).toBe('no-bracket');
  expect(findRoot((x) => (Math.abs(x) === 1 ? x : Number.NaN), -1, 1).ending).toBe('unsettled');
  expect(findRoot((x) => Math.exp(x) - 1.1, -1, 1, 0, 3)).toMatchObject({ ending: 'unsettled', passes: 3 });
});

test(`monotone functions at any scale: the sign changes within the tolerance around the root (seed ${seed})`, () => {
  const scale = fc.double({ min: -12, max: 12, noNaN: true });
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      scale,
      scale,
      fc.integer({ min: 0, max: 4 }),
      (root, x, y, power) => {
        const size = 10 ** x;
        const f = (z: number) => 10 ** y * ((z / size) ** (2 * power + 1) - root ** (2 * power + 1));
        const tolerance = 1e-12 * size;
        const found = findRoot(f, -size, size, tolerance);
        expect(found.ending).toBe('solved');
        expect(f(found.x - tolerance)).toBeLessThanOrEqual(0);
        expect(f(found.x + tolerance)).toBeGreaterThanOrEqual(0);
      },
    ),
    { seed, numRuns: 300 },
  );
});
