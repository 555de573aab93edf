import { expect, test } from 'vitest';
import { randomStream, xoshiro } from './random.ts';

// Values of the authors' C program as the Rust package rand_xoshiro holds them (0.7.0, xoshiro128starstar.rs, test `reference`). The first two by hand:
// rotl(2·5, 7)·9 = 1280·9 = 11520, and the second word of the next state is 0.
test('the published sequence from the state 1, 2, 3, 4', () => {
  const stream = xoshiro(1, 2, 3, 4);
  expect(Array.from({ length: 10 }, () => stream.next())).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test('the same seed gives the same numbers, a neighbouring one others', () => {
  const draw = (seed: number) => {
    const stream = randomStream(seed);
    return Array.from({ length: 5 }, () => stream.next());
  };
  expect(draw(1)).toEqual(draw(1));
  expect(draw(1).filter((value) => draw(2).includes(value))).toEqual([]);
});

test('normal numbers have the moments of the normal distribution (seed 20261125)', () => {
  const stream = randomStream(20_261_125);
  const n = 200_000;
  const moments = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const z = stream.normal();
    for (let k = 0; k < 4; k++) moments[k] += z ** (k + 1) / n;
  }
  // Five standard errors: the variance of the k-th moment is (E z^2k − (E z^k)²)/n, with E z² = 1, E z⁴ = 3, E z⁶ = 15, E z⁸ = 105.
  expect(Math.abs(moments[0])).toBeLessThan(5 * Math.sqrt(1 / n));
  expect(Math.abs(moments[1] - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
  expect(Math.abs(moments[2])).toBeLessThan(5 * Math.sqrt(15 / n));
  expect(Math.abs(moments[3] - 3)).toBeLessThan(5 * Math.sqrt(96 / n));
});

test('uniform numbers fill 1000 boxes evenly and never touch an end (seed 7)', () => {
  const stream = randomStream(7);
  const boxes = new Float64Array(1000);
  for (let i = 0; i < 1_000_000; i++) {
    const x = stream.uniform();
    if (!(x > 0 && x < 1)) throw new Error(String(x));
    boxes[Math.floor(1000 * x)]++;
  }
  const chiSquare = boxes.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  // Chi-square with 999 degrees of freedom: mean 999, standard deviation √1998 = 44.7; five of them.
  expect(Math.abs(chiSquare - 999)).toBeLessThan(224);
});
