import { describe, expect, test } from 'vitest';
import { catalogue } from '../physics/catalogue.ts';
import { runCalc } from './calc.ts';
import { isMisuse } from './door.ts';
import { exampleCommand } from './formula-text.ts';

/** Splits a command line as a shell does, single quotes only. */
function words(command: string): string[] {
  return [...command.matchAll(/(?:'[^']*'|[^\s'])+/g)].map(([word]) => word.replaceAll("'", ''));
}

test('without a name it lists every formula', () => {
  const { text, json } = runCalc(undefined, []);
  for (const { name } of catalogue) expect(text).toContain(name);
  expect((json as { formulas: unknown[] }).formulas).toHaveLength(catalogue.length);
});

test.each(catalogue.map((formula) => [formula.name, formula] as const))(
  'the example of %s runs as shown',
  (_, formula) => {
    const command = exampleCommand(formula);
    expect(runCalc(formula.name, []).text).toContain(command);
    const [, , name, ...assignments] = words(command);
    const { text, exit } = runCalc(name, assignments);
    expect(exit).toBe(0);
    expect(text).not.toMatch(/NaN|undefined|Infinity|null/);
    expect(text).toContain(formula.source);
  },
);

test('a result shows value, uncertainty, interval, budget and seed', () => {
  const { text } = runCalc('parallel-resistance', ['a=5 mΩ ± 1 %', 'b=22 mΩ ± 1 %']);
  expect(text).toContain('4.074 mΩ ± 0.020 mΩ');
  expect(text).toContain('95.1 %');
  expect(text).toContain('seed 1');
});

test('a temperature in °C has its uncertainty and its budget in kelvins', () => {
  const { text } = runCalc('electrothermal-fixed-point', [
    'ambient=60 degC ± 2 K',
    'resistance=20 K/W ± 10 %',
    'fixed=0.8 W',
    'growing=0.8 W',
    'coefficient=5000 ppm/K',
    'reference=25 degC',
  ]);
  expect(text).toMatch(/97\.8 °C ± 2\.\d K/);
  expect(text).toMatch(/ambient\s+60 degC ± 2 K\s+1\.255 K/);
});

test('data for programs hold SI numbers with their unit, all finite', () => {
  const { json } = runCalc('rated-current', ['power=3 W ± 5 %', 'resistance=0.5 mΩ ± 1 %']);
  const { outputs } = json as { outputs: { value: number; siUnit: string }[] };
  expect(outputs[0].siUnit).toBe('A');
  expect(outputs[0].value).toBeCloseTo(77.46, 2);
  expect(JSON.stringify(json)).not.toContain('NaN');
});

describe('wrong usage is told apart from data that refuse', () => {
  const errorOf = (name: string, ...assignments: string[]) => {
    try {
      return runCalc(name, assignments);
    } catch (error) {
      return error;
    }
  };

  test.each([
    ['unknown formula', errorOf('nothing'), true],
    ['no equals sign', errorOf('rated-current', 'power'), true],
    ['missing input', errorOf('rated-current', 'power=1 W'), true],
    ['unknown input', errorOf('rated-current', 'volts=1 V'), true],
    ['result without --solve', errorOf('rated-current', 'power=1 W', 'resistance=1 mΩ', 'current=1 A'), true],
    ['given twice', errorOf('rated-current', 'power=1 W', 'power=2 W'), true],
    ['wrong dimension', errorOf('rated-current', 'power=1 V', 'resistance=1 mΩ'), false],
    ['negative resistance', errorOf('rated-current', 'power=1 W', 'resistance=-1 mΩ'), false],
    ['another error', new Error('another'), false],
  ])('%s', (_, error, misuse) => {
    expect(error).toBeInstanceOf(Error);
    expect(isMisuse(error)).toBe(misuse);
  });
});

test('a search lists only what has its words, by room', () => {
  const { text } = runCalc(undefined, [], { search: 'ripple phase' });
  expect(text).toContain('power path');
  expect(text).toContain('inductor-ripple');
  expect(text).not.toContain('rated-current');
  expect(runCalc(undefined, [], { search: 'nonsense' }).text).toContain('no formula has "nonsense"');
});

// R = ab/(a + b), so b = R·a/(a − R): 4 · 5/(5 − 4) = 20.
test('an input can be the unknown', () => {
  const { text, json, exit } = runCalc('parallel-resistance', ['a=5 mΩ ± 1 %', 'resistance=4 mΩ'], { solve: 'b' });
  expect(exit).toBe(0);
  expect(text).toMatch(/b: other resistor +20\.00 mΩ ± 0\.\d+ mΩ/);
  const { roots } = json as { roots: { value: number; siUnit: string }[] };
  expect(roots[0].value).toBeCloseTo(0.02, 12);
  expect(roots[0].siUnit).toBe('Ω');
});

// p = τ·(c/BLT)^(1/m), by hand 100 Pa · (131/25)^(1/0.166) = 2.154 MPa.
test('the pressure that a bond line needs, with a warning beyond what the law is known for', () => {
  const { text } = runCalc('bond-line', ['thickness=25 um', 'yield-stress=100 Pa'], { solve: 'pressure' });
  expect(text).toMatch(/pressure: pressure on the interface +2154 kPa/);
  expect(text).toContain('warning: outside the range');
});

test('every result shows what makes it uncertain', () => {
  const { text } = runCalc('sense-real-power', ['allowed=40 W ± 1 %', 'assumed=5 mΩ ± 1 %', 'effective=5 mΩ ± 2 %']);
  expect(text.match(/what makes it uncertain/g)).toHaveLength(2);
});
