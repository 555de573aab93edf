import { describe, expect, test } from 'vitest';
import { writeFault } from '../fault/fault.ts';
import { exampleModel, normal } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';

describe('a misfit', () => {
  const model = exampleModel({
    inputs: { offset: [0, normal(0.1)], slope: [1, normal(0.5)], count: [2, null] },
    outputs: Object.fromEntries(
      [0, 1, 2, 3, 4, 5].map((t) => [`at ${t}`, ([offset, slope, count]) => offset + (slope * t * count) / 2]),
    ),
  });
  const read = (values: readonly number[]) =>
    fitInputs({
      inputs: model.inputs,
      observations: values.map((value, t) => ({ id: `reading ${t}`, model, output: `at ${t}`, value, u: 0.1 })),
    });

  test('is none where noise explains all', () => {
    expect(read([0.05, 0.95, 2.1, 2.95, 4.05, 4.9]).misfit).toBeNull();
  });

  test('chi-square is split into what the observations and what the stated values give', () => {
    const { chiSquare, chiSquareParts, inputs, residuals } = read([0.4, 1.4, 2.4, 3.4, 4.4, 5.4]);
    const sum = (list: readonly number[]) => list.reduce((a, b) => a + b ** 2, 0);
    expect(chiSquareParts.observations).toBeCloseTo(sum(residuals.map(({ difference }) => difference / 0.1)), 9);
    expect(chiSquareParts.stated).toBeCloseTo(
      sum(inputs.map(({ value, prior }) => (value - prior.value) / prior.u!)),
      9,
    );
    expect(chiSquare).toBeCloseTo(chiSquareParts.observations + chiSquareParts.stated, 12);
  });

  test('one wrong reading is found, with what the rest says it should be and what it takes off', () => {
    const values = [0, 1, 2, 4, 4, 5];
    const { misfit, chiSquare } = read(values);
    expect(misfit!.because).toContain('residual');
    expect(misfit!.observations[0].id).toBe('reading 3');
    const [first] = misfit!.explanations;
    expect(first).toMatchObject({ kind: 'observation', id: 'reading 3' });
    expect(first.instead).toBeCloseTo(3, 6);
    const rest = fitInputs({
      inputs: model.inputs,
      observations: values.flatMap((value, t) =>
        t === 3 ? [] : [{ id: `${t}`, model, output: `at ${t}`, value, u: 0.1 }],
      ),
    });
    expect(chiSquare - first.takes).toBeCloseTo(rest.chiSquare, 6);
    expect(first.chance).toBeGreaterThan(0.5);
  });

  test('a wrong stated value is found', () => {
    const { misfit, faults, chiSquare } = read([1, 2, 3, 4, 5, 6]);
    const [first] = misfit!.explanations;
    expect(first).toMatchObject({ kind: 'stated', id: 'offset' });
    // Without its stated value the offset is 1 and nothing is left but rounding of the derivatives.
    expect(first.instead).toBeCloseTo(1, 2);
    expect(chiSquare - first.takes).toBeCloseTo(0, 3);
    const said = faults.map(writeFault).join(' ');
    expect(said).toContain('a wrong stated value, offset');
    expect(said).not.toMatch(/undefined|NaN/);
  });

  test('a number taken as exact is found where nothing else can stand for it', () => {
    const bowed = exampleModel({
      inputs: { slope: [1, normal(0.5)], bow: [1, null], idle: [1, null] },
      outputs: Object.fromEntries([1, 2, 3, 4].map((t) => [`${t}`, ([slope, bow]) => slope * t + (bow * t * t) / 10])),
    });
    const { misfit } = fitInputs({
      inputs: bowed.inputs,
      observations: [1, 2, 3, 4].map((t) => ({
        id: `${t}`,
        model: bowed,
        output: `${t}`,
        value: t + 0.4 * t * t,
        u: 0.05,
      })),
    });
    const [first] = misfit!.explanations;
    expect(first).toMatchObject({ kind: 'exact', id: 'bow' });
    expect(first.instead).toBeCloseTo(4, 1);
    expect(misfit!.explanations.map(({ id }) => id)).not.toContain('idle');
  });
});
