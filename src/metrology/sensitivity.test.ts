import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_101;

test('sensitivities of smooth functions are their derivatives', () => {
  const model = exampleModel({
    inputs: { a: [2, normal(0.02)], b: [5, rectangle(5, 0.05)], c: [3, logNormal(0.01)], d: [7, null] },
    outputs: { power: ([a, b]) => a ** 3 * b, quotient: ([a, b, c, d]) => (a * d) / (b * c) },
  });
  const { ending, y0, c, u, bent } = sensitivities(model);
  expect(ending).toBe('solved');
  expect([...y0]).toEqual([40, 14 / 15]);
  // Calculus: ∂(a³b)/∂a = 3a²b = 60, ∂/∂b = a³ = 8; the step of u/8 leaves a³'s third derivative times (u/8)²/6.
  expect(c[0][0]).toBeCloseTo(60, 3);
  expect(c[0][1]).toBeCloseTo(8, 9);
  // ∂(ad/(bc))/∂a = d/(bc), /∂b = −ad/(b²c), /∂c = −ad/(bc²).
  expect(c[1][0]).toBeCloseTo(7 / 15, 9);
  expect(c[1][1]).toBeCloseTo(-14 / 75, 5);
  expect(c[1][2]).toBeCloseTo(-14 / 45, 5);
  expect(u[3]).toBe(0);
  expect(c[1][3]).toBe(0);
  expect(bent).toEqual([[], []]);
});

test(`the gradient of a linear model is exact whatever the scale of its inputs (seed ${SEED})`, () => {
  const number = fc.integer({ min: -500, max: 500 }).map((hundredths) => hundredths / 100);
  fc.assert(
    fc.property(number, number, fc.integer({ min: -12, max: 12 }), (slope, value, exponent) => {
      const scale = 10 ** exponent;
      const model = exampleModel({
        inputs: { a: [value * scale, normal(0.1 * scale)] },
        outputs: { y: ([a]) => slope * a },
      });
      const { c, bent } = sensitivities(model);
      expect(Math.abs(c[0][0] - slope)).toBeLessThan(1e-11 * (1 + Math.abs(slope)));
      expect(bent[0]).toEqual([]);
    }),
    { seed: SEED, numRuns: 200 },
  );
});

describe('what first order can not see is said', () => {
  const at = (value: number, y: (x: Float64Array) => number, spread = normal(1)) =>
    sensitivities(exampleModel({ inputs: { a: [value, spread] }, outputs: { y } })).bent[0];

  test('a kink at the point itself', () => {
    expect(at(0, ([a]) => Math.abs(a))).toEqual([0]);
    expect(at(0, ([a]) => Math.max(a, 0))).toEqual([0]);
  });

  test('a kink a third of an uncertainty away', () => {
    expect(at(1 / 3, ([a]) => Math.max(a, 0))).toEqual([0]);
  });

  test('strong curvature', () => {
    expect(at(0, ([a]) => a * a)).toEqual([0]);
    expect(at(100, ([a]) => a * a)).toEqual([]);
  });

  test('an input that matters little may bend', () => {
    const model = exampleModel({
      inputs: { a: [0, normal(0.01)], b: [0, normal(1)] },
      outputs: { y: ([a, b]) => Math.abs(a) + b },
    });
    expect(sensitivities(model).bent[0]).toEqual([]);
  });
});

test('a rectangle is never left', () => {
  const seen: number[] = [];
  const model = exampleModel({
    inputs: { a: [1, { shape: 'rectangular', low: 0.99, high: 1 }] },
    outputs: { y: ([a]) => 3 * a },
    ending: ([a]) => {
      seen.push(a);
      return 'solved';
    },
  });
  expect(sensitivities(model).c[0][0]).toBeCloseTo(3, 9);
  expect(Math.min(...seen)).toBeGreaterThanOrEqual(0.99);
  expect(Math.max(...seen)).toBe(1);
});

test('where the model has no solution on one side, the other side is used and the output is bent', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(0.1)] },
    outputs: { y: ([a]) => 3 * a },
    ending: ([a]) => (a > 1 ? 'runaway' : 'solved'),
  });
  const { ending, c, bent } = sensitivities(model);
  expect(ending).toBe('solved');
  expect(c[0][0]).toBeCloseTo(3, 9);
  expect(bent[0]).toEqual([0]);
});

test('without a solution at the point there are no sensitivities', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(0.1)] },
    outputs: { y: ([a]) => a },
    ending: () => 'infeasible',
  });
  const { ending, c, y0 } = sensitivities(model);
  expect(ending).toBe('infeasible');
  expect([c[0][0], y0[0]]).toEqual([Number.NaN, Number.NaN]);
});
