import { describe, expect, test } from 'vitest';
import { cholesky, choleskyInverse, choleskySolve, invert } from './dense.ts';
import { solveDense } from './elimination.test-data.ts';

const hilbert = (n: number) => Float64Array.from({ length: n * n }, (_, k) => 1 / (Math.floor(k / n) + (k % n) + 1));

// Inverse of the Hilbert matrix of order 3 in whole numbers (OEIS A189765; M.-D. Choi, Amer. Math. Monthly 90 (1983) 301–312).
const inverseHilbert3 = [9, -36, 30, -36, 192, -180, 30, -180, 180];

describe('Hilbert matrix of order 3', () => {
  test('its inverse by Cholesky is the whole-number one, and symmetric to the last bit', () => {
    const inverse = choleskyInverse(cholesky(hilbert(3), 3)!, 3);
    inverse.forEach((entry, k) => {
      expect(entry / inverseHilbert3[k]).toBeCloseTo(1, 12);
    });
    expect(inverse[1]).toBe(inverse[3]);
    expect(inverse[5]).toBe(inverse[7]);
  });

  test('elimination solves for its first column', () => {
    const x = solveDense(hilbert(3), Float64Array.of(1, 0, 0), 3)!;
    x.forEach((entry, k) => {
      expect(entry / inverseHilbert3[3 * k]).toBeCloseTo(1, 12);
    });
  });
});

describe.each([1e-12, 1, 1e12])('scaled by %s', (scale) => {
  test('an ill-conditioned system leaves a residual of rounding size', () => {
    const n = 8;
    const matrix = hilbert(n).map((entry) => entry * scale);
    const b = Float64Array.from({ length: n }, (_, i) => Math.cos(i));
    for (const x of [solveDense(matrix, b, n)!, choleskySolve(cholesky(matrix, n)!, b, n)]) {
      const size = x.reduce((most, entry) => Math.max(most, Math.abs(entry)), 0) * scale;
      for (let i = 0; i < n; i++) {
        let residual = b[i];
        for (let j = 0; j < n; j++) residual -= matrix[i * n + j] * x[j];
        expect(Math.abs(residual)).toBeLessThan(16 * n * Number.EPSILON * size);
      }
    }
  });

  test('a zero on the diagonal needs a pivot, and rows of different size need scaling', () => {
    // 1e-10·x + 1e10·y = 1e10 and x + y = 2: x = y = 1 within 1e-20; then rows exchanged: 0·x + 2·y = 4, 3·x + 1·y = 5 gives x = 1, y = 2.
    const tilted = solveDense(
      Float64Array.of(1e-10, 1e10, 1, 1).map((a) => a * scale),
      Float64Array.of(1e10 * scale, 2 * scale),
      2,
    )!;
    expect(tilted[0]).toBeCloseTo(1, 14);
    expect(tilted[1]).toBeCloseTo(1, 14);
    const x = solveDense(
      Float64Array.of(0, 2, 3, 1).map((a) => a * scale),
      Float64Array.of(4 * scale, 5 * scale),
      2,
    )!;
    expect(x[0]).toBeCloseTo(1, 14);
    expect(x[1]).toBeCloseTo(2, 14);
  });
});

// By hand: the rows have to be exchanged, and 1·4 − 2·3 = −2.
test('a matrix that is not symmetric is inverted, rows exchanged where a pivot is zero', () => {
  expect([...invert(Float64Array.of(1, 2, 3, 4), 2)!]).toEqual([-2, 1, 1.5, -0.5].map((a) => expect.closeTo(a, 14)));
  expect([...invert(Float64Array.of(0, 2, 4, 0), 2)!]).toEqual([0, 0.25, 0.5, 0]);
  expect([...invert(hilbert(3), 3)!]).toEqual(inverseHilbert3.map((a) => expect.closeTo(a, 9)));
  expect(invert(Float64Array.of(1, 2, 2, 4), 2)).toBeNull();
  expect(invert(Float64Array.of(1, Number.NaN, 2, 4), 2)).toBeNull();
});

test('a singular matrix, and one that is not positive definite, have no answer', () => {
  expect(solveDense(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1), 2)).toBeNull();
  expect(solveDense(Float64Array.of(Number.NaN, 2, 2, 4), Float64Array.of(1, 1), 2)).toBeNull();
  expect(cholesky(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
  expect(cholesky(Float64Array.of(1, 1, 1, 1), 2)).toBeNull();
  // 0.3²/0.1 is 0.9; in doubles 1e-16 is left over.
  expect(cholesky(Float64Array.of(0.1, 0.3, 0.3, 0.9), 2)).toBeNull();
});
