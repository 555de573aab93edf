import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import { monteCarlo } from './monte-carlo.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_102;

test(`for a linear model the drawn uncertainty is the first-order one, whatever the scale (seed ${SEED})`, () => {
  const slope = fc.integer({ min: -300, max: 300 }).map((hundredths) => hundredths / 100);
  fc.assert(
    fc.property(slope, slope, slope, fc.integer({ min: -9, max: 9 }), (a, b, c, exponent) => {
      const scale = 10 ** exponent;
      const model = exampleModel({
        inputs: { p: [1, normal(0.1)], q: [2, rectangle(2, 0.2)], r: [3, normal(0.05)] },
        outputs: { y: ([p, q, r]) => scale * (a * p + b * q + c * r) },
      });
      const { u } = budget(model, 'y', sensitivities(model))!;
      const sample = monteCarlo(model, { samples: 2048, seed: SEED }).outputs.get('y')!;
      // Independent draws would know the mean to u/√2048 and u itself to u/√4096 (1.6 %); these are more even than that.
      expect(Math.abs(sample.mean - scale * (a + 2 * b + 3 * c))).toBeLessThanOrEqual(0.02 * u + 1e-14 * scale);
      expect(Math.abs(sample.u - u)).toBeLessThanOrEqual(0.03 * u + 1e-14 * scale);
    }),
    { seed: SEED, numRuns: 50 },
  );
});

test('a log-normal input keeps its median and its logarithmic spread', () => {
  const model = exampleModel({
    inputs: { a: [4, logNormal(0.5)] },
    outputs: { a: ([a]) => a, log: ([a]) => Math.log(a) },
  });
  const { outputs } = monteCarlo(model, { samples: 4096, seed: SEED });
  expect(outputs.get('log')!.mean).toBeCloseTo(Math.log(4), 2);
  expect(outputs.get('log')!.u).toBeCloseTo(0.5, 2);
  // Closed form for a log-normal number: mean = median·exp(σ²/2).
  expect(outputs.get('a')!.mean).toBeCloseTo(4 * Math.exp(0.125), 1);
});

describe('the same input at another step', () => {
  const first = exampleModel({ inputs: { a: [1, normal(1)], b: [2, normal(1)] }, outputs: { a: ([a]) => a } });
  const second = exampleModel({ inputs: { c: [5, normal(1)], a: [1, normal(1)] }, outputs: { a: ([, a]) => a } });
  const dimensions = ['a', 'b', 'c'];
  const options = { samples: 1000, seed: SEED, dimensions: 3, dimensionOf: (id: string) => dimensions.indexOf(id) };

  test('has the same draws', () => {
    const values = [first, second].map((model) => monteCarlo(model, options).outputs.get('a')!.values);
    expect(values[0]).toEqual(values[1]);
  });

  test('and other draws under another seed', () => {
    const values = [1, 2].map((seed) => monteCarlo(first, { ...options, seed }).outputs.get('a')!.values);
    expect(values[0]).not.toEqual(values[1]);
  });
});

describe('draws without a solution', () => {
  const model = exampleModel({
    inputs: { a: [0, normal(1)] },
    outputs: { margin: () => 5, other: ([a]) => a, limit: () => 1 },
    margins: { margin: 'other' },
    ending: ([a]) => (a > 1 ? 'runaway' : 'solved'),
  });

  test('are reported, and exceed every limit', () => {
    const run = monteCarlo(model, { samples: 10_000, seed: SEED });
    const margin = run.outputs.get('margin')!;
    // 1 − Φ(1) = 0.158655 (Abramowitz & Stegun, table 26.1).
    expect(run.endings.runaway / run.samples).toBeCloseTo(0.158655, 2);
    expect(run.endings.solved + run.endings.runaway).toBe(run.samples);
    expect(margin.below(0).probability).toBe(run.endings.runaway / run.samples);
    expect(margin.lost).toBe(run.endings.runaway);
  });
});

test('correlated inputs are drawn with their covariance, a logarithmic one in its logarithm', () => {
  const joint: Joint = {
    ids: ['a', 'b', 'elsewhere'],
    mean: Float64Array.of(1, Math.log(2), 0),
    covariance: Float64Array.of(0.04, 0.018, 0, 0.018, 0.09, 0, 0, 0, 1),
    logarithmic: [false, true, false],
  };
  const model = exampleModel({
    inputs: { b: [2, logNormal(0.3)], c: [0, normal(1)], a: [1, normal(0.2)] },
    outputs: { a: ([, , a]) => a, log: ([b]) => Math.log(b), sum: ([b, c, a]) => a + Math.log(b) + c },
  });
  const { outputs } = monteCarlo(model, { samples: 8192, seed: SEED, joint });
  expect(outputs.get('a')!.mean).toBeCloseTo(1, 2);
  expect(outputs.get('a')!.u).toBeCloseTo(0.2, 2);
  expect(outputs.get('log')!.mean).toBeCloseTo(Math.log(2), 2);
  expect(outputs.get('log')!.u).toBeCloseTo(0.3, 2);
  // Variances add, with twice the covariance.
  expect(outputs.get('sum')!.u).toBeCloseTo(Math.sqrt(0.04 + 0.09 + 2 * 0.018 + 1), 1);
});

test('two inputs that a fit has tied together completely are drawn as one', () => {
  const inputs = { a: [0, normal(1)], b: [0, normal(1)] } as const;
  const model = exampleModel({ inputs, outputs: { a: ([a]) => a, difference: ([a, b]) => a - b } });
  const joint = {
    ids: ['a', 'b'],
    mean: new Float64Array(2),
    covariance: Float64Array.of(1, 1, 1, 1),
    logarithmic: [false, false],
  };
  const { outputs } = monteCarlo(model, { samples: 1000, seed: SEED, joint });
  expect(outputs.get('a')!.u).toBeCloseTo(1, 1);
  expect(outputs.get('difference')!.u).toBeLessThan(1e-4);
  expect(() =>
    monteCarlo(model, { samples: 10, seed: 1, joint: { ...joint, covariance: Float64Array.of(1, 2, 2, 1) } }),
  ).toThrow('no covariance: a, b');
});

test('a run is reported on and can be ended early with what it has', () => {
  const model = exampleModel({ inputs: { a: [0, normal(1)] }, outputs: { a: ([a]) => a } });
  const seen: number[] = [];
  const run = monteCarlo(model, {
    samples: 5000,
    seed: SEED,
    progress: (done) => seen.push(done),
    cancelled: () => seen.length === 3,
  });
  expect(run.cancelled).toBe(true);
  expect(run.samples).toBe(seen[2]);
  expect(run.outputs.get('a')!.values.length).toBe(run.samples);
});

test('only the outputs asked for are kept', () => {
  const model = exampleModel({ inputs: { a: [0, normal(1)] }, outputs: { a: ([a]) => a, b: ([a]) => a } });
  expect([...monteCarlo(model, { samples: 10, seed: 1, outputs: ['b'] }).outputs.keys()]).toEqual(['b']);
});
