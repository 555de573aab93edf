import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { exampleModel, normal } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import { sensitivities } from './sensitivity.ts';

test('x − x is 0 ± 0, and x + x has twice the uncertainty of x', () => {
  const model = exampleModel({
    inputs: { x: [5, normal(0.3)] },
    outputs: { nothing: ([x]) => x - x, double: ([x]) => x + x },
  });
  const sens = sensitivities(model);
  expect(sens.y0[0]).toBe(0);
  expect(budget(model, 'nothing', sens)!.u).toBe(0);
  expect(budget(model, 'double', sens)!.u).toBeCloseTo(0.6, 12);
});

test('rows are sorted, their shares add up to 1, exact inputs are left out', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(3)], b: [1, normal(4)], n: [2, null] },
    outputs: { y: ([a, b, n]) => n * (a - b) },
  });
  const { u, rows } = budget(model, 'y', sensitivities(model))!;
  // 3, 4, 5: the oldest worked example there is.
  expect(u).toBeCloseTo(10, 9);
  expect(rows.map((row) => row.input)).toEqual(['b', 'a']);
  expect(rows.map((row) => row.share)).toEqual([expect.closeTo(0.64, 9), expect.closeTo(0.36, 9)]);
  expect(rows[0].contribution).toBeCloseTo(-8, 9);
});

describe('correlated inputs', () => {
  // JCGM 100:2008 H.2: R = (V/I)·cos φ from simultaneous readings, R = 127.732 Ω, u = 0.071 Ω. The correlations are printed as
  // −0.36, 0.86, −0.65 there; the third digit is from its table H.2 of readings. Without them u would be 0.195 Ω.
  const u = [0.0032, 0.0095e-3, 0.00075];
  const [rVI, rVPhi, rIPhi] = [-0.355, 0.858, -0.645];
  const r = [1, rVI, rVPhi, rVI, 1, rIPhi, rVPhi, rIPhi, 1];
  const joint: Joint = {
    ids: ['V', 'I', 'phi'],
    mean: Float64Array.of(4.999, 19.661e-3, 1.04446),
    covariance: Float64Array.from(r, (each, k) => each * u[Math.floor(k / 3)] * u[k % 3]),
    logarithmic: [false, false, false],
  };
  const model = exampleModel({
    inputs: { V: [4.999, normal(u[0])], I: [19.661e-3, normal(u[1])], phi: [1.04446, normal(u[2])] },
    outputs: { R: ([V, I, phi]) => (V / I) * Math.cos(phi) },
  });
  const sens = sensitivities(model);

  test('GUM H.2', () => {
    expect(sens.y0[0]).toBeCloseTo(127.732, 2);
    expect(budget(model, 'R', sens, joint)!.u).toBeCloseTo(0.071, 3);
    expect(budget(model, 'R', sens)!.u).toBeCloseTo(0.195, 2);
  });

  test('shares still add up to 1', () => {
    const shares = budget(model, 'R', sens, joint)!.rows.map((row) => row.share);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(Math.min(...shares)).toBeLessThan(0);
  });
});

test('without sensitivities there is no budget', () => {
  const model = exampleModel({ inputs: { a: [1, normal(1)] }, outputs: { y: ([a]) => a }, ending: () => 'runaway' });
  expect(budget(model, 'y', sensitivities(model))).toBeNull();
});
