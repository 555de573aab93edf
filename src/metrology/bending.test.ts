import { describe, expect, test } from 'vitest';
import { bending } from './bending.ts';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import { type FitProblem, fit as fitInputs } from './fit.ts';
import { posteriorSample } from './posterior-sample.ts';

const SEED = 20_261_125;
const sampled = (problem: FitProblem, samples = 20_000) =>
  posteriorSample(problem, fitInputs(problem), { seed: SEED, samples });

describe('a straight model', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(1)], b: [2, normal(0.5)] },
    outputs: { sum: ([a, b]) => a + b },
  });
  const problem = {
    inputs: model.inputs,
    observations: [{ id: 'sum', model, output: 'sum', value: 4, u: 0.1 }],
  };

  test('does not bend', () => {
    expect(bending(problem, fitInputs(problem))).toEqual([]);
  });

  test(`has the fitted normal distribution as its posterior (seed ${SEED})`, () => {
    const { inputs, effective, accepted } = sampled(problem);
    expect(accepted).toBeGreaterThan(0.3);
    expect(effective).toBeGreaterThan(2000);
    for (const { id, value, u } of fitInputs(problem).inputs) {
      const { mean, u: spread } = inputs.get(id)!;
      expect(Math.abs(mean - value) / u).toBeLessThan(0.1);
      expect(spread / u).toBeCloseTo(1, 1);
    }
  });
});

describe('a bent model', () => {
  const model = exampleModel({ inputs: { a: [0.2, normal(1)] }, outputs: { square: ([a]) => a * a } });
  const problem = {
    inputs: model.inputs,
    observations: [{ id: 'square', model, output: 'square', value: 0.5, u: 0.5 }],
  };
  // The posterior itself, integrated on a grid.
  const grid = Array.from({ length: 16_000 }, (_, k) => -4 + (k + 0.5) * 5e-4);
  const density = grid.map((a) => Math.exp(-0.5 * (((0.5 - a * a) / 0.5) ** 2 + (a - 0.2) ** 2)));
  const total = density.reduce((sum, each) => sum + each, 0);
  const quantile = (p: number) => {
    let sum = 0;
    let k = 0;
    while (sum < p * total) sum += density[k++];
    return grid[k];
  };

  test('is named, with the side that is wider', () => {
    const [bend] = bending(problem, fitInputs(problem));
    expect(bend.id).toBe('a');
    expect(bend.low).toBeGreaterThan(1.5);
    expect(bend.high).toBeLessThan(1);
  });

  test(`has its own interval, two-humped as it is (seed ${SEED})`, () => {
    const { inputs } = sampled(problem, 200_000);
    const { low, high } = inputs.get('a')!.interval(0.95);
    expect(Math.abs(low - quantile(0.025))).toBeLessThan(0.1);
    expect(Math.abs(high - quantile(0.975))).toBeLessThan(0.1);
    const mean = grid.reduce((sum, a, k) => sum + (a * density[k]) / total, 0);
    expect(Math.abs(inputs.get('a')!.mean - mean)).toBeLessThan(0.05);
    const [fitted] = fitInputs(problem).inputs;
    expect(fitted.value - 1.96 * fitted.u).toBeGreaterThan(low + 0.5);
  });
});

test('along a curved ridge the others follow: a first look suspects, the profile decides', () => {
  // a·b is known well, a and b each to their stated uncertainty only; the ridge is a hyperbola.
  const model = exampleModel({
    inputs: { a: [2, normal(0.05)], b: [2, normal(0.05)] },
    outputs: { product: ([a, b]) => a * b },
  });
  const problem = (u: number) => ({
    inputs: model.inputs,
    observations: [{ id: 'product', model, output: 'product', value: 4, u }],
  });
  // Off the ridge by δ²/2 = (2·0.035)²: 0.005, ten times the uncertainty of 0.0005, and yet a alone has what its profile says.
  expect(bending(problem(5e-4), fitInputs(problem(5e-4)))).toEqual([]);
});

test(`a rectangle that says nothing new stays a rectangle (seed ${SEED})`, () => {
  const model = exampleModel({
    inputs: { a: [0, rectangle(0, 1)], b: [0, normal(1)] },
    outputs: { b: ([, b]) => b },
  });
  const { inputs } = sampled({
    inputs: model.inputs,
    observations: [{ id: 'b', model, output: 'b', value: 0, u: 1 }],
  });
  const { values, u } = inputs.get('a')!;
  expect(Math.max(...values)).toBeLessThanOrEqual(Math.sqrt(3));
  expect(Math.max(...values)).toBeGreaterThan(1.7);
  expect(u).toBeCloseTo(1, 1);
});

test('a fit without a result has no posterior', () => {
  const model = exampleModel({ inputs: { a: [1, normal(1)] }, outputs: { a: ([a]) => a }, ending: () => 'runaway' });
  const problem = { inputs: model.inputs, observations: [{ id: 'a', model, output: 'a', value: 1, u: 1 }] };
  expect(() => sampled(problem)).toThrow('a fit without a result has no posterior');
});
