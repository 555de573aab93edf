import { describe, expect, test } from 'vitest';
import { writeFault } from '../fault/fault.ts';
import { budget } from './budget.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import { fit as fitInputs, type Observation } from './fit.ts';
import { monteCarlo } from './monte-carlo.ts';
import { withPosterior } from './posterior.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_104;

describe('a linear Gaussian update', () => {
  test('ten readings of one height', () => {
    // The worked example of a one-dimensional Kalman filter, kalmanfilter.net/kalman1d.html: start 60 m, σ 15 m; readings with σ 5 m;
    // final estimate 49.57 m, variance 2.47 m² (the batch formula gives 49.56989 and 2.47253).
    const readings = [48.54, 47.11, 55.01, 55.15, 49.89, 40.85, 46.72, 50.05, 51.27, 49.95];
    const model = exampleModel({ inputs: { height: [60, normal(15)] }, outputs: { height: ([height]) => height } });
    const result = fitInputs({
      inputs: model.inputs,
      observations: readings.map((value, k) => ({ id: `reading ${k + 1}`, model, output: 'height', value, u: 5 })),
    });
    expect(result.ending).toBe('converged');
    expect(result.inputs[0].value).toBeCloseTo(49.56989, 5);
    expect(result.inputs[0].u ** 2).toBeCloseTo(2.47253, 5);
    expect(result.inputs[0].determined).toBe('yes');
    expect(result.degreesOfFreedom).toBe(10);
    expect(result.faults).toEqual([]);
  });

  // x = (1, 2) with P = [[0.25, 0.05], [0.05, 0.16]], H = [1 1], R = 0.04, y = 3.5. By hand: S = 0.25 + 0.16 + 2·0.05 + 0.04 = 0.55,
  // K = (0.30, 0.21)/0.55, x⁺ = x + K/2, P⁺ = P − K·(0.30, 0.21). The prior correlation as x₂ = 2 + 0.2(x₁ − 1) + rest, var(rest) = 0.15.
  const pair = exampleModel({
    inputs: { first: [1, normal(0.5)], rest: [0, normal(Math.sqrt(0.15))] },
    outputs: {
      first: ([first]) => first,
      second: ([first, rest]) => 2 + 0.2 * (first - 1) + rest,
      sum: ([first, rest]) => first + 2 + 0.2 * (first - 1) + rest,
    },
  });
  const result = fitInputs({
    inputs: pair.inputs,
    observations: [{ id: 'sum', model: pair, output: 'sum', value: 3.5, u: 0.2 }],
  });
  const after = withPosterior(pair, result);
  const sens = sensitivities(after);

  test('two correlated numbers and their sum', () => {
    expect(sens.y0[0]).toBeCloseTo(1 + 0.15 / 0.55, 9);
    expect(sens.y0[1]).toBeCloseTo(2 + 0.105 / 0.55, 9);
    expect(budget(after, 'first', sens, result.joint)!.u ** 2).toBeCloseTo(0.25 - 0.3 ** 2 / 0.55, 9);
    expect(budget(after, 'second', sens, result.joint)!.u ** 2).toBeCloseTo(0.16 - 0.21 ** 2 / 0.55, 9);
    // (1 1) P⁺ (1 1)ᵀ = 0.51·0.04/0.55.
    expect(budget(after, 'sum', sens, result.joint)!.u ** 2).toBeCloseTo((0.51 * 0.04) / 0.55, 9);
  });

  test('draws from the fit have its covariance; drawn as independent they would not', () => {
    const variance = (joint?: typeof result.joint) =>
      monteCarlo(after, { samples: 8192, seed: SEED, joint }).outputs.get('sum')!.u ** 2;
    expect(variance(result.joint) / ((0.51 * 0.04) / 0.55)).toBeCloseTo(1, 1);
    expect(variance()).toBeGreaterThan(0.1);
  });

  test('chi-square is the squared surprise over its variance: (3.5 − 3)²/S', () => {
    expect(result.chiSquare).toBeCloseTo(0.25 / 0.55, 9);
    expect(result.residuals[0].size).toBeCloseTo(0.5 / Math.sqrt(0.55), 9);
  });
});

test('a log-normal input is fitted in its logarithm and stays positive', () => {
  const model = exampleModel({ inputs: { k: [2, logNormal(0.8)] }, outputs: { log: ([k]) => Math.log(k) } });
  const { inputs, joint } = fitInputs({
    inputs: model.inputs,
    observations: [{ id: 'log', model, output: 'log', value: -3, u: 0.6 }],
  });
  // Weighted mean of ln 2 (0.8) and −3 (0.6): weights 0.36 and 0.64 of 1.00; variance 0.8²·0.6²/1.
  const mean = 0.36 * Math.log(2) + 0.64 * -3;
  expect(joint.mean[0]).toBeCloseTo(mean, 8);
  expect(inputs[0].value).toBeCloseTo(Math.exp(mean), 8);
  expect(inputs[0].spread).toEqual({ shape: 'log-normal', sigma: expect.closeTo(0.48, 8) });
});

describe('several windows share inputs and keep their own', () => {
  // Temperature over ambient = resistance · power, with the power of each window read with its own error.
  const window = (power: string, value: number) =>
    exampleModel({
      inputs: { resistance: [1, logNormal(0.5)], [power]: [value, normal(0.05)], colour: [3, rectangle(3, 1)] },
      outputs: { rise: ([resistance, watts]) => resistance * watts },
    });
  const first = window('power 1', 10);
  const second = window('power 2', 20);
  const observations: Observation[] = [
    { id: 'rise 1', model: first, output: 'rise', value: 8.02, u: 0.1 },
    { id: 'rise 2', model: second, output: 'rise', value: 15.97, u: 0.1 },
  ];
  const inputs = [...first.inputs, second.inputs[1]];
  const result = fitInputs({ inputs, observations });

  test('the shared input is determined by both', () => {
    const [resistance] = result.inputs;
    // By hand: 0.802 and 0.7985, with uncertainties √(0.01² + 0.004²) and half of that: weights 1 : 4.
    expect(resistance.value).toBeCloseTo((0.802 + 4 * 0.7985) / 5, 3);
    expect(resistance.u).toBeCloseTo(Math.sqrt((0.01 ** 2 + 0.004 ** 2) / 5), 3);
    expect(resistance.determined).toBe('yes');
  });

  test('an input that no observation sees keeps its stated uncertainty and says so', () => {
    const colour = result.inputs.find((input) => input.id === 'colour')!;
    expect(colour).toMatchObject({ value: 3, determined: 'no', pull: null, held: null });
    expect(colour.ratio).toBeCloseTo(1, 12);
  });

  test('an input held back from the fit does not move', () => {
    const held = fitInputs({ inputs, free: ['resistance'], observations });
    expect(held.inputs.map((input) => input.id)).toEqual(['resistance']);
    expect(held.inputs[0].u).toBeLessThan(result.inputs[0].u);
  });

  test('one shared record of an unchanged value is one input, not two', () => {
    const twice = fitInputs({ inputs, observations: [observations[0], { ...observations[0], id: 'again' }] });
    // The power of window 1 is the same error both times: it doesn't average out.
    expect(twice.inputs[0].u).toBeGreaterThan(0.004);
  });
});

describe('what does not fit is named', () => {
  const line = exampleModel({
    inputs: { offset: [0, normal(10)], slope: [1, normal(10)] },
    outputs: Object.fromEntries([0, 1, 2, 3, 4, 5].map((t) => [`at ${t}`, ([offset, slope]) => offset + slope * t])),
  });
  const observations = [0.1, 0.9, 2.1, 4.9, 4, 5.1].map((value, t) => ({
    id: `reading ${t}`,
    model: line,
    output: `at ${t}`,
    value,
    u: 0.2,
  }));
  const result = fitInputs({ inputs: line.inputs, observations });

  test('a reading beyond 3, by name, and a chi-square that chance does not give', () => {
    expect(result.faults.map((fault) => fault.code)).toContain('fit/residual');
    expect(result.faults.find((fault) => fault.code === 'fit/residual')!.data.observation).toBe('reading 3');
    expect(result.faults.map((fault) => fault.code)).toContain('fit/chi-square');
  });

  test('its size is what all the others predict for it, over the combined uncertainty', () => {
    const others = fitInputs({ inputs: line.inputs, observations: observations.filter((_, t) => t !== 3) });
    const without = withPosterior(line, others);
    const sens = sensitivities(without);
    const predicted = budget(without, 'at 3', sens, others.joint)!;
    const size = (observations[3].value - sens.y0[3]) / Math.hypot(predicted.u, 0.2);
    expect(result.residuals[3].size).toBeCloseTo(size, 6);
  });

  test('an input pulled far from its stated value, and out of its bounds', () => {
    const model = exampleModel({ inputs: { a: [1, rectangle(1, 0.01)] }, outputs: { a: ([a]) => a } });
    const { faults, inputs } = fitInputs({
      inputs: model.inputs,
      observations: [{ id: 'reading', model, output: 'a', value: 2, u: 0.01 }],
    });
    expect(faults.map((fault) => fault.code).sort()).toEqual([
      'fit/chi-square',
      'fit/explained',
      'fit/input-far',
      'fit/outside',
      'fit/residual',
    ]);
    for (const fault of faults) expect(writeFault(fault)).not.toMatch(/undefined|NaN/);
    // (2 − 1)/√(0.01² + 0.01²).
    expect(inputs[0].pull).toBeCloseTo(1 / Math.hypot(0.01, 0.01), 6);
  });
});

describe('a fit without a result says which', () => {
  const model = exampleModel({
    inputs: { a: [1, normal(1)], b: [1, null] },
    outputs: { y: ([a, b]) => a + 0 * b },
    ending: ([a]) => (a > 5 ? 'runaway' : 'solved'),
  });
  const observation = { id: 'reading', model, output: 'y', value: 2, u: 0.1 };

  test('no solution to start from', () => {
    const result = fitInputs({ inputs: [{ ...model.inputs[0], value: 6 }], observations: [observation] });
    expect(result).toMatchObject({ ending: 'no-solution', inputs: [], faults: [{ code: 'fit/no-solution' }] });
  });

  test('nothing known about a free input, before or after', () => {
    const result = fitInputs({ inputs: model.inputs, free: ['a', 'b'], observations: [observation] });
    expect(result).toMatchObject({ ending: 'undetermined', inputs: [], faults: [{ data: { inputs: ['b'] } }] });
    expect(writeFault(result.faults[0])).toContain("the observations don't determine b");
  });

  test('still moving', () => {
    const curved = exampleModel({ inputs: { a: [1, normal(10)] }, outputs: { y: ([a]) => Math.exp(a) } });
    const far = { id: 'reading', model: curved, output: 'y', value: 1000, u: 0.1 };
    expect(fitInputs({ inputs: curved.inputs, observations: [far], maxPasses: 2 })).toMatchObject({
      ending: 'not-converged',
      faults: [{ code: 'fit/not-converged' }],
    });
    expect(fitInputs({ inputs: curved.inputs, observations: [far] }).inputs[0].value).toBeCloseTo(Math.log(1000), 5);
  });

  test('a step into the region without a solution is shortened', () => {
    const result = fitInputs({ inputs: [model.inputs[0]], observations: [{ ...observation, value: 4.9, u: 0.01 }] });
    expect(result.ending).toBe('converged');
  });

  test('an unknown free input and an observation without uncertainty are programming errors', () => {
    expect(() => fitInputs({ inputs: [], observations: [{ ...observation, u: 0 }] })).toThrow('has no uncertainty');
    expect(() => fitInputs({ inputs: [], free: ['z'], observations: [] })).toThrow(
      'free input "z" is not among the inputs',
    );
  });
});

describe('an input that the model refuses below zero', () => {
  const positive = (stated: number, u: number) =>
    exampleModel({
      inputs: { resistance: [stated, normal(u)], offset: [0, normal(0.1)] },
      outputs: { drop: ([resistance, offset]) => 2 * resistance + offset },
      ending: ([resistance]) => (resistance >= 0 ? 'solved' : 'infeasible'),
    });
  const fitted = (stated: number, u: number, value: number) => {
    const model = positive(stated, u);
    return fitInputs({ inputs: model.inputs, observations: [{ id: 'drop', model, output: 'drop', value, u: 0.1 }] });
  };

  // By hand: variance of drop − 2·resistance is 0.1² + 0.1² = 0.02; information 1/u² + 4/0.02 = 1/u² + 200, best value (stated/u² + 100·value)/information.
  test.each([
    [0, 1, 2],
    [1, 1, 0.02],
    [0.5, 10, 0.001],
  ])('stated as %d ± %d it is fitted to a drop of %d where that keeps it above zero', (stated, u, value) => {
    const result = fitted(stated, u, value);
    expect(result.ending).toBe('converged');
    const information = 1 / u ** 2 + 200;
    expect(result.inputs[0].value).toBeCloseTo((stated / u ** 2 + 100 * value) / information, 8);
    expect(result.inputs[0].u).toBeCloseTo(1 / Math.sqrt(information), 8);
  });

  test.each([
    [0, 1, -1],
    [1, 1, -3],
    [0.001, 0.01, -1],
  ])('stated as %d ± %d and pulled below zero by a drop of %d, it is named', (stated, u, value) => {
    const result = fitted(stated, u, value);
    expect(result.ending).toBe('not-converged');
    expect(result.inputs).toEqual([]);
    expect(result.faults.map(({ code, data }) => [code, data.inputs])).toEqual([['fit/beyond-model', ['resistance']]]);
  });
});

test('leverages add up to the number of inputs that the observations alone determine', () => {
  const line = exampleModel({
    inputs: { offset: [0, null], slope: [1, null] },
    outputs: Object.fromEntries([0, 1, 2, 10].map((t) => [`${t}`, ([offset, slope]) => offset + slope * t])),
  });
  const observations = [0, 1, 2, 10].map((t) => ({ id: `${t}`, model: line, output: `${t}`, value: t, u: 1 }));
  const { residuals } = fitInputs({ inputs: line.inputs, free: ['offset', 'slope'], observations });
  // Textbook leverage of a straight line: 1/n + (t − t̄)²/Σ(t − t̄)², t̄ = 3.25, Σ = 62.75.
  for (const { observation, leverage } of residuals)
    expect(leverage).toBeCloseTo(1 / 4 + (Number(observation) - 3.25) ** 2 / 62.75, 8);
});
