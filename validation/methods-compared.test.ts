import { describe, expect, test } from 'vitest';
import { adaptiveMonteCarlo } from '../src/metrology/adaptive-monte-carlo.ts';
import { exampleModel, normal, rectangle } from '../src/metrology/example.test-data.ts';
import { margins } from '../src/metrology/margin.ts';
import { sensitivities } from '../src/metrology/sensitivity.ts';
import type { Spread } from '../src/quantity/spread.ts';

const SEED = 20_261_105;

type Inputs = Readonly<Record<string, readonly [number, Spread]>>;

/** Which method is used for a quantity of which nothing but its uncertainty is of interest. */
function methodOf(inputs: Inputs, y: (x: Float64Array) => number) {
  const outputs = { y, limit: () => 0, margin: (x: Float64Array) => -y(x) };
  const model = exampleModel({ inputs, outputs, margins: { margin: 'y' } });
  const run = adaptiveMonteCarlo(model, { accurate: ['margin'], seed: SEED });
  const [{ method, why }] = margins(model, sensitivities(model), run)!;
  return `${method}: ${why}`;
}

const four = (spreads: readonly Spread[]) =>
  methodOf(Object.fromEntries(spreads.map((spread, k) => [`x${k}`, [0, spread]])), ([a, b, c, d]) => a + b + c + d);
const rectangularUnit = rectangle(0, 1);

// The rule of clause 8 with one significant digit of u, on examples whose first-order, second-order and sampled figures are published: which method
// the rule picks follows from these by hand.
describe(`JCGM 101:2008 clause 8 on the examples of clause 9 (seed ${SEED})`, () => {
  test('9.2.2, four normal inputs: first order', () => {
    expect(four([normal(1), normal(1), normal(1), normal(1)])).toBe('first-order: confirmed');
  });

  test('9.2.3, four rectangles: first order, ±3.92 for ±3.88', () => {
    expect(four([rectangularUnit, rectangularUnit, rectangularUnit, rectangularUnit])).toBe('first-order: confirmed');
  });

  test('9.2.4, one rectangle of ten times the width: Monte Carlo, because of its shape; one digit of u = 10 alone would let it pass', () => {
    // δ = 5 for u = 10.1, and the ends differ by 2.9: at a width of nine times, u = 9.1 and δ = 0.5 tell them apart.
    expect(four([rectangularUnit, rectangularUnit, rectangularUnit, rectangle(0, 10)])).toBe('first-order: confirmed');
    expect(four([rectangularUnit, rectangularUnit, rectangularUnit, rectangle(0, 9)])).toBe('monte-carlo: shape');
  });

  test('9.3, a mass in air: second order', () => {
    const inputs: Inputs = {
      reference: [100_000, normal(0.05)],
      added: [1.234, normal(0.02)],
      air: [1.2, { shape: 'rectangular', low: 1.1, high: 1.3 }],
      weight: [8000, { shape: 'rectangular', low: 7000, high: 9000 }],
      standard: [8000, { shape: 'rectangular', low: 7950, high: 8050 }],
    };
    const mass = ([m, d, a, w, r]: Float64Array) => (m + d) * (1 + (a - 1.2) * (1 / w - 1 / r)) - 100_000;
    expect(methodOf(inputs, mass)).toBe('second-order: confirmed');
  });

  test.each([0, 0.01, 0.05])('9.4, a sum of two squares at %d: Monte Carlo', (x1) => {
    // At 0.05, far from zero, u = 502 and δ = 50: a skewness of 0.3 still moves the ends by (1.96² − 1)/6·0.3·u = 70 from those of second order.
    const inputs: Inputs = { x1: [x1, normal(0.005)], x2: [0, normal(0.005)] };
    expect(methodOf(inputs, ([a, b]) => 1e6 * (a * a + b * b))).toBe('monte-carlo: bends');
  });
});

test('JCGM 100:2008 H.1.7, an end gauge: its terms of second order are within one digit of u = 32 nm', () => {
  const inputs: Inputs = {
    standard: [623, normal(25)],
    comparator: [215, normal(9.7)],
    expansion: [11.5e-6, { shape: 'rectangular', low: 9.5e-6, high: 13.5e-6 }],
    temperature: [-0.1, normal(0.41)],
    'expansion difference': [0, { shape: 'rectangular', low: -1e-6, high: 1e-6 }],
    'temperature difference': [0, { shape: 'rectangular', low: -0.05, high: 0.05 }],
  };
  const length = ([s, d, a, theta, da, dtheta]: Float64Array) => s + d - (50e6 + s) * (da * theta + a * dtheta);
  expect(methodOf(inputs, length)).toBe('first-order: confirmed');
});

test('first order is marked as not to be trusted where JCGM 101:2008 9.4 shows that it is not', () => {
  const bentAt = (x1: number) =>
    sensitivities(
      exampleModel({
        inputs: { x1: [x1, normal(0.005)], x2: [0, normal(0.005)] },
        outputs: { loss: ([a, b]) => 1e6 * (a * a + b * b) },
      }),
    ).bent[0];
  expect(bentAt(0)).toEqual([0, 1]);
  expect(bentAt(0.01)).toEqual([0, 1]);
  expect(bentAt(0.05)).toEqual([]);
});
