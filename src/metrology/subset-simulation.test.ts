import { expect, test } from 'vitest';
import type { LimitState } from './normal-space.ts';
import { normalBelow } from './probability.ts';
import { subsetSimulation } from './subset-simulation.ts';

function stateOf(dimensions: number, at: (z: Float64Array) => number): LimitState {
  return { dimensions, evaluations: 0, at };
}

test('without slopes: a straight limit in many dimensions, within three standard uncertainties at each of ten seeds', () => {
  const state = stateOf(50, (z) => 4 - z.reduce((sum, each) => sum + each, 0) / Math.sqrt(50));
  for (let seed = 0; seed < 10; seed++) {
    const { probability, u } = subsetSimulation(state, { seed });
    expect(Math.abs(Math.log(probability / normalBelow(-4))), `seed ${seed}`).toBeLessThan((3 * u) / probability);
    expect(u / probability).toBeLessThan(0.5);
  }
});

test('a margin that never comes down is out of reach, whether it moves or not', () => {
  expect(
    subsetSimulation(
      stateOf(2, () => 1),
      { seed: 1 },
    ).probability,
  ).toBe(0);
  const bounded = subsetSimulation(
    stateOf(2, ([a]) => 1 + Math.exp(-a)),
    { seed: 1 },
  );
  expect(bounded.probability).toBe(0);
  expect(bounded.exceeding).toEqual([]);
});

test('half of the space is beyond the limit', () => {
  expect(
    subsetSimulation(
      stateOf(1, ([a]) => a),
      { seed: 3 },
    ).probability,
  ).toBeCloseTo(0.5, 1);
});
