import { describe, expect, test } from 'vitest';
import { adaptiveMonteCarlo } from './adaptive-monte-carlo.ts';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import { monteCarlo } from './monte-carlo.ts';

const SEED = 20_261_126;
const sum = exampleModel({
  inputs: { a: [1, normal(1)], b: [2, rectangle(2, 1)], c: [3, normal(2)] },
  outputs: { y: ([a, b, c]) => a + b + c, square: ([a, b]) => a * a * b },
});

test(`ends when every figure asked for is accurate (seed ${SEED})`, () => {
  const run = adaptiveMonteCarlo(sum, { accurate: ['y', 'square'], seed: SEED });
  expect(run.ended).toBe('accurate');
  expect(run.blocks).toBeGreaterThanOrEqual(4);
  expect(run.samples).toBe(run.blocks * 4096);
  // u = √6 is written 2, so δ = 0.5, and a fifth of it; u of a²b: E(a⁴)·E(b²) − E(a²)²·E(b)² = 10·5 − 4·4 = 34, √34 is written 6.
  expect(run.accuracy.get('y')!.tolerance).toBeCloseTo(0.1, 12);
  expect(run.accuracy.get('square')!.tolerance).toBeCloseTo(0.1, 12);
  for (const { reached, tolerance } of run.accuracy.values()) expect(reached).toBeLessThanOrEqual(tolerance);
  expect(Math.abs(run.outputs.get('y')!.u - Math.sqrt(6))).toBeLessThan(0.1);
  expect(Math.abs(run.outputs.get('square')!.u - Math.sqrt(34))).toBeLessThan(0.1);
  expect(Math.abs(run.outputs.get('square')!.mean - 4)).toBeLessThan(0.1);
});

test('ends at the most draws, and says so', () => {
  const run = adaptiveMonteCarlo(sum, { accurate: ['y'], seed: SEED, block: 64, most: 700, part: 0.01 });
  expect(run).toMatchObject({ ended: 'most', blocks: 10, samples: 640 });
  const { reached, tolerance } = run.accuracy.get('y')!;
  expect(reached).toBeGreaterThan(tolerance);
});

test('the error it states is about the one it has: upper ends of a normal output in 60 runs', () => {
  const one = exampleModel({ inputs: { a: [0, normal(1)], b: [0, normal(1)] }, outputs: { y: ([a, b]) => a + b } });
  const errors = Array.from({ length: 60 }, (_, k) => {
    const run = adaptiveMonteCarlo(one, { accurate: ['y'], seed: SEED + k, block: 256, most: 256 * 10, part: 0 });
    const error = run.outputs.get('y')!.interval().high - 1.959963984540054 * Math.SQRT2;
    return error / (run.accuracy.get('y')!.reached / 2);
  });
  const size = Math.sqrt(errors.reduce((total, each) => total + each ** 2, 0) / errors.length);
  // The larger of both ends' errors is given, so what one end has is a little less.
  expect(size).toBeGreaterThan(0.5);
  expect(size).toBeLessThan(1.1);
});

test('blocks have draws of their own; the first is the plain run', () => {
  const run = adaptiveMonteCarlo(sum, { accurate: ['y'], seed: SEED, block: 256, most: 1024 });
  const values = run.outputs.get('y')!.values;
  const plain = monteCarlo(sum, { samples: 256, seed: SEED }).outputs.get('y')!.values;
  expect(values.slice(0, 256)).toEqual(plain);
  expect(run.firstBlock.outputs.get('y')!.values).toEqual(plain);
  expect(new Set(values).size).toBe(1024);
});

test('what is exact is accurate at once; what is not asked for keeps the first blocks', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { exact: () => 7, tail: ([a]) => Math.exp(2 * a), other: ([a]) => a },
  });
  expect(adaptiveMonteCarlo(model, { accurate: ['exact'], seed: SEED, block: 100 })).toMatchObject({
    ended: 'accurate',
    blocks: 4,
  });
  const long = adaptiveMonteCarlo(model, { accurate: ['tail'], seed: SEED, block: 100, most: 2000, part: 0.001 });
  expect(long.outputs.get('tail')!.values).toHaveLength(2000);
  expect(long.outputs.get('other')!.values).toHaveLength(400);
});

describe('a run with draws that have no solution', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { value: ([a]) => a, limit: () => 10, margin: ([a]) => 10 - a },
    margins: { margin: 'value' },
    ending: ([a]) => (a > 1 ? 'runaway' : 'solved'),
  });

  test('is never accurate where they leave the interval without an end', () => {
    const run = adaptiveMonteCarlo(model, { accurate: ['margin'], seed: SEED, block: 128, most: 1024 });
    expect(run.ended).toBe('most');
    expect(run.accuracy.get('margin')!.reached).toBe(Number.POSITIVE_INFINITY);
    // 1 − Φ(1) = 0.158655 (Abramowitz & Stegun, table 26.1).
    expect(run.endings.runaway / run.samples).toBeCloseTo(0.158655, 2);
    expect(run.endings.solved + run.endings.runaway).toBe(run.samples);
  });
});

test('cancelled, it ends with the blocks it has', () => {
  let seen = 0;
  const run = adaptiveMonteCarlo(sum, {
    accurate: ['y'],
    seed: SEED,
    block: 1024,
    progress: (done, total) => {
      seen = done;
      expect(total).toBe(200_000);
    },
    cancelled: () => seen >= 2048,
  });
  expect(run).toMatchObject({ ended: 'cancelled', cancelled: true, blocks: 2, samples: 2048 });
});
