import { describe, expect, test } from 'vitest';
import { drawsOf } from './draws.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';

const DRAWS = 16_384;

/** Draws of the inputs of a model after a fit, by id. */
function drawn(model: ReturnType<typeof exampleModel>, output: string, value: number, u: number) {
  const fit = fitInputs({ inputs: model.inputs, observations: [{ id: 'reading', model, output, value, u }] });
  const draws = drawsOf(model, { seed: 4, joint: fit.joint }, DRAWS);
  draws.fill(0);
  const of = (id: string) => draws.columns[draws.inputs.indexOf(model.inputs.findIndex((input) => input.id === id))];
  return { fit, of };
}

const meanOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

function productOf(a: Float64Array, b: Float64Array): number {
  const [meanA, meanB] = [meanOf(a), meanOf(b)];
  return meanOf(a.map((value, s) => (value - meanA) * (b[s] - meanB)));
}

describe('draws of what a fit has learnt', () => {
  test('have the fit’s mean and covariance where everything is normal', () => {
    const model = exampleModel({
      inputs: { a: [1, normal(0.5)], b: [2, normal(0.4)], untouched: [3, normal(0.1)] },
      outputs: { sum: ([a, b]) => a + b },
    });
    const { fit, of } = drawn(model, 'sum', 3.5, 0.2);
    const { mean, covariance } = fit.joint;
    ['a', 'b', 'untouched'].forEach((id, i) => {
      expect(meanOf(of(id))).toBeCloseTo(mean[i], 3);
      ['a', 'b', 'untouched'].forEach((other, j) => {
        expect(productOf(of(id), of(other))).toBeCloseTo(covariance[i * 3 + j], 3);
      });
    });
  });

  test('keep the shape of what nothing was learnt about, and the tie of what was', () => {
    // Two rectangles of which only the sum is read, and well: the sum is known to 0.01, the difference as badly as before.
    const model = exampleModel({
      inputs: { a: [1, rectangle(1, 0.3)], b: [1, rectangle(1, 0.3)], alone: [5, rectangle(5, 1)] },
      outputs: { sum: ([a, b]) => a + b },
    });
    const { of } = drawn(model, 'sum', 2, 0.01);
    const half = 0.3 * Math.sqrt(3);
    const [a, b, alone] = [of('a'), of('b'), of('alone')];
    const sum = a.map((value, s) => value + b[s]);
    expect(Math.sqrt(productOf(sum, sum))).toBeCloseTo(0.01, 3);
    for (const column of [a, b]) {
      expect(Math.min(...column)).toBeGreaterThanOrEqual(1 - half - 1e-12);
      expect(Math.max(...column)).toBeLessThanOrEqual(1 + half + 1e-12);
    }
    // A rectangle's fourth moment is 1.8 of its variance squared, a normal distribution's 3.
    const variance = productOf(alone, alone);
    const fourth = meanOf(alone.map((value) => (value - 5) ** 4));
    expect(fourth / variance ** 2).toBeCloseTo(1.8, 2);
  });

  test('of a logarithm stay positive, and meet the reading in the mean', () => {
    const model = exampleModel({ inputs: { r: [2, logNormal(0.8)] }, outputs: { r: ([r]) => r } });
    const { fit, of } = drawn(model, 'r', 3, 0.5);
    expect(Math.min(...of('r'))).toBeGreaterThan(0);
    expect(meanOf(of('r'))).toBeCloseTo(fit.inputs[0].value, 2);
  });

  test('of two resistances of which only the sum was read have that sum in the mean', () => {
    const model = exampleModel({
      inputs: { a: [1, logNormal(0.5)], b: [1, logNormal(0.5)] },
      outputs: { sum: ([a, b]) => a + b },
    });
    const { fit, of } = drawn(model, 'sum', 2, 0.02);
    const sum = of('a').map((value, s) => value + of('b')[s]);
    expect(meanOf(sum)).toBeCloseTo(fit.residuals[0].fitted, 1);
    // Without the move it would be the fitted sum times exp(σ²/2), σ: what is left of 0.5 in each, 0.35.
    expect(meanOf(sum)).toBeLessThan(fit.residuals[0].fitted * 1.02);
  });
});
