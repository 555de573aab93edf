import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { exampleModel, logNormal, normal } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import { sensitivities } from './sensitivity.ts';
import { CORRELATED, indexGroups, REST, sobolIndices } from './sobol-indices.ts';

const additive = exampleModel({
  inputs: { a: [1, normal(3)], b: [1, normal(4)], c: [1, normal(0.05)], n: [2, null] },
  outputs: { y: ([a, b, c, n]) => n * a - n * b + c },
});

test('of a straight sum, first and total are the shares of the budget, and nothing is left for interactions', () => {
  const sens = sensitivities(additive);
  const groups = indexGroups(additive, 'y', sens)!;
  expect(groups.map(({ name }) => name)).toEqual(['b', 'a', REST]);
  const { rows, interaction, interactionU, lost } = sobolIndices(additive, 'y', groups, { seed: 4 });
  for (const { share, input } of budget(additive, 'y', sens)!.rows.slice(0, 2)) {
    const row = rows.find(({ name }) => name === input)!;
    expect(Math.abs(row.first - share)).toBeLessThan(5 * row.firstU);
    expect(Math.abs(row.total - share)).toBeLessThan(5 * row.totalU);
    expect(row.firstU).toBeLessThan(0.02);
  }
  expect(Math.abs(interaction)).toBeLessThan(5 * interactionU);
  expect(lost).toBe(0);
});

test('of a bare product, no input does anything by itself', () => {
  const model = exampleModel({ inputs: { a: [0, normal(1)], b: [0, normal(1)] }, outputs: { y: ([a, b]) => a * b } });
  const groups = [
    { name: 'a', inputs: ['a'] },
    { name: 'b', inputs: ['b'] },
  ];
  const { rows, interaction } = sobolIndices(model, 'y', groups, { seed: 1, points: 1024 });
  for (const row of rows) {
    expect(row.first).toBeCloseTo(0, 1);
    expect(row.total).toBeCloseTo(1, 1);
  }
  expect(interaction).toBeCloseTo(1, 1);
});

describe('groups', () => {
  test('an input that bends has one of its own, though its slope is nothing', () => {
    const model = exampleModel({
      inputs: { a: [0, normal(1)], b: [0, normal(1)] },
      outputs: { y: ([a, b]) => a + 3 * Math.abs(b) },
    });
    expect(indexGroups(model, 'y', sensitivities(model))!.map(({ name }) => name)).toEqual(['a', 'b']);
  });

  test('correlated inputs are one, whose part holds their covariance', () => {
    const joint: Joint = {
      ids: ['a', 'b'],
      mean: Float64Array.of(1, 1),
      covariance: Float64Array.of(9, -6, -6, 16),
      logarithmic: [false, false],
    };
    const model = exampleModel({
      inputs: { a: [1, normal(3)], b: [1, normal(4)], c: [1, normal(2)] },
      outputs: { y: ([a, b, c]) => a + b + c },
    });
    const groups = indexGroups(model, 'y', sensitivities(model), joint)!;
    expect(groups).toEqual([
      { name: 'c', inputs: ['c'] },
      { name: CORRELATED, inputs: expect.arrayContaining(['a', 'b']) },
    ]);
    // Variance of a + b: 9 + 16 − 2·6 = 13; of c: 4.
    const { rows, u } = sobolIndices(model, 'y', groups, { seed: 2, joint, points: 1024 });
    expect(rows.map(({ name }) => name)).toEqual([CORRELATED, 'c']);
    expect(rows[0].first).toBeCloseTo(13 / 17, 1);
    expect(rows[1].total).toBeCloseTo(4 / 17, 1);
    expect(u).toBeCloseTo(Math.sqrt(17), 1);
  });
});

test('draws without a solution are counted and left out', () => {
  const model = exampleModel({
    inputs: { a: [1, logNormal(0.5)], b: [1, normal(1)] },
    outputs: { y: ([a, b]) => a + b },
    ending: ([, b]) => (b > 2 ? 'runaway' : 'solved'),
  });
  const groups = [
    { name: 'a', inputs: ['a'] },
    { name: 'b', inputs: ['b'] },
  ];
  const { lost, evaluations, rows } = sobolIndices(model, 'y', groups, { seed: 1 });
  // Φ(−1) = 0.1587 of them.
  expect(lost / evaluations).toBeCloseTo(0.1587, 2);
  expect(rows.every(({ total }) => total > 0 && total < 1)).toBe(true);
});
