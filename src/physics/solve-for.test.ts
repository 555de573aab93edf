import { describe, expect, test } from 'vitest';
import { Refusal } from '../fault/fault.ts';
import { calculate, findFormula } from './calc.ts';
import { solveFor } from './solve-for.ts';

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

// I = √(P/R), so R = P/I²: ∂R/∂P = 1/I², ∂R/∂I = −2P/I³ by hand.
test('the answer has the uncertainty of everything given', () => {
  const question = { power: '3 W ± 5 %', current: '77.46 A ± 1 %' };
  const { roots, samples, seed } = solveFor('rated-current', 'resistance', question);
  expect([samples, seed]).toEqual([8192, 1]);
  expect(roots).toHaveLength(1);
  const [{ solved }] = roots;
  expect(solved.value / (3 / 77.46 ** 2)).toBeCloseTo(1, 12);
  const ofPower = (0.05 * 3) / Math.sqrt(3) / 77.46 ** 2;
  const ofCurrent = (2 * 3 * 0.01 * 77.46) / Math.sqrt(3) / 77.46 ** 3;
  expect(solved.u! / Math.hypot(ofPower, ofCurrent)).toBeCloseTo(1, 3);
  expect(solved.budget!.rows.map(({ input }) => input)).toEqual(['power', 'current']);
  expect(solved.interval!.low).toBeLessThan(solved.value);
  expect(solved.unit).toBe('mΩ');
});

// A result's own budget turned round: c(x; p) = −(∂y/∂p)/(∂y/∂x), here from the forward budget.
test('sensitivities are those of the implicit function', () => {
  const { inputs } = findFormula('inductor-ripple').example;
  const given = { ...inputs, inductance: '1 µH ± 1 %', frequency: '500 kHz ± 1 %' };
  const forward = calculate('inductor-ripple', given).outputs[0];
  const slope = (input: string) => forward.budget!.rows.find((row) => row.input === input)!.sensitivity;
  const { inductance: _, ...others } = given;
  const question = { ...others, ripple: `${forward.value} A` };
  const { solved } = solveFor('inductor-ripple', 'inductance', question).roots[0];
  const [{ sensitivity }] = solved.budget!.rows;
  expect(sensitivity / -(slope('frequency') / slope('inductance'))).toBeCloseTo(1, 3);
});

test('a temperature is found in its own unit, with the other results there', () => {
  const wire = { wire: 'AWG 24', length: '1 km', resistance: '100 Ω' };
  const [{ solved }] = solveFor('wire-resistance', 'temperature', wire).roots;
  expect(solved.unit).toBe('°C');
  expect(solved.value - 293.15).toBeCloseTo((100 / 84.22 - 1) / 3.93e-3, 0);
});

test('the other results are those at the answer', () => {
  const { roots } = solveFor('sense-real-power', 'effective', {
    allowed: '40 W',
    assumed: '5 mΩ',
    'real-power': '50 W',
  });
  expect(roots[0].solved.value).toBeCloseTo(4e-3, 12);
  expect(roots[0].outputs[0]).toMatchObject({ name: 'factor' });
  expect(roots[0].outputs[0].value).toBeCloseTo(1.25, 12);
});

test('a very small result has an answer too', () => {
  const { roots } = solveFor('parallel-resistance', 'b', { a: '10 nΩ', resistance: '5 nΩ' });
  expect(roots[0].solved.value / 10e-9).toBeCloseTo(1, 9);
});

// ΔI = (U_in − U_out)·U_out/(U_in·L·f) is a parabola in U_out: both sides of its top give the same ripple.
test('several answers are all given', () => {
  const { inputs } = findFormula('inductor-ripple').example;
  const { 'output-voltage': _, ...others } = inputs;
  const { roots } = solveFor('inductor-ripple', 'output-voltage', { ...others, ripple: '2 A' });
  expect(roots).toHaveLength(2);
  expect(roots[0].solved.value + roots[1].solved.value).toBeCloseTo(13.2, 10);
  expect(roots[0].solved.value * roots[1].solved.value).toBeCloseTo(2 * 13.2 * 1e-6 * 500e3, 9);
});

test('a number of phases is found as a whole number', () => {
  const { phases: _, ...others } = findFormula('input-capacitor-current').example.inputs;
  const of = (phases: string) => calculate('input-capacitor-current', { ...others, phases }).outputs[0].value;
  const { roots } = solveFor('input-capacitor-current', 'phases', { ...others, 'capacitor-current': `${of('3')} A` });
  expect(roots.map(({ solved }) => solved.value)).toContain(3);
});

describe('what is refused', () => {
  const code = (work: () => unknown) => refusalOf(work).map((fault) => fault.code);

  test('a result that cannot be reached, with the range that can', () => {
    const [fault] = refusalOf(() => solveFor('parallel-resistance', 'b', { a: '5 mΩ', resistance: '6 mΩ' }));
    expect(fault.code).toBe('calc/no-root');
    expect(fault.data.high).toMatch(/^5(\.0+)? mΩ$/);
  });

  test('an input that the result does not depend on', () => {
    const { current: _, ...others } = findFormula('inductor-ripple').example.inputs;
    expect(code(() => solveFor('inductor-ripple', 'current', { ...others, ripple: '3 A' }))).toEqual([
      'calc/independent',
    ]);
  });

  test('so it is too when the result asked for is the one that it always has', () => {
    const { current: _, ...others } = findFormula('inductor-ripple').example.inputs;
    const { value } = calculate('inductor-ripple', { ...others, current: '20 A' }).outputs[0];
    expect(code(() => solveFor('inductor-ripple', 'current', { ...others, ripple: `${value} A` }))).toEqual([
      'calc/independent',
    ]);
  });

  test('so it is too when the result is always nothing', () => {
    const nothing = { allowed: '0 W', effective: '5 mΩ', 'real-power': '0 W' };
    expect(code(() => solveFor('sense-real-power', 'assumed', nothing))).toEqual(['calc/independent']);
  });

  test('a result that a whole range gives', () => {
    const [target] = findFormula('derated-rating').outputs;
    const given = { rating: '3 W', from: '70 degC', end: '170 degC', [target.name]: '3 W' };
    expect(code(() => solveFor('derated-rating', 'temperature', given))).toEqual(['calc/plateau']);
  });

  test('no result, two results, an input that is missing, one that is no input, one that is given as well', () => {
    expect(code(() => solveFor('rated-current', 'power', { resistance: '1 mΩ' }))).toEqual(['calc/one-target']);
    const two = { allowed: '10 W', assumed: '5 mΩ', 'real-power': '10 W', factor: '1' };
    expect(code(() => solveFor('sense-real-power', 'effective', two))).toEqual(['calc/one-target']);
    expect(code(() => solveFor('rated-current', 'power', { current: '1 A' }))).toEqual(['calc/missing-inputs']);
    expect(refusalOf(() => solveFor('rated-current', 'powr', { current: '1 A' }))[0].data.near).toBe('power');
    const both = { power: '1 W', resistance: '1 mΩ', current: '1 A' };
    expect(code(() => solveFor('rated-current', 'power', both))).toEqual(['calc/unknown-given']);
    expect(code(() => calculate('rated-current', both))).toEqual(['calc/output-given']);
  });

  test('a result of a wrong dimension, or an input that cannot exist', () => {
    expect(code(() => solveFor('rated-current', 'power', { resistance: '1 mΩ', current: '1 V' }))).toEqual([
      'quantity/wrong-dimension',
    ]);
    expect(code(() => solveFor('rated-current', 'power', { resistance: '-1 mΩ', current: '1 A' }))).toEqual([
      'calc/cannot-exist',
    ]);
  });
});
