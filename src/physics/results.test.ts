import { describe, expect, test } from 'vitest';
import { Refusal } from '../fault/fault.ts';
import { exampleModel, rectangle } from '../metrology/example.test-data.ts';
import { resultsOf } from './results.ts';

const draws = { samples: 8192, seed: 1 };

/** A rectangle of standard uncertainty `u` about `value`; `f` of the distance in units of u. Sensitivities look no further than ±1/2. */
function resultOf(value: number, u: number, f: (distance: number) => number) {
  const model = exampleModel({
    inputs: { x: [value, rectangle(value, u)] },
    outputs: { y: (x) => value + u * f((x[0] - value) / u) },
  });
  return resultsOf(model, draws).outputs[0];
}

describe('first order counts where Monte Carlo agrees', () => {
  const [edge, near] = [Math.sqrt(3), 0.6];

  // Steeper by c beyond ±0.6: variance (0.6³ + c²·(√3³ − 0.6³))/(3·√3).
  const steeper = (u: number) => {
    const c = Math.sqrt((3 * edge * u ** 2 - near ** 3) / (edge ** 3 - near ** 3));
    return (distance: number) => (Math.abs(distance) > near ? c * distance : distance);
  };
  test.each([1e-6, 1, 1e6])('its uncertainty within a twentieth, at an uncertainty of %d', (u) => {
    for (const value of [-5 * u, 5 * u])
      for (const sign of [-1, 1]) {
        expect(resultOf(value, u, steeper(1 / (1 + sign * 0.0498))).method).toBe('first-order');
        const { method, u: found } = resultOf(value, u, steeper(1 / (1 + sign * 0.0502)));
        expect(method).toBe('monte-carlo');
        expect(found! / u).toBeCloseTo(1 / (1 + sign * 0.0502), 3);
      }
  });

  // Higher by b beyond ±0.6, where a share p of the draws lies: mean b·p, variance 1 + b²·p·(1 − p).
  const higher = (mean: number) => {
    const p = 1 - near / edge;
    const u = 1 / Math.sqrt(1 - mean ** 2 * (1 / p - 1));
    return (distance: number) => distance + (Math.abs(distance) > near ? (mean * u) / p : 0);
  };
  test.each([1e-6, 1, 1e6])('its mean within a fifth of the uncertainty, at an uncertainty of %d', (u) => {
    for (const value of [-5 * u, 5 * u])
      for (const sign of [-1, 1]) {
        expect(resultOf(value, u, higher(sign * 0.199)).method).toBe('first-order');
        expect(resultOf(value, u, higher(sign * 0.201)).method).toBe('monte-carlo');
      }
  });

  test.each([-5, 0, 0.1, 1e9])('a result of %d that nothing moves is certain', (value) => {
    const model = exampleModel({ inputs: { x: [1, rectangle(1, 0.1)] }, outputs: { y: () => value } });
    const { outputs, warnings } = resultsOf(model, draws);
    expect(outputs[0]).toMatchObject({ value, u: 0, method: 'first-order' });
    expect(warnings).toEqual([]);
  });
});

test('up to half of the draws may be lost, with a warning; beyond, there is no result', () => {
  const losing = (share: number) =>
    exampleModel({
      inputs: { x: [0, rectangle(0, 1)] },
      outputs: { y: (x) => x[0] },
      ending: (x) => (Math.abs(x[0]) > (1 - share) * Math.sqrt(3) ? 'infeasible' : 'solved'),
    });
  // Draws fill every power of two of the range alike: exactly half.
  const lost = { code: 'calc/draws-lost', severity: 'warning', data: { lost: 4096, samples: 8192, runaway: 0 } };
  expect(resultsOf(losing(0.5), draws).warnings).toContainEqual(lost);
  expect(() => resultsOf(losing(0.505), draws)).toThrow(Refusal);
});
