import { describe, expect, test } from 'vitest';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';

describe('limits', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(1)], b: [1, normal(1)] },
    outputs: { a: ([a]) => a, sum: ([a, b]) => a + b },
  });
  const reading = (output: string, value: number, u = 0.5) => ({ id: output, model, output, value, u });
  const fitted = (value: number, low = 0) =>
    fitInputs({ inputs: model.inputs, observations: [reading('a', value)], limits: { a: { low } } });

  test('inside them nothing changes', () => {
    expect(fitted(1.5)).toEqual(fitInputs({ inputs: model.inputs, observations: [reading('a', 1.5)] }));
  });

  // By hand: prior 1 ± 1 and reading −2 ± 0.5 give −1.4 ± √0.2, that is 3.1305 of u beyond 0; what is left of the normal
  // distribution above 0 has the mean square of exp(−(t + 1.4)²/0.4) over t > 0, integrated here numerically.
  test('beyond one the value is held there, with the uncertainty of what is left of the distribution', () => {
    const { inputs, faults } = fitted(-2);
    expect(inputs[0]).toMatchObject({ value: 0, held: 'low' });
    let weight = 0;
    let square = 0;
    for (let k = 0; k < 40_000; k++) {
      const t = (k + 0.5) * 1e-4;
      const density = Math.exp(-((t + 1.4) ** 2) / 0.4);
      weight += density;
      square += density * t * t;
    }
    expect(inputs[0].u ** 2).toBeCloseTo(square / weight, 6);
    expect(faults.map(({ code }) => code)).toContain('fit/outside');
    // The pull compares 1 ± 1 with −2 ± 0.5, whatever the limit: −3/√1.25.
    expect(inputs[0].pull).toBeCloseTo(-3 / Math.sqrt(1.25), 8);
  });

  test('the other inputs follow the held one', () => {
    const observations = [reading('a', -2), reading('sum', 1, 0.1)];
    const { inputs } = fitInputs({ inputs: model.inputs, observations, limits: { a: { low: 0 } } });
    // With a = 0: b is the weighted mean of 1 ± 1 and 1 ± 0.1.
    expect(inputs[1].value).toBeCloseTo(1, 8);
    const free = fitInputs({ inputs: model.inputs, observations });
    expect(inputs[1].u).toBeLessThan(free.inputs[1].u);
    expect(inputs[1].u).toBeGreaterThan(0.0995);
  });

  test('where the best value lies on the limit itself, the half that is left is as wide as the whole', () => {
    expect(fitted(-0.25 - 1e-9).inputs[0].u).toBeCloseTo(Math.sqrt(0.2), 6);
  });

  test('a rectangle that the fit would leave is named, and holds on request', () => {
    const inputs = [{ ...model.inputs[0], spread: rectangle(1, 0.5) }, model.inputs[1]];
    const observations = [reading('a', 3, 0.1)];
    const end = 1 + 0.5 * Math.sqrt(3);
    // Weighted mean of 1 ± 0.5 and 3 ± 0.1.
    const free = fitInputs({ inputs, observations }).inputs[0];
    expect(free).toMatchObject({
      value: expect.closeTo((1 / 0.25 + 3 / 0.01) / (1 / 0.25 + 1 / 0.01), 8),
      held: null,
      outside: 'high',
    });
    const held = fitInputs({ inputs, observations, rectanglesHold: true }).inputs[0];
    expect(held).toMatchObject({ value: expect.closeTo(end, 12), held: 'high', outside: null });
    expect(fitInputs({ inputs, observations: [reading('a', 1.2, 0.1)] }).inputs[0].outside).toBeNull();
  });

  test('a stated value outside its limits is a programming error', () => {
    expect(() => fitted(1, 2)).toThrow('the stated value of "a" is outside its limits');
  });
});
