import { describe, expect, test } from 'vitest';
import { advise, type Candidate } from './advice.ts';
import { exampleModel, normal } from './example.test-data.ts';
import { fit as fitInputs } from './fit.ts';
import { sensitivities } from './sensitivity.ts';

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
