import { describe, expect, test } from 'vitest';
import { exampleModel, normal } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';

describe('robust loss', () => {
  const model = exampleModel({ inputs: { a: [0, normal(1000)] }, outputs: { a: ([a]) => a } });
  const read = (values: readonly number[], robust: boolean) =>
    fitInputs({
      inputs: model.inputs,
      robust,
      observations: values.map((value, k) => ({ id: `${k}`, model, output: 'a', value, u: 1 })),
    });

  test('an outlier pulls no harder than 1.345 of its uncertainty', () => {
    // By hand: Σ(yᵢ − a) over the four near ones + 1.345 = 0 gives a = 1.345/4 for values around 0.
    const { inputs, residuals, chance } = read([-0.5, 0.5, -0.2, 0.2, 50], true);
    expect(inputs[0].value).toBeCloseTo(1.345 / 4, 4);
    expect(residuals[4].weight).toBeCloseTo(1.345 / (50 - 1.345 / 4), 6);
    expect(chance).toBeNull();
    expect(read([-0.5, 0.5, -0.2, 0.2, 50], false).inputs[0].value).toBeCloseTo(10, 3);
  });

  test('without outliers it is the same as squares', () => {
    const plain = read([-0.5, 0.5, 0.3], false);
    const robust = read([-0.5, 0.5, 0.3], true);
    expect(robust.inputs).toEqual(plain.inputs);
    expect(robust.residuals).toEqual(plain.residuals);
  });
});
