import { describe, expect, test } from 'vitest';
import { sobol } from './sobol.ts';

const half = 2 ** -33;

function columnOf(dimension: number, length: number, seed: number | null, dimensions = 600): Float64Array {
  const out = new Float64Array(length);
  sobol(dimensions, seed).column(dimension, 0, out);
  return out;
}

describe('unscrambled, the sequence is the published one', () => {
  // Points 8 to 15 with the Joe–Kuo numbers of 2008, from scipy 1.17.1, qmc.Sobol(512, scramble=False); dimension counted from 0.
  test.each<[number, number[]]>([
    [0, [0.1875, 0.6875, 0.9375, 0.4375, 0.3125, 0.8125, 0.5625, 0.0625]],
    [1, [0.3125, 0.8125, 0.0625, 0.5625, 0.1875, 0.6875, 0.4375, 0.9375]],
    [2, [0.9375, 0.4375, 0.6875, 0.1875, 0.3125, 0.8125, 0.0625, 0.5625]],
    [3, [0.4375, 0.9375, 0.1875, 0.6875, 0.5625, 0.0625, 0.8125, 0.3125]],
    [50, [0.5625, 0.0625, 0.8125, 0.3125, 0.6875, 0.1875, 0.9375, 0.4375]],
    [199, [0.0625, 0.5625, 0.3125, 0.8125, 0.9375, 0.4375, 0.6875, 0.1875]],
  ])('dimension %s', (dimension, points) => {
    expect(Array.from(columnOf(dimension, 16, null).slice(8), (x) => x - half)).toEqual(points);
  });

  // Point 1000 of the same source, times 1024.
  test.each([
    [0, 225],
    [1, 99],
    [2, 531],
    [3, 693],
    [7, 921],
    [50, 361],
    [100, 787],
    [199, 863],
    [511, 405],
  ])('point 1000 in dimension %s', (dimension, expected) => {
    expect((columnOf(dimension, 1001, null)[1000] - half) * 1024).toBe(expected);
  });
});

// The defining property of the base-2 sequence in one dimension (Sobol' 1967): the first 2^k points lie one in each interval of length 2^-k.
// Nested scrambling keeps it (A. B. Owen, "Randomly permuted (t,m,s)-nets and (t,s)-sequences", 1995). Dimension 550 is beyond the table.
describe.each([null, 1, 20_261_125])('seed %s', (seed) => {
  test.each([0, 1, 2, 17, 199, 511, 550])(
    'dimension %s: one point in each interval, at every power of two',
    (dimension) => {
      const points = columnOf(dimension, 4096, seed);
      for (let k = 0; k <= 12; k++) {
        const length = 2 ** k;
        expect(new Set(points.subarray(0, length).map((x) => Math.floor(x * length))).size).toBe(length);
      }
    },
  );

  // Dimensions 1 and 2 form a (0, m, 2)-net: every box of area 2^-m with sides of powers of two holds one of the first 2^m points.
  test('the first two dimensions together: one point in each box', () => {
    const [a, b] = [columnOf(0, 1024, seed), columnOf(1, 1024, seed)];
    for (let k = 0; k <= 10; k++) {
      const boxes = new Set(Array.from(a, (x, i) => Math.floor(x * 2 ** k) * 1024 + Math.floor(b[i] * 2 ** (10 - k))));
      expect(boxes.size).toBe(1024);
    }
  });
});

test('the same seed gives the same points, another seed others, and every value lies between 0 and 1', () => {
  expect(columnOf(5, 1000, 3)).toEqual(columnOf(5, 1000, 3));
  const [first, second] = [columnOf(5, 1000, 3), columnOf(5, 1000, 4)];
  expect(first.filter((x, i) => x === second[i]).length).toBeLessThan(3);
  expect(first.every((x) => x > 0 && x < 1)).toBe(true);
});

test('a point, a column and a column that begins later agree', () => {
  const sequence = sobol(600, 11);
  const point = new Float64Array(600);
  sequence.at(1234, point);
  for (const dimension of [0, 7, 300, 599]) {
    const later = new Float64Array(10);
    sequence.column(dimension, 1230, later);
    expect(later[4]).toBe(point[dimension]);
    expect(columnOf(dimension, 1235, 11)[1234]).toBe(point[dimension]);
  }
  expect(() => sequence.column(600, 0, new Float64Array(1))).toThrow('600');
});

// Independent points have |correlation| about 1/√n = 0.016 for 4096; a padded dimension must not repeat the one whose numbers it borrows.
test('no two of the dimensions tried resemble each other', () => {
  const columns = [0, 1, 2, 40, 41, 511, 512, 513, 552, 553].map((dimension) => columnOf(dimension, 4096, 9));
  columns.forEach((a, i) => {
    for (const b of columns.slice(i + 1)) {
      const correlation = (12 * a.reduce((sum, x, k) => sum + (x - 0.5) * (b[k] - 0.5), 0)) / a.length;
      expect(Math.abs(correlation)).toBeLessThan(0.07);
    }
  });
});

// Error of the mean of a smooth product function in 6 dimensions, whose integral is exactly 1: the reason for the sequence is that it beats 1/√n by far.
test('a smooth integral over 6 dimensions is met to a tenth of what independent draws would give', () => {
  const n = 4096;
  const columns = Array.from({ length: 6 }, (_, d) => columnOf(d, n, 5));
  let sum = 0;
  for (let i = 0; i < n; i++) sum += columns.reduce((product, column) => product * (1 + (column[i] - 0.5)), 1);
  // Variance of the product: (1 + 1/12)^6 − 1 = 0.6165.
  expect(Math.abs(sum / n - 1)).toBeLessThan(0.1 * Math.sqrt(0.6165 / n));
});

// Over the scramblings each point is uniform (Owen, 1995): mean 1/2, variance 1/12. Five standard errors are passed once in 1.7 million.
test('over the seeds, one point is uniform and independent of the next seed, and of other dimensions within the table and beyond', () => {
  const seeds = 4096;
  const drawn = (dimension: number, firstSeed: number) => {
    const one = new Float64Array(1);
    return Float64Array.from({ length: seeds }, (_, k) => {
      sobol(600, firstSeed + k).column(dimension, 12, one);
      return one[0] - 0.5;
    });
  };
  const point = drawn(3, 0);
  const mean = (values: Float64Array) => values.reduce((sum, x) => sum + x, 0) / seeds;
  expect(Math.abs(mean(point))).toBeLessThan(5 / Math.sqrt(12 * seeds));
  // (x − 1/2)² of a uniform x has the variance 1/180.
  expect(Math.abs(mean(point.map((x) => x * x)) - 1 / 12)).toBeLessThan(5 / Math.sqrt(180 * seeds));
  for (const other of [drawn(3, 1), drawn(4, 0), drawn(515, 0)])
    expect(Math.abs(12 * mean(point.map((x, k) => x * other[k])))).toBeLessThan(5 / Math.sqrt(seeds));
});

// Independent draws miss by n^-1/2, scrambled nets of a smooth function by up to n^-3/2
// (A. B. Owen, "Scrambled net variance for integrals of smooth functions", Ann. Statist. 25 (1997) 1541–1562).
test('the error of an integral falls faster than 1/√n', () => {
  const error = (n: number): number => {
    let squares = 0;
    for (let seed = 1; seed <= 16; seed++) {
      const product = new Float64Array(n).fill(1);
      for (let d = 0; d < 5; d++) {
        const x = columnOf(d, n, seed);
        for (let i = 0; i < n; i++) product[i] *= 1 + (x[i] - 0.5);
      }
      squares += (product.reduce((sum, value) => sum + value, 0) / n - 1) ** 2;
    }
    return Math.sqrt(squares / 16);
  };
  expect(Math.log(error(2 ** 13) / error(2 ** 7)) / Math.log(2 ** 6)).toBeLessThan(-1);
});

// Beyond the table each dimension is stratified by itself and padded to the others at random (Burley, 2020): no worse than independent draws.
test('integrals over dimensions beyond the table are met as well as by independent draws', () => {
  const n = 4096;
  for (const seed of [1, 2, 3]) {
    const columns = [510, 511, 512, 513, 514].map((d) => columnOf(d, n, seed));
    let sum = 0;
    for (let i = 0; i < n; i++) sum += columns.reduce((product, column) => product * (1 + (column[i] - 0.5)), 1);
    // Variance of the product: (1 + 1/12)^5 − 1 = 0.492.
    expect(Math.abs(sum / n - 1)).toBeLessThan(3 * Math.sqrt(0.492 / n));
  }
});
