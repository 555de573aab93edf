import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateAt } from '../metrology/evaluate.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import { readQuantity, readUnit } from '../quantity/read.ts';
import { calculate } from './calc.ts';
import { catalogue } from './catalogue.ts';
import { asModel, canExist, type Formula, validRange } from './formula.ts';

const SEED = 20_261_125;

test('every formula has its own name', () => {
  expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
});

describe.each(catalogue.map((formula) => [formula.name, formula] as const))('%s', (_, formula) => {
  test('its record is complete: names, kinds, units that fit, source and range', () => {
    expect(formula.name).toMatch(/^[a-z][a-z0-9-]*$/);
    for (const text of [formula.title, formula.equation, formula.room, formula.source, validRange(formula)])
      expect(text.trim()).not.toBe('');
    for (const { name, kind, unit } of [...formula.inputs, ...formula.outputs]) {
      expect(name).toMatch(/^[a-z][a-z0-9-]*$/);
      expect(readUnit(unit, kind), `${name} in ${unit}`).not.toBeNull();
    }
    const inputs = formula.inputs.map(({ name }) => name);
    expect(new Set(inputs).size).toBe(inputs.length);
    const names = [...inputs, ...formula.outputs.map(({ name }) => name)];
    expect(new Set(names).size, 'a name is an input or a result').toBe(names.length);
    for (const { symbol, title } of formula.inputs) expect(symbol.trim() && title.trim()).not.toBe('');
    for (const { unitOf } of formula.outputs) if (unitOf !== undefined) expect(inputs).toContain(unitOf);
    for (const { symbol } of formula.inputs) expect(formula.equation).toContain(symbol);
  });

  test('its worked example runs and meets the published result', () => {
    const { inputs, result, tolerance, source } = formula.example;
    expect(source).not.toBe('');
    expect(Object.keys(result).length).toBeGreaterThan(0);
    const { outputs, warnings } = calculate(formula.name, inputs);
    expect(warnings.filter(({ severity }) => severity === 'warning')).toEqual([]);
    for (const [name, text] of Object.entries(result)) {
      const { value, kind } = outputs.find((output) => output.name === name)!;
      const published = read(text, kind);
      const offBy = (factor: number) => Math.abs((factor * value) / published - 1);
      expect(offBy(1), `${name} is ${value}, published ${text}`).toBeLessThanOrEqual(tolerance);
      expect(Math.min(offBy(0.99), offBy(1.01)), 'a law one per cent off would show').toBeGreaterThan(tolerance);
    }
  });

  test(`inside its range every result is a finite number, or there is none at all (seed ${SEED})`, () => {
    const model = modelOfExample(formula);
    const y = new Float64Array(model.outputs.length);
    let solved = 0;
    fc.assert(
      fc.property(fc.tuple(...formula.inputs.map((_input, i) => factorOf(model.inputs[i].value))), (values) => {
        const x = Float64Array.from(values);
        const { ending } = model.evaluate(x, y);
        if (ending === 'solved') {
          solved++;
          expect(y.every(Number.isFinite)).toBe(true);
        } else expect(y.every(Number.isNaN)).toBe(true);
      }),
      { seed: SEED, numRuns: 600 },
    );
    expect(solved).toBeGreaterThan(30);
  });

  test('evaluating twice gives the same, and leaves the inputs alone', () => {
    const model = modelOfExample(formula);
    const x = Float64Array.from(model.inputs, ({ value }) => value);
    const before = x.slice();
    expect(evaluateAt(model, x).y).toEqual(evaluateAt(model, x).y);
    expect(x).toEqual(before);
  });

  test('an input that cannot exist leaves no number', () => {
    const model = modelOfExample(formula);
    const bounded = formula.inputs.findIndex(({ low }) => low !== undefined);
    const { low = 0 } = formula.inputs[bounded];
    const x = Float64Array.from(model.inputs, ({ value }) => value);
    x[bounded] = low - 1;
    expect(canExist(formula.inputs[bounded], x[bounded])).toBe(false);
    const { y, status } = evaluateAt(model, x);
    expect(status.ending).toBe('infeasible');
    expect(y.every(Number.isNaN)).toBe(true);
  });
});

function read(text: string, kind: KindName): number {
  const reading = readQuantity(text, kind);
  if (!reading.ok) throw new Error(`"${text}" is not ${kinds[kind].title}`);
  return reading.quantity.value;
}

function modelOfExample(formula: Formula) {
  const quantities = Object.entries(formula.example.inputs).map(([name, text]) => {
    const { kind } = formula.inputs.find((input) => input.name === name)!;
    const reading = readQuantity(text, kind);
    if (!reading.ok) throw new Error(`example of ${formula.name}: ${text}`);
    return [name, reading.quantity] as const;
  });
  return asModel(formula, Object.fromEntries(quantities));
}

/** Values around the example's, whole numbers staying whole. */
function factorOf(value: number): fc.Arbitrary<number> {
  const spread = fc.double({ min: 0.3, max: 3, noNaN: true }).map((factor) => factor * value);
  return Number.isInteger(value) && value > 0 && value < 100
    ? fc.oneof(fc.integer({ min: 1, max: 20 }), spread)
    : fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 9, arbitrary: spread });
}
