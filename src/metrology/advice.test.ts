import { describe, expect, test } from 'vitest';
import { randomStream } from '../numeric/random.ts';
import { advise, adviseTogether, type Candidate } from './advice.ts';
import { tryAdvice } from './advice-trial.ts';
import { exampleModel, logNormal, normal, rectangle } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';
import { normalBelow } from './probability.ts';
import { sensitivities } from './sensitivity.ts';

const SEED = 20_261_125;

describe('expected reduction of variance', () => {
  // Two inputs with P = [[0.25, 0.05], [0.05, 0.16]], a measurement with variance 0.04. By hand, for c = (1, 0):
  // H = (1, 1): 0.30²/0.55; H = (1, 0): 0.25²/0.29; H = (0, 1): 0.05²/0.20. For c = (2, −1), variance 0.96:
  // 0.39²/0.55, 0.45²/0.29, 0.06²/0.20.
  const joint = {
    ids: ['a', 'b'],
    mean: Float64Array.of(1, 2),
    covariance: Float64Array.of(0.25, 0.05, 0.05, 0.16),
    logarithmic: [false, false],
  };
  const model = exampleModel({
    inputs: { a: [1, normal(0.5)], b: [2, normal(0.4)] },
    outputs: { a: ([a]) => a, sum: ([a, b]) => a + b, difference: ([a, b]) => 2 * a - b },
  });
  const sens = sensitivities(model);
  const candidate = (id: string, what: Candidate['what'], effort = 1): Candidate => ({ id, what, u: 0.2, effort });
  const candidates = [
    candidate('sum', { output: 'sum' }),
    candidate('a', { input: 'a' }),
    candidate('b', { input: 'b' }),
  ];
  const taken = (output: string, id: string) => {
    const { uNow, uAfter } = advise(model, output, candidates, sens, joint)!.find((each) => each.candidate.id === id)!;
    return uNow ** 2 - uAfter ** 2;
  };

  test.each([
    ['a', 'sum', 0.09 / 0.55],
    ['a', 'a', 0.0625 / 0.29],
    ['a', 'b', 0.0025 / 0.2],
    ['difference', 'sum', 0.39 ** 2 / 0.55],
    ['difference', 'a', 0.45 ** 2 / 0.29],
    ['difference', 'b', 0.06 ** 2 / 0.2],
  ])('of %s by measuring %s', (output, id, reduction) => {
    expect(taken(output, id)).toBeCloseTo(reduction, 9);
  });

  test('the best comes first, and effort counts', () => {
    const order = (list: readonly Candidate[]) =>
      advise(model, 'a', list, sens, joint)!.map((each) => each.candidate.id);
    expect(order(candidates)).toEqual(['a', 'sum', 'b']);
    expect(order([candidates[0], candidate('a', { input: 'a' }, 10), candidates[2]])).toEqual(['sum', 'a', 'b']);
  });

  test('is what a fit then finds, whatever the reading', () => {
    const independent = advise(model, 'a', candidates, sens)!.find((each) => each.candidate.id === 'sum')!;
    for (const value of [2.5, 3, 4]) {
      const { inputs } = fitInputs({
        inputs: model.inputs,
        observations: [{ id: 'sum', model, output: 'sum', value, u: 0.2 }],
      });
      expect(inputs[0].u).toBeCloseTo(independent.uAfter, 9);
    }
  });
});

test('without sensitivities there is no advice; an unknown input is a programming error', () => {
  const model = exampleModel({ inputs: { a: [1, normal(1)] }, outputs: { y: ([a]) => a }, ending: () => 'runaway' });
  expect(advise(model, 'y', [], sensitivities(model))).toBeNull();
  const solved = { ...model, evaluate: exampleModel({ inputs: {}, outputs: { y: ([a]) => a } }).evaluate };
  const unknown = { id: 'z', what: { input: 'z' }, u: 1, effort: 1 };
  expect(() => advise(solved, 'y', [unknown], sensitivities(solved))).toThrow('no input "z"');
});

describe('margins', () => {
  const model = exampleModel({
    inputs: { load: [8, normal(1)], limit: [10, normal(0.5)] },
    outputs: { margin: ([load, limit]) => limit - load, load: ([load]) => load, limit: ([, limit]) => limit },
  });
  const hold = { side: 'under', thresholdOutput: 'limit', valueOutput: 'load', reason: 'a rating' } as const;
  const held = { ...model, outputs: model.outputs.map((each) => (each.id === 'margin' ? { ...each, hold } : each)) };
  const candidates = [
    { id: 'load', what: { input: 'load' }, u: 0.25, effort: 1 },
    { id: 'limit', what: { output: 'limit' }, u: 0.1, effort: 1 },
  ];
  const [first] = advise(held, 'margin', candidates, sensitivities(held))!;

  test('tell what a reading would do to the probability of exceeding', () => {
    // By hand: margin 2 ± √1.25, after a reading of the load 2 ± √(0.25 + 1·0.0625/1.0625).
    const after = Math.sqrt(0.25 + 0.0625 / 1.0625);
    expect(first.candidate.id).toBe('load');
    expect(first.uAfter).toBeCloseTo(after, 9);
    expect(first.exceed!.now).toBeCloseTo(0.036819, 6);
    expect(first.exceed!.borneOut).toBeCloseTo(normalBelow(-2 / after), 12);
  });

  test('the chance of a clear answer is what drawn readings give', () => {
    const stream = randomStream(SEED);
    const { uNow, uAfter } = first;
    let clear = 0;
    for (let s = 0; s < 20_000; s++) {
      const then = 2 + Math.sqrt(uNow ** 2 - uAfter ** 2) * stream.normal();
      if (normalBelow(-then / uAfter) < 0.025) clear++;
    }
    expect(first.exceed!.clears).toBeCloseTo(clear / 20_000, 2);
  });

  test('an output without a limit has none', () => {
    expect(advise(held, 'load', candidates, sensitivities(held))![0].exceed).toBeNull();
  });

  test('together: each after those before it, and none that adds nothing', () => {
    const twice = [candidates[0], { ...candidates[0], id: 'load again' }, candidates[1]];
    const chosen = adviseTogether(held, 'margin', twice, sensitivities(held), 3)!;
    expect(chosen.map(({ candidate }) => candidate.id)).toEqual(['load', 'limit', 'load again']);
    // By hand: 1/(1 + 1/0.0625) of the load, 0.25·0.01/0.26 of the limit.
    expect(chosen[1].uAfter ** 2).toBeCloseTo(0.0625 / 1.0625 + 0.0025 / 0.26, 9);
    expect(chosen[1].uNow).toBeCloseTo(chosen[0].uAfter, 12);
    // A second reading of the load as good as the first: 1/(1 + 2/0.0625).
    expect(chosen[2].uAfter ** 2).toBeCloseTo(0.0625 / 2.0625 + 0.0025 / 0.26, 9);
    const either = twice.map((each) => (each.what.input === 'load' ? { ...each, oneOf: 'load' } : each));
    expect(
      adviseTogether(held, 'margin', either, sensitivities(held), 3)!.map(({ candidate }) => candidate.id),
    ).toEqual(['load', 'limit']);
    const idle = [{ id: 'idle', what: { input: 'limit' }, u: 1e6, effort: 1 }];
    expect(adviseTogether(held, 'margin', idle, sensitivities(held), 3)).toEqual([]);
  });
});

describe(`tried on boards of which the truth is known (seed ${SEED})`, () => {
  const bent = exampleModel({
    inputs: { power: [20, normal(1)], resistance: [2, logNormal(0.2)], ambient: [25, rectangle(25, 1)] },
    outputs: { temperature: ([power, resistance, ambient]) => ambient + power * resistance },
  });
  const joint = {
    ids: ['power', 'ambient'],
    mean: Float64Array.of(20, 25),
    covariance: Float64Array.of(1, 0.8, 0.8, 1),
    logarithmic: [false, false],
  };
  test.each([
    ['resistance', { input: 'resistance' }, 0.1, undefined],
    ['temperature', { output: 'temperature' }, 1, undefined],
    ['power', { input: 'power' }, 0.1, joint],
    ['ambient', { input: 'ambient' }, 0.1, joint],
  ] as const)('measuring %s does what was advised', (id, what, u, correlated) => {
    const candidate = { id, what, u, effort: 1 };
    const [advice] = advise(bent, 'temperature', [candidate], sensitivities(bent), correlated)!;
    const tried = tryAdvice(bent, 'temperature', candidate, { seed: SEED, trials: 400 }, correlated);
    expect(tried.failed).toBe(0);
    expect(Math.abs(tried.errorBefore / advice.uNow - 1)).toBeLessThan(0.08);
    expect(Math.abs(tried.uAfter / advice.uAfter - 1)).toBeLessThan(0.06);
    expect(Math.abs(tried.errorAfter / advice.uAfter - 1)).toBeLessThan(0.12);
  });

  test('boards without a solution are counted, not used', () => {
    const model = exampleModel({
      inputs: { a: [0, normal(1)] },
      outputs: { a: ([a]) => a },
      ending: ([a]) => (a > 1 ? 'runaway' : 'solved'),
    });
    const candidate = { id: 'a', what: { input: 'a' }, u: 0.1, effort: 1 };
    const { failed, trials } = tryAdvice(model, 'a', candidate, { seed: SEED, trials: 100 });
    expect(failed + trials).toBe(100);
    expect(failed).toBeGreaterThan(5);
  });

  test('what is neither input nor output is a programming error', () => {
    const candidate = { id: 'z', what: { input: 'z' }, u: 0.1, effort: 1 };
    expect(() => tryAdvice(bent, 'temperature', candidate, { seed: SEED, trials: 1 })).toThrow('neither');
  });
});
