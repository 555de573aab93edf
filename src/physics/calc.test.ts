import { describe, expect, test } from 'vitest';
import { Refusal, sayFault } from '../fault/fault.ts';
import { calculate, findFormula, listFormulas } from './calc.ts';
import { readAssignments } from './read-inputs.ts';

/** The faults of whatever `work` refuses. */
function refusalOf(work: () => unknown) {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error.faults;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('uncertainty', () => {
  // GUM 5.1.2 by hand for R = ab/(a+b): ∂R/∂a = b²/(a+b)², u(a) = 0.01·a/√3.
  test('to first order it follows the partial derivatives', () => {
    const { outputs } = calculate('parallel-resistance', { a: '5 mΩ ± 1 %', b: '22 mΩ ± 1 %' });
    const ofA = ((22 / 27) ** 2 * 0.05e-3) / Math.sqrt(3);
    const ofB = ((5 / 27) ** 2 * 0.22e-3) / Math.sqrt(3);
    const [{ value, u, budget, method }] = outputs;
    expect(value).toBeCloseTo(110e-3 / 27, 12);
    expect(u! / Math.hypot(ofA, ofB)).toBeCloseTo(1, 5);
    expect(method).toBe('first-order');
    expect(budget!.rows.map(({ input }) => input)).toEqual(['a', 'b']);
    expect(budget!.rows[0].share).toBeCloseTo(ofA ** 2 / (ofA ** 2 + ofB ** 2), 5);
  });

  test('the interval of a single rectangle is the middle 95 % of it', () => {
    const { outputs } = calculate('sense-real-power', { allowed: '40 W ± 10 %', assumed: '5 mΩ', effective: '5 mΩ' });
    expect(outputs[0].interval!.low).toBeCloseTo(36 + 0.025 * 8, 2);
    expect(outputs[0].interval!.high).toBeCloseTo(44 - 0.025 * 8, 2);
    expect(outputs[1]).toMatchObject({ u: 0, method: 'first-order' });
  });

  test('none stated: none given, and said to be open', () => {
    const { outputs, warnings, samples } = calculate('parallel-resistance', { a: '5 mΩ', b: '22 mΩ' });
    expect(outputs[0].u).toBeNull();
    expect(outputs[0].interval).toBeNull();
    expect(samples).toBe(0);
    expect(warnings).toEqual([{ code: 'calc/no-uncertainty', severity: 'open', data: { inputs: ['a', 'b'] } }]);
  });

  test('draws that run away are counted and told', () => {
    const near = { ambient: '60 degC', resistance: '50 K/W ~ 40 %', fixed: '0.8 W', growing: '2 W' };
    const { warnings, outputs } = calculate('electrothermal-fixed-point', {
      ...near,
      coefficient: '5000 ppm/K',
      reference: '25 degC',
    });
    const lost = warnings.find(({ code }) => code === 'calc/draws-lost')!;
    expect(Number(lost.data.runaway)).toBeGreaterThan(10);
    expect(lost.data.lost).toBe(lost.data.runaway);
    expect(outputs[0].method).toBe('monte-carlo');
  });

  test('a number of phases with an uncertainty has no result: hardly a draw is a whole number', () => {
    const inputs = { ...findFormula('input-capacitor-current').example.inputs, phases: '3 ± 1' };
    expect(refusalOf(() => calculate('input-capacitor-current', inputs))[0].code).toBe('calc/draws-lost');
  });

  test('where every input has one and all goes well, nothing has to be said; 8192 draws by seed 1 unless told otherwise', () => {
    const inputs = { a: '5 mΩ ± 1 %', b: '22 mΩ ± 1 %' };
    expect(calculate('parallel-resistance', inputs)).toMatchObject({ warnings: [], samples: 8192, seed: 1 });
  });

  test('the same seed gives the same interval', () => {
    const inputs = { a: '5 mΩ ± 1 %', b: '22 mΩ ± 1 %' };
    const of = (seed: number) => calculate('parallel-resistance', inputs, { seed }).outputs[0].interval;
    expect(of(3)).toEqual(of(3));
    expect(of(3)).not.toEqual(of(4));
  });
});

test('a result is shown in the unit its input was given in', () => {
  expect(calculate('parallel-resistance', { a: '5 kΩ', b: '22 kΩ' }).outputs[0].unit).toBe('kΩ');
});

test('outside the valid range the result stays, with a warning', () => {
  const inputs = { rating: '3 W', temperature: '-60 degC', from: '70 degC', end: '170 degC' };
  const { outputs, warnings } = calculate('derated-rating', inputs);
  expect(outputs[0].value).toBe(3);
  expect(warnings.map(({ code }) => code)).toContain('calc/outside-valid-range');
});

describe('what is refused', () => {
  test('an unknown formula, with the one nearest in spelling or in meaning', () => {
    const near = (name: string) => refusalOf(() => findFormula(name))[0].data.near as string[];
    expect(near('paralel-resistance')[0]).toBe('parallel-resistance');
    expect(near('ripple')).toContain('inductor-ripple');
    // Words of two letters mean nothing; the formula that holds most of the words comes before those that hold one.
    expect(near('in of')).toEqual([]);
    expect(near('ripple current capacitor phases')[0]).toBe('input-capacitor-current');
    expect(refusalOf(() => findFormula('toString'))[0].code).toBe('calc/unknown-formula');
  });

  test('an unknown and a missing input, together', () => {
    const faults = refusalOf(() => calculate('rated-current', { power: '1 W', resistence: '1 mΩ' }));
    expect(faults.map(({ code }) => code)).toEqual(['calc/unknown-input', 'calc/missing-inputs']);
    expect(faults[0].data.near).toBe('resistance');
    expect(faults[1].data.missing).toEqual(['resistance']);
    expect(sayFault(faults[1]).expected).toContain('an electrical resistance');
  });

  test('a wrong dimension, with its place inside the argument', () => {
    const [fault] = refusalOf(() => calculate('rated-current', { power: '3 W', resistance: '0.5 mV' }));
    expect(fault.code).toBe('quantity/wrong-dimension');
    const { text, column, length } = fault.place!;
    expect(text.slice(column - 1, column - 1 + length)).toBe('mV');
    expect(fault.place).toMatchObject({ file: 'input resistance', line: 1, column: 'resistance=0.5 '.length + 1 });
  });

  test.each([
    ['a negative resistance', 'rated-current', { power: '3 W', resistance: '-1 mΩ' }, 'calc/cannot-exist'],
    ['no resistance at all', 'rated-current', { power: '3 W', resistance: '0 mΩ' }, 'calc/cannot-exist'],
    [
      'a derating line that ends before it begins',
      'derated-rating',
      { rating: '3 W', temperature: '80 degC', from: '170 degC', end: '70 degC' },
      'calc/requirement',
    ],
    [
      'a loop gain of 1',
      'electrothermal-fixed-point',
      {
        ambient: '60 degC',
        resistance: '100 K/W',
        fixed: '1 W',
        growing: '2 W',
        coefficient: '5000 ppm/K',
        reference: '25 degC',
      },
      'calc/runaway',
    ],
  ])('%s', (_, name, inputs, code) => {
    expect(refusalOf(() => calculate(name, inputs as Record<string, string>)).map((fault) => fault.code)).toEqual([
      code,
    ]);
  });

  test('two and a half phases', () => {
    const inputs = { ...findFormula('input-capacitor-current').example.inputs, phases: '2.5' };
    expect(refusalOf(() => calculate('input-capacitor-current', inputs))[0].code).toBe('calc/requirement');
  });

  test('an argument that assigns nothing, and an input given twice', () => {
    expect(refusalOf(() => readAssignments(['a', 'b=', '=5 mΩ'])).map(({ code }) => code)).toEqual([
      'calc/bad-assignment',
      'calc/bad-assignment',
      'calc/bad-assignment',
    ]);
    expect(refusalOf(() => readAssignments(['a=5 mΩ', 'a=5 mΩ']))[0]).toMatchObject({
      code: 'calc/given-twice',
      data: { name: 'a' },
    });
  });

  test('an input named like a property of every object is unknown, not read', () => {
    const faults = refusalOf(() => calculate('rated-current', readAssignments(['constructor=1 W'])));
    expect(faults.map(({ code }) => code)).toEqual(['calc/unknown-input', 'calc/missing-inputs']);
  });
});

test('a value keeps an equals sign of its own, as in (k=2)', () => {
  expect(readAssignments(['a=5.02 mΩ ± 0.06 mΩ (k=2)']).a).toBe('5.02 mΩ ± 0.06 mΩ (k=2)');
});

test('the list is searched by every word of the search', () => {
  const found = listFormulas('ripple phase').map(({ name }) => name);
  expect(found).toEqual(expect.arrayContaining(['inductor-ripple', 'input-capacitor-current']));
  expect(found).not.toContain('rated-current');
  expect(listFormulas('ripple nonsense')).toEqual([]);
});
