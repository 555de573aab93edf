import { describe, expect, test } from 'vitest';
import { exampleModel, normal, rectangle } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import type { Ending, Model } from './model.ts';
import { monteCarlo } from './monte-carlo.ts';
import { normalBelow } from './probability.ts';
import { tailProbability } from './tail.ts';

type Inputs = Parameters<typeof exampleModel>[0]['inputs'];

function modelOf(inputs: Inputs, margin: (x: Float64Array) => number, ending?: (x: Float64Array) => Ending): Model {
  const outputs = { limit: () => 1, value: () => 0, margin };
  return exampleModel({ inputs, outputs, margins: { margin: 'value' }, ending });
}

/** Standard normal inputs, one a letter. */
const standard = (names: string): Inputs => Object.fromEntries([...names].map((name) => [name, [0, normal(1)]]));
const tail = (model: Model, seed = 1) => tailProbability(model, 'margin', { seed });

test('the stated error is the scatter between seeds', () => {
  const model = modelOf(standard('abcdef'), (x) => 4 - (x[0] + x[1]) / Math.SQRT2 - 0.05 * (x[2] ** 2 + x[3] ** 2));
  const found = Array.from({ length: 24 }, (_, seed) => tail(model, seed));
  const mean = found.reduce((sum, { probability }) => sum + probability / 24, 0);
  const scatter = Math.sqrt(found.reduce((sum, { probability }) => sum + (probability - mean) ** 2 / 23, 0));
  const stated = Math.sqrt(found.reduce((sum, { u }) => sum + u ** 2 / 24, 0));
  expect(scatter / stated).toBeGreaterThan(0.6);
  expect(scatter / stated).toBeLessThan(1.6);
});

describe('two design points are not half the probability', () => {
  test.each([
    ['on opposite sides', ([x]: Float64Array) => 4 - Math.abs(x)],
    ['at right angles', ([a, b]: Float64Array) => Math.min(4 - a, 4 - b)],
  ])('%s', (_, margin) => {
    const found = tail(modelOf(standard('abc'), margin));
    const exact = 2 * normalBelow(-4);
    expect(found.probability / exact).toBeCloseTo(1, 1);
    expect(found.low).toBeLessThan(exact);
    expect(found.high).toBeGreaterThan(exact);
    expect(found.distances).toEqual([expect.closeTo(4, 1), expect.closeTo(4, 1)]);
  });
});

test('inputs with bounds: where the bounds end, so does the probability', () => {
  const inputs: Inputs = { a: [0, rectangle(0, 1)], b: [0, rectangle(0, 1)] };
  // The corner of a square: (2√3 − 3.45)²/2 of an area of (2√3)².
  const corner = (2 * Math.sqrt(3) - 3.45) ** 2 / 2 / 12;
  const near = tail(modelOf(inputs, ([a, b]) => 3.45 - a - b));
  expect(Math.abs(near.probability - corner)).toBeLessThan(3 * near.u);
  const beyond = tail(modelOf(inputs, ([a, b]) => 3.6 - a - b));
  expect(beyond).toMatchObject({ probability: 0, low: 0, ending: 'out-of-reach' });
  expect(beyond.high).toBeLessThan(1e-9);
});

test('draws without a solution exceed', () => {
  const stops = (x: Float64Array) => (x[0] > 4 ? 'runaway' : 'solved');
  const found = tail(modelOf(standard('ab'), ([a]) => 4.5 - a, stops));
  expect(found.probability / normalBelow(-4)).toBeCloseTo(1, 0);
  expect(Math.abs(found.probability - normalBelow(-4))).toBeLessThan(3 * found.u);
});

test('correlated inputs add up with their correlation', () => {
  const joint: Joint = {
    ids: ['a', 'b'],
    mean: Float64Array.of(0, 0),
    covariance: Float64Array.of(1, 0.5, 0.5, 1),
    logarithmic: [false, false],
  };
  const model = modelOf(standard('ab'), ([a, b]) => 4 * Math.sqrt(3) - a - b);
  expect(tailProbability(model, 'margin', { seed: 1, joint }).probability / normalBelow(-4)).toBeCloseTo(1, 1);
});

test('a given run is used instead of one of its own, and its draws are found again', () => {
  const model = modelOf(standard('abc'), ([a, b]) => Math.min(4 - a, 4 - b));
  const draws = { seed: 5, dimensionOf: (id: string) => 'cab'.indexOf(id), dimensions: 3 };
  const run = monteCarlo(model, { ...draws, samples: 4096 }).outputs.get('margin')!;
  const found = tailProbability(model, 'margin', { ...draws, run });
  expect(found.distances).toHaveLength(2);
  expect(found.probability / (2 * normalBelow(-4))).toBeCloseTo(1, 1);
});

test('where nothing is uncertain, it is certain', () => {
  const exact = (margin: number) => tail(modelOf({ a: [1, null] }, () => margin));
  expect(exact(1)).toMatchObject({ probability: 0, u: 0, high: 0, method: 'certain' });
  expect(exact(-1)).toMatchObject({ probability: 1, u: 0, low: 1, method: 'certain' });
});

test('the far corner of a triangle', () => {
  // Above 1.999 of a triangle from 0 to 2 with its peak at 1: 0.001²/2.
  const found = tail(
    modelOf({ a: [1, { shape: 'triangular', low: 0, high: 2 }], b: [0, normal(1)] }, ([a]) => 1.999 - a),
  );
  expect(found.probability / 5e-7).toBeCloseTo(1, 1);
  expect(Math.abs(found.probability - 5e-7)).toBeLessThan(4 * found.u);
});

test('one of several values, the last of which exceeds', () => {
  const bins = { shape: 'choice', values: [1, 2, 3], probabilities: [0.6, 0.3993, 0.0007] } as const;
  const found = tail(modelOf({ a: [1, bins], b: [0, normal(0.1)] }, ([a, b]) => 2.6 - a - b));
  expect(found.low).toBeLessThan(0.0007);
  expect(found.high).toBeGreaterThan(0.0007);
});
