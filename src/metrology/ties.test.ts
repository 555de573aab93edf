import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';
import type { Model } from './model.ts';
import { monteCarlo } from './monte-carlo.ts';
import { withPosterior } from './posterior.ts';
import { sensitivities } from './sensitivity.ts';
import { correlationFactor, type Shared, type StatedCorrelation, tiesOf } from './ties.ts';

const seed = 20_261_125;

function tied(model: Model, shared: readonly Shared[], correlations: readonly StatedCorrelation[]): Model {
  const ties = tiesOf(model.inputs, shared, correlations);
  return { ...model, evaluate: (x, y) => model.evaluate(ties ? ties.apply(x) : x, y) };
}

const sum = (x: Float64Array) => x[0] + x[1];
const u = (model: Model, output: string) => budget(model, output, sensitivities(model))!.u;

describe('two resistors measured with one reference', () => {
  const resistors = (a: number, b: number, c1: number, c2: number, ofReference: number) =>
    tied(
      exampleModel({
        inputs: { a: [a, null], b: [b, null], reference: [1, normal(ofReference)] },
        outputs: { sum: (x) => c1 * x[0] + c2 * x[1] },
      }),
      [{ input: 'reference', enters: 'factor', of: ['a', 'b'] }],
      [],
    );

  // GUM 5.2.2, note 1: with correlations of +1 the combined uncertainty is the sum of the contributions, (c₁·a + c₂·b)²·u².
  test(`their contributions add up, or cancel (seed ${seed})`, () => {
    const any = fc.double({ min: -10, max: 10, noNaN: true });
    const size = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(size, size, any, any, fc.double({ min: 1e-6, max: 0.1, noNaN: true }), (a, b, c1, c2, u0) => {
        const expected = Math.abs(c1 * a + c2 * b) * u0;
        expect(Math.abs(u(resistors(a, b, c1, c2, u0), 'sum') - expected)).toBeLessThan(1e-9 * u0 * 100);
      }),
      { seed, numRuns: 300 },
    );
  });

  test('in a Monte Carlo run as well', () => {
    const run = monteCarlo(resistors(3, 5, 1, 1, 0.01), { samples: 4096, seed });
    expect(run.outputs.get('sum')!.u! / 0.08).toBeCloseTo(1, 2);
  });

  test('their difference has no uncertainty when they are equal', () => {
    expect(u(resistors(4, 4, 1, -1, 0.01), 'sum')).toBeLessThan(1e-12);
  });

  test('an offset enters each of them alike', () => {
    const model = exampleModel({
      inputs: { a: [3, normal(0.3)], b: [5, normal(0.4)], zero: [0, normal(1)] },
      outputs: { sum, difference: (x) => x[0] - x[1] },
    });
    const both = tied(model, [{ input: 'zero', enters: 'offset', of: ['a', 'b', 'not there'] }], []);
    expect(u(both, 'sum')).toBeCloseTo(Math.sqrt(0.25 + 4), 12);
    expect(u(both, 'difference')).toBeCloseTo(0.5, 12);
  });
});

describe('stated correlations', () => {
  const pair = (coefficient: number, spreads = [normal(0.3), normal(0.4)]) =>
    tied(
      exampleModel({
        inputs: { a: [3, spreads[0]], b: [5, spreads[1]] },
        outputs: { a: (x) => x[0], b: (x) => x[1], sum, difference: (x) => x[0] - x[1] },
      }),
      [],
      [{ between: ['a', 'b'], coefficient }],
    );

  // GUM 5.2.2, equation 16: u² = u₁² + u₂² ± 2·u₁·u₂·r.
  test.each([-1, -0.7, 0, 0.2, 0.9, 1])('of %s', (r) => {
    expect(u(pair(r), 'sum')).toBeCloseTo(Math.sqrt(0.25 + 0.24 * r), 9);
    expect(u(pair(r), 'difference')).toBeCloseTo(Math.sqrt(0.25 - 0.24 * r), 9);
    const run = monteCarlo(pair(r, [rectangle(3, 0.3), rectangle(5, 0.4)]), { samples: 2 ** 13, seed });
    const variance = (id: string) => run.outputs.get(id)!.u! ** 2;
    expect(variance('a')).toBeCloseTo(0.09, 3);
    expect(variance('b')).toBeCloseTo(0.16, 3);
    expect(variance('sum')).toBeCloseTo(0.25 + 0.24 * r, 3);
  });

  test('log-normal numbers are correlated in their logarithms, and stay positive', () => {
    const model = tied(
      exampleModel({
        inputs: { a: [3, logNormal(0.5)], b: [5, logNormal(0.3)] },
        outputs: { b: (x) => x[1], logs: (x) => Math.log(x[0] * x[1]) },
      }),
      [],
      [{ between: ['a', 'b'], coefficient: -0.8 }],
    );
    const run = monteCarlo(model, { samples: 2 ** 13, seed });
    expect(run.endings.solved).toBe(2 ** 13);
    expect(run.outputs.get('logs')!.mean).toBeCloseTo(Math.log(15), 3);
    expect(run.outputs.get('logs')!.u).toBeCloseTo(Math.sqrt(0.25 + 0.09 - 2 * 0.8 * 0.15), 3);
    expect(run.outputs.get('b')!.mean).toBeCloseTo(5 * Math.exp(0.045), 2);
  });

  // The conditional distribution of a joint normal one: var(a | b + noise) = u_a²·(1 − r²·u_b²/(u_b² + u_n²)), its mean moved by r·u_a·u_b/(u_b² + u_n²).
  test('a fit learns about one of them from what is measured of the other', () => {
    const [r, noise] = [0.9, 0.2];
    const model = pair(r);
    const result = fitInputs({
      inputs: model.inputs,
      observations: [{ id: 'b', model, output: 'b', value: 5.5, u: noise }],
    });
    const after = withPosterior(model, result);
    const sens = sensitivities(after);
    const known = budget(after, 'a', sens, result.joint)!;
    const gain = 0.16 / (0.16 + noise ** 2);
    expect(known.u).toBeCloseTo(0.3 * Math.sqrt(1 - r * r * gain), 6);
    expect(sens.y0[0]).toBeCloseTo(3 + (0.5 * r * 0.3 * 0.4) / (0.16 + noise ** 2), 6);
  });

  test('three numbers with one another', () => {
    const all: StatedCorrelation[] = [
      { between: ['a', 'b'], coefficient: 0.9 },
      { between: ['c', 'b'], coefficient: 0.8 },
      { between: ['a', 'c'], coefficient: 0.7 },
    ];
    const model = exampleModel({
      inputs: { a: [1, normal(1)], b: [1, normal(2)], c: [1, normal(3)] },
      outputs: { y: (x) => x[0] - x[1] + 2 * x[2] },
    });
    const variance = 1 + 4 + 36 - 2 * 2 * 0.9 + 2 * 6 * 0.7 - 2 * 12 * 0.8;
    expect(u(tied(model, [], all), 'y')).toBeCloseTo(Math.sqrt(variance), 9);
  });

  test('that contradict each other are none', () => {
    const of = (ab: number, bc: number, ac: number) =>
      correlationFactor(
        ['a', 'b', 'c'],
        [
          { between: ['a', 'b'], coefficient: ab },
          { between: ['b', 'c'], coefficient: bc },
          { between: ['a', 'c'], coefficient: ac },
        ],
      );
    expect(of(0.9, 0.9, 0)).toBeNull();
    expect(of(1, 1, 0.5)).toBeNull();
    expect(of(1, 1, 1)).not.toBeNull();
    expect(of(-1, -1, 1)).not.toBeNull();
    expect(of(-1, -1, -1)).toBeNull();
  });

  test('nothing in common is nothing to do', () => {
    const { inputs } = pair(0);
    expect(tiesOf(inputs, [], [])).toBeNull();
    expect(
      tiesOf(inputs, [{ input: 'gone', enters: 'factor', of: ['a'] }], [{ between: ['a', 'gone'], coefficient: 1 }]),
    ).toBeNull();
  });
});
