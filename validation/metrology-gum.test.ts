import { describe, expect, test } from 'vitest';
import { budget } from '../src/metrology/budget.ts';
import { exampleModel, normal, rectangle } from '../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../src/metrology/fit.ts';
import { monteCarlo } from '../src/metrology/monte-carlo.ts';
import { withPosterior } from '../src/metrology/posterior.ts';
import { sensitivities } from '../src/metrology/sensitivity.ts';

const SEED = 20_261_105;

// JCGM 100:2008 (GUM) H.1, end-gauge calibration; lengths in nm over the nominal 50 mm. Published: 838 nm; contributions 25, 9.7, 2.9 and
// 16.6 nm, none from θ and α_S; u_c = 32 nm (u_c² = 1002 nm²). With second-order terms (H.1.7): 34 nm.
describe('GUM H.1, end gauge', () => {
  const nominal = 50e6;
  const model = exampleModel({
    inputs: {
      standard: [623, normal(25)],
      comparator: [215, normal(9.7)],
      expansion: [11.5e-6, { shape: 'rectangular', low: 9.5e-6, high: 13.5e-6 }],
      temperature: [-0.1, normal(0.41)],
      'expansion difference': [0, { shape: 'rectangular', low: -1e-6, high: 1e-6 }],
      'temperature difference': [0, { shape: 'rectangular', low: -0.05, high: 0.05 }],
    },
    outputs: { length: ([s, d, a, theta, da, dtheta]) => s + d - (nominal + s) * (da * theta + a * dtheta) },
  });
  const sens = sensitivities(model);
  const { u, rows } = budget(model, 'length', sens)!;
  const contribution = (id: string) => Math.abs(rows.find((row) => row.input === id)!.contribution);

  test('length and combined uncertainty', () => {
    expect(sens.y0[0]).toBeCloseTo(838, 9);
    expect(Math.abs(u - 32)).toBeLessThan(0.5);
  });

  test('contributions', () => {
    expect(contribution('standard')).toBeCloseTo(25, 1);
    expect(contribution('comparator')).toBeCloseTo(9.7, 1);
    expect(contribution('expansion difference')).toBeCloseTo(2.9, 1);
    // Printed 16.6 from the rounded 0.029 °C; 0.05 °C/√3 gives 16.60.
    expect(contribution('temperature difference')).toBeCloseTo(16.6, 1);
    expect(contribution('expansion')).toBeLessThan(1e-6);
    expect(contribution('temperature')).toBeLessThan(1e-6);
  });

  test(`the Monte Carlo run has the terms that first order hides (seed ${SEED})`, () => {
    const sample = monteCarlo(model, { samples: 20_000, seed: SEED }).outputs.get('length')!;
    expect(Math.abs(sample.u - 34)).toBeLessThan(0.5);
  });
});

// GUM H.3, thermometer calibration: b = y₁ + y₂(t − 20 °C) through 11 readings, nothing known before. Published:
// y₁ = −0.1712(29) °C, y₂ = 0.00218(67), r = −0.930, s = 0.0035 °C; b(30 °C) = −0.1494(41) °C.
test('GUM H.3, a straight line as a fit without stated knowledge', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const model = exampleModel({
    inputs: { y1: [-0.1, null], y2: [0.01, null] },
    outputs: Object.fromEntries([...t, 30].map((each) => [`at ${each}`, ([y1, y2]) => y1 + y2 * (each - 20)])),
  });
  // Readings of equal but unknown uncertainty: first as 1, then as the scatter about the line.
  const at = (u: number) =>
    fitInputs({
      inputs: model.inputs,
      free: ['y1', 'y2'],
      observations: t.map((each, k) => ({ id: `${each}`, model, output: `at ${each}`, value: b[k], u })),
    });
  const scatter = Math.sqrt(at(1).chiSquare / 9);
  expect(scatter).toBeCloseTo(0.0035, 4);
  const result = at(scatter);
  const [y1, y2] = result.inputs;
  expect(y1.value).toBeCloseTo(-0.1712, 4);
  expect(y1.u).toBeCloseTo(0.0029, 4);
  expect(y2.value).toBeCloseTo(0.00218, 5);
  expect(y2.u).toBeCloseTo(0.00067, 5);
  expect(result.joint.covariance[1] / y1.u / y2.u).toBeCloseTo(-0.93, 3);
  expect(result.degreesOfFreedom).toBe(9);
  const after = withPosterior(model, result);
  const sens = sensitivities(after);
  expect(sens.y0[t.length]).toBeCloseTo(-0.1494, 4);
  expect(budget(after, 'at 30', sens, result.joint)!.u).toBeCloseTo(0.0041, 4);
});

describe('JCGM 101:2008 9.2, sum of four', () => {
  const sum = (spreads: readonly ('normal' | 'rectangle')[], us: readonly number[]) =>
    exampleModel({
      inputs: Object.fromEntries(
        spreads.map((shape, k) => [`x${k}`, [0, shape === 'normal' ? normal(us[k]) : rectangle(0, us[k])]]),
      ),
      outputs: { y: ([a, b, c, d]) => a + b + c + d },
    });
  const four = <T>(value: T) => [value, value, value, value];
  const run = (model: ReturnType<typeof sum>) => monteCarlo(model, { samples: 50_000, seed: SEED }).outputs.get('y')!;

  test(`9.2.2, normal: u = 2.0, interval ±3.92 (seed ${SEED})`, () => {
    const sample = run(sum(four('normal'), four(1)));
    expect(sample.mean).toBeCloseTo(0, 2);
    expect(sample.u).toBeCloseTo(2, 1);
    expect(Math.abs(sample.interval().high - 3.92)).toBeLessThan(0.05);
    expect(Math.abs(sample.interval().low + 3.92)).toBeLessThan(0.05);
  });

  test('9.2.3, rectangular: u = 2.0, interval ±3.88 = ±2√3·(2 − (3/5)^¼)', () => {
    const sample = run(sum(four('rectangle'), four(1)));
    expect(sample.u).toBeCloseTo(2, 1);
    expect(Math.abs(sample.interval().high - 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25))).toBeLessThan(0.04);
  });

  test('9.2.4, one rectangle of ten times the width: first order ±19.9, in truth ±17.0', () => {
    const model = sum(four('rectangle'), [1, 1, 1, 10]);
    expect(1.96 * budget(model, 'y', sensitivities(model))!.u).toBeCloseTo(19.9, 1);
    expect(Math.abs(run(model).interval().high - 17)).toBeLessThan(0.1);
  });
});

// JCGM 101:2008 9.3, mass calibration in air. Published: first order 1.2340 mg, u = 0.0539 mg; Monte Carlo u = 0.0754 mg, 95 % interval
// [1.0834, 1.3825] mg (shortest; the distribution is nearly symmetric). Exact u from E(1/ρ) and E(1/ρ²): 0.07548 mg.
test(`JCGM 101:2008 9.3, mass calibration (seed ${SEED})`, () => {
  const model = exampleModel({
    inputs: {
      reference: [100_000, normal(0.05)],
      added: [1.234, normal(0.02)],
      air: [1.2, { shape: 'rectangular', low: 1.1, high: 1.3 }],
      'density of the weight': [8000, { shape: 'rectangular', low: 7000, high: 9000 }],
      'density of the reference': [8000, { shape: 'rectangular', low: 7950, high: 8050 }],
    },
    outputs: { mass: ([m, d, a, w, r]) => (m + d) * (1 + (a - 1.2) * (1 / w - 1 / r)) - 100_000 },
  });
  const sens = sensitivities(model);
  expect(sens.y0[0]).toBeCloseTo(1.234, 4);
  expect(budget(model, 'mass', sens)!.u).toBeCloseTo(0.0539, 4);
  const sample = monteCarlo(model, { samples: 50_000, seed: SEED }).outputs.get('mass')!;
  expect(sample.mean).toBeCloseTo(1.234, 2);
  expect(Math.abs(sample.u / 0.0755 - 1)).toBeLessThan(0.01);
  expect(Math.abs(sample.interval().low - 1.0834)).toBeLessThan(0.004);
  expect(Math.abs(sample.interval().high - 1.3825)).toBeLessThan(0.004);
});

// JCGM 101:2008 9.4, comparison loss X₁² + X₂² with u = 0.005 each, in units of 10⁻⁶. Published u (Monte Carlo): 50, 112, 502.
// Closed forms: mean x₁² + 2u², variance 4x₁²u² + 4u⁴.
describe('JCGM 101:2008 9.4, comparison loss', () => {
  const loss = (x1: number) =>
    exampleModel({
      inputs: { x1: [x1, normal(0.005)], x2: [0, normal(0.005)] },
      outputs: { loss: ([a, b]) => 1e6 * (a * a + b * b) },
    });

  test.each([
    [0, 0, 50, 50],
    [0.01, 100, 150, 112],
    [0.05, 500, 2550, 502],
  ])('x₁ = %d: first-order u %d; Monte Carlo %d with u = %d', (x1, firstOrder, mean, u) => {
    const model = loss(x1);
    const sample = monteCarlo(model, { samples: 50_000, seed: SEED }).outputs.get('loss')!;
    expect(budget(model, 'loss', sensitivities(model))!.u).toBeCloseTo(firstOrder, 6);
    expect(Math.abs(sample.mean / mean - 1)).toBeLessThan(0.005);
    expect(Math.abs(sample.u / u - 1)).toBeLessThan(0.02);
  });

  test('first order is marked as not to be trusted at x₁ = 0 and 0.010', () => {
    expect(sensitivities(loss(0)).bent[0]).toEqual([0, 1]);
    expect(sensitivities(loss(0.01)).bent[0]).toEqual([0, 1]);
    expect(sensitivities(loss(0.05)).bent[0]).toEqual([]);
  });

  test('at x₁ = 0 the loss is exponential with mean 50: symmetric interval −50·ln 0.975 … −50·ln 0.025', () => {
    const { low, high } = monteCarlo(loss(0), { samples: 50_000, seed: SEED }).outputs.get('loss')!.interval();
    expect(Math.abs(low - -50 * Math.log(0.975))).toBeLessThan(0.1);
    expect(Math.abs(high - -50 * Math.log(0.025))).toBeLessThan(4);
  });
});
