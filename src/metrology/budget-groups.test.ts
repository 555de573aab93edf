import { expect, test } from 'vitest';
import { budget } from './budget.ts';
import { budgetByGroup } from './budget-groups.ts';
import { exampleModel, normal } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import { sensitivities } from './sensitivity.ts';

const model = exampleModel({
  inputs: { 'a.x': [1, normal(3)], 'a.y': [1, normal(4)], 'b.x': [1, normal(12)] },
  outputs: { y: (x) => x[0] + x[1] - x[2] },
});
const sens = sensitivities(model);
const byFirst = (id: string) => id[0];
const covariance = (entries: readonly number[]): Joint => ({
  ids: ['a.x', 'a.y', 'b.x'],
  mean: Float64Array.of(1, 1, 1),
  covariance: Float64Array.from(entries),
  logarithmic: [false, false, false],
});

test('independent inputs: 3 and 4 make 5, and 5 and 12 make 13', () => {
  const { groups, between } = budgetByGroup(budget(model, 'y', sens)!, byFirst);
  expect(groups).toEqual([
    { group: 'b', inputs: ['b.x'], u: expect.closeTo(12, 9), share: expect.closeTo(144 / 169, 9) },
    { group: 'a', inputs: ['a.y', 'a.x'], u: expect.closeTo(5, 9), share: expect.closeTo(25 / 169, 9) },
  ]);
  expect(between).toBe(0);
});

test('a covariance inside a group is the group’s own', () => {
  // (3 + 4)² when the two go together, and (4 − 3)² when they go against each other.
  const { groups, between } = budgetByGroup(
    budget(model, 'y', sens, covariance([9, 12, 0, 12, 16, 0, 0, 0, 144]))!,
    byFirst,
  );
  expect(groups.find(({ group }) => group === 'a')!.u).toBeCloseTo(7, 6);
  expect(between).toBe(0);
  const against = budgetByGroup(budget(model, 'y', sens, covariance([9, -12, 0, -12, 16, 0, 0, 0, 144]))!, byFirst);
  expect(against.groups.find(({ group }) => group === 'a')!.u).toBeCloseTo(1, 5);
});

test('a covariance between groups belongs to neither, and all together are 1', () => {
  // Slopes +1 of a.x and −1 of b.x: −2 · 18, from a variance of 9 + 16 + 144 − 36 = 133.
  const made = budget(model, 'y', sens, covariance([9, 0, 18, 0, 16, 0, 18, 0, 144]))!;
  expect(made.u).toBeCloseTo(Math.sqrt(133), 6);
  const { groups, between } = budgetByGroup(made, byFirst);
  expect(between).toBeCloseTo(-36 / 133, 6);
  expect(groups.map(({ share }) => share)).toEqual([expect.closeTo(144 / 133, 6), expect.closeTo(25 / 133, 6)]);
  expect(groups.reduce((sum, { share }) => sum + share, between)).toBeCloseTo(1, 9);
});

test('nothing uncertain has no groups', () => {
  const exact = exampleModel({ inputs: { a: [1, null] }, outputs: { y: ([a]) => a } });
  expect(budgetByGroup(budget(exact, 'y', sensitivities(exact))!, byFirst)).toEqual({ groups: [], between: 0 });
});
