import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budget } from './budget.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';
import { secondOrder } from './second-order.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_125;
const of = (model: Model, joint?: Joint) => secondOrder(model, ['y'], joint).get('y')!;
const hundredths = fc.integer({ min: -300, max: 300 }).map((each) => each / 100);
const near = (a: number, b: number, size = Math.abs(b)) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-7 * size);

describe(`random models (seed ${SEED})`, () => {
  test('a linear one has nothing of second order, whatever its distributions', () => {
    fc.assert(
      fc.property(
        fc.array(hundredths, { minLength: 4, maxLength: 4 }),
        fc.integer({ min: -9, max: 9 }),
        (a, exponent) => {
          const scale = 10 ** exponent;
          const model = exampleModel({
            inputs: {
              p: [1, normal(0.1)],
              q: [2, rectangle(2.1, 0.2)],
              r: [3, { shape: 'triangular', low: 2.5, high: 4 }],
              s: [4, { shape: 'u-shaped', low: 3, high: 5 }],
            },
            outputs: { y: (x) => scale * a.reduce((sum, slope, i) => sum + slope * x[i], 0) },
          });
          const first = budget(model, 'y', sensitivities(model))!.u;
          const size = scale * Math.hypot(...a);
          near(of(model).u, first, size);
          // Means: 1, 2.1, a third of 2.5 + 3 + 4, 4.
          near(of(model).expectation, scale * (a[0] + 2.1 * a[1] + (9.5 / 3) * a[2] + 4 * a[3]), 10 * size);
          expect(of(model).terms).toEqual([]);
        },
      ),
      { seed: SEED, numRuns: 50 },
    );
  });

  test('a linear one with log-normal inputs too: mean m·exp(σ²/2), variance mean²·(exp(σ²) − 1)', () => {
    const model = exampleModel({ inputs: { a: [2, logNormal(1.4)] }, outputs: { y: ([a]) => 3 * a } });
    const mean = 6 * Math.exp(0.98);
    near(of(model).expectation, mean);
    near(of(model).u, mean * Math.sqrt(Math.expm1(1.96)));
  });

  test('x² with normal x: u² = 4x²u² + 2u⁴, mean x² + u²', () => {
    fc.assert(
      fc.property(hundredths, fc.integer({ min: 1, max: 200 }), (x, width) => {
        const u = width / 100;
        const model = exampleModel({ inputs: { x: [x, normal(u)] }, outputs: { y: ([x]) => x * x } });
        near(of(model).u ** 2, 4 * x ** 2 * u ** 2 + 2 * u ** 4);
        near(of(model).expectation, x ** 2 + u ** 2);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test('a quadratic form of normal inputs: u² = gᵀVg + ½·tr(HVHV), correlated or not', () => {
    fc.assert(
      fc.property(
        fc.array(hundredths, { minLength: 7, maxLength: 7 }),
        fc.integer({ min: -9, max: 9 }),
        (a, tenths) => {
          const r = tenths / 10;
          const [u1, u2] = [0.3, 0.7];
          const model = exampleModel({
            inputs: { p: [a[5], normal(u1)], q: [a[6], normal(u2)] },
            outputs: { y: ([p, q]) => a[0] * p + a[1] * q + (a[2] * p * p) / 2 + a[3] * p * q + (a[4] * q * q) / 2 },
          });
          const joint = {
            ids: ['p', 'q'],
            mean: Float64Array.of(a[5], a[6]),
            covariance: Float64Array.of(u1 ** 2, r * u1 * u2, r * u1 * u2, u2 ** 2),
            logarithmic: [false, false],
          };
          const exact = (v: Float64Array) => {
            const g = [a[0] + a[2] * a[5] + a[3] * a[6], a[1] + a[3] * a[5] + a[4] * a[6]];
            const hv = [
              a[2] * v[0] + a[3] * v[2],
              a[2] * v[1] + a[3] * v[3],
              a[3] * v[0] + a[4] * v[2],
              a[3] * v[1] + a[4] * v[3],
            ];
            const linear = g[0] ** 2 * v[0] + 2 * g[0] * g[1] * v[1] + g[1] ** 2 * v[3];
            return linear + (hv[0] ** 2 + 2 * hv[1] * hv[2] + hv[3] ** 2) / 2;
          };
          const size = 1e-3;
          near(of(model).u ** 2, exact(Float64Array.of(u1 ** 2, 0, 0, u2 ** 2)), size + of(model).u ** 2);
          near(of(model, joint).u ** 2, exact(joint.covariance), size + of(model, joint).u ** 2);
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });
});

test('x² of a rectangle −a…a: E(x⁴) − E(x²)² = 4a⁴/45', () => {
  const model = exampleModel({
    inputs: { x: [0, { shape: 'rectangular', low: -2, high: 2 }] },
    outputs: { y: ([x]) => x * x },
  });
  near(of(model).u ** 2, (4 * 16) / 45);
});

test('x² of a log-normal x: the third moment counts', () => {
  // Log-normal x with w = exp(σ²): E(x⁴) − E(x²)² = median⁴·(w⁸ − w⁴).
  const w = Math.exp(0.25);
  const model = exampleModel({ inputs: { x: [1, logNormal(0.5)] }, outputs: { y: ([x]) => x * x } });
  near(of(model).u ** 2, w ** 8 - w ** 4);
  near(of(model).expectation, w ** 2);
});

test('x³ with normal x: the third derivative counts, 9x⁴u² + 36x²u⁴ of 9x⁴u² + 36x²u⁴ + 15u⁶', () => {
  const [x, u] = [2, 0.3];
  const model = exampleModel({ inputs: { x: [x, normal(u)] }, outputs: { y: ([x]) => x ** 3 } });
  near(of(model).u ** 2, 9 * x ** 4 * u ** 2 + 36 * x ** 2 * u ** 4);
});

test('x·z² with normal x and z: what a pair adds with its third derivative', () => {
  const [x, z, u, v] = [2, 3, 0.1, 0.2];
  const model = exampleModel({
    inputs: { x: [x, normal(u)], z: [z, normal(v)] },
    outputs: { y: ([x, z]) => x * z * z },
  });
  // E(x²)·E(z⁴) − (E(x)·E(z²))², without its terms of sixth order.
  const exact = (x ** 2 + u ** 2) * (z ** 4 + 6 * z ** 2 * v ** 2 + 3 * v ** 4) - (x * (z ** 2 + v ** 2)) ** 2;
  near(of(model).u ** 2, exact - 3 * u ** 2 * v ** 4);
  expect(of(model).terms.map(({ inputs }) => inputs.join('·'))).toEqual(['x·z', 'z']);
});

describe('many inputs', () => {
  const inputs = Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`x${i}`, [0, normal(1)] as const]));
  const hidden = exampleModel({
    inputs,
    outputs: { y: (x) => x.reduce((sum, each) => sum + 0.1 * each, 0) + 2 * x[17] * x[41] },
  });

  test('a pair of which neither carries variance is found: 60·0.01 + 4', () => {
    near(of(hidden).u ** 2, 4.6);
    expect(of(hidden).terms).toEqual([{ inputs: ['x17', 'x41'], share: expect.closeTo(4 / 4.6, 7) }]);
    expect(of(hidden).neglected).toBeLessThan(1e-9);
  });

  test('more pairs than are looked at: no figure', () => {
    const all = exampleModel({
      inputs,
      outputs: { y: (x) => x.reduce((sum, each, i) => sum + each * x[(i + 1) % 60], 0) },
    });
    expect(of(all)).toBeNull();
  });
});

test('without a solution nearby there is no figure', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(0.1)] },
    outputs: { y: ([a]) => a },
    ending: ([a]) => (a > 1.04 ? 'runaway' : 'solved'),
  });
  expect(of(model)).toBeNull();
});

test('what is held exactly has no uncertainty', () => {
  const model = exampleModel({ inputs: { a: [1, normal(0.1)] }, outputs: { y: () => 5 } });
  expect(of(model)).toEqual({ expectation: 5, u: 0, terms: [], neglected: 0 });
});
