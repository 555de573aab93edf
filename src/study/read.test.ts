import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStudy } from './read.ts';
import type { SensePart } from './schema/parts.ts';
import type { Study } from './study.ts';

const small = readFileSync('test/boards/small.yaml', 'utf8');

function readWell(text: string): Study {
  const reading = readStudy(text, 'study.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults, null, 1));
  return reading.study;
}

/** The small study with other steps. */
function withSteps(steps: string): Study {
  return readWell(`${small.slice(0, small.indexOf('steps:'))}steps:\n${steps}`);
}

const resistors = (study: Study, step: number) => (study.steps[step].board.parts['core-sense'] as SensePart).fitted;
const addresses = (study: Study, step: number) =>
  resistors(study, step).map(
    ({ resistance }) => `${study.steps[step].quantities.get(resistance)} = ${resistance.text}`,
  );

describe('steps', () => {
  test('a change holds from its step on, and its numbers carry the step’s name', () => {
    const study = withSteps(`
  - id: a
  - id: b
    changes:
      - { at: parts.core-sense.fitted.1, becomes: { resistance: 22 mohm ± 1 % } }
  - id: c
  - id: d
    changes:
      - { at: parts.core-sense.fitted.1.resistance, becomes: 12 mohm ± 1 % }
`);
    const first = 'parts.core-sense.fitted.0.resistance = 5 mohm ± 1 %';
    expect(addresses(study, 0)).toEqual([first]);
    expect(addresses(study, 1)).toEqual([first, 'parts.core-sense.fitted.1.resistance#b = 22 mohm ± 1 %']);
    expect(addresses(study, 2)).toEqual(addresses(study, 1));
    expect(addresses(study, 3)).toEqual([first, 'parts.core-sense.fitted.1.resistance#d = 12 mohm ± 1 %']);
    expect(study.steps[3].changed).toEqual(['parts.core-sense.fitted.1.resistance']);
  });

  test('what moves up in a list when something before it is removed stays the same physical number', () => {
    const study = withSteps(`
  - id: a
  - id: b
    changes:
      - { at: parts.core-sense.fitted.1, becomes: { resistance: 22 mohm ± 1 % } }
  - id: c
    changes:
      - { at: parts.core-sense.fitted.0, removed: true }
`);
    expect(addresses(study, 2)).toEqual(['parts.core-sense.fitted.1.resistance#b = 22 mohm ± 1 %']);
  });

  test('a value changed inside { value, source } is a new number', () => {
    const study = readWell(
      small
        .replace('- resistance: 5 mohm ± 1 %', '- resistance: { value: 5 mohm ± 1 %, source: marking }')
        .replace(
          /changes:[\s\S]*$/,
          'changes:\n      - { at: parts.core-sense.fitted.0.resistance.value, becomes: 4 mohm ± 1 % }\n',
        ),
    );
    expect(addresses(study, 1)).toEqual(['parts.core-sense.fitted.0.resistance#stacked = 4 mohm ± 1 %']);
    expect(resistors(study, 1)[0].resistance.source).toBe('marking');
  });

  test('every quantity of every step has an address of its own', () => {
    for (const file of ['examples/mini-pc/study.yaml', 'test/boards/small.yaml']) {
      for (const step of readWell(readFileSync(file, 'utf8')).steps) {
        expect(new Set(step.quantities.values()).size).toBe(step.quantities.size);
        const { ambient } = step.board.heat;
        expect(step.quantities.get(ambient)).toBe('heat.ambient');
      }
    }
  });
});

test('a number without a source of its own has its part’s, a resistor’s own goes before its part’s', () => {
  const study = readWell(small);
  const [first, second] = resistors(study, 1);
  expect(first.resistance.source).toBe('invented');
  const own = readWell(small.replace('          source: invented', '          source: my drawer'));
  expect(resistors(own, 1).map(({ resistance }) => resistance.source)).toEqual(['invented', 'my drawer']);
  expect(second.resistance.source).toBe('invented');
});

test('digits stay as they were written', () => {
  const study = readWell(small.replace('crest: 1.1 ± 0.05', 'crest: 1.10'));
  expect(study.steps[0].board.demand.crest.text).toBe('1.10');
});

test('windows line ends and a byte order mark change nothing but the text', () => {
  const study = readWell(`\ufeff${small.replaceAll('\n', '\r\n')}`);
  expect([...study.steps[1].quantities.values()]).toEqual([...readWell(small).steps[1].quantities.values()]);
  expect(study.remarks.map(({ place }) => place?.text)).toEqual(
    readWell(small).remarks.map(({ place }) => place?.text),
  );
});

describe('whatever stands in the file', () => {
  const alphabet = [
    '\t',
    '  ',
    ':',
    ': ',
    '- ',
    '{',
    '}',
    '[',
    ']',
    '"',
    "'",
    '#',
    '&a ',
    '*a',
    '!x ',
    '|',
    '>',
    '\n',
    '0',
    '-',
    '±',
    '%',
    '~',
    'é',
    '𝛀',
    '__proto__',
    'null',
    '\\',
  ];
  const texts = ['examples/mini-pc/study.yaml', 'test/boards/small.yaml'].map((path) => readFileSync(path, 'utf8'));
  const mutation = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat({ max: 30 }),
    put: fc.constantFrom('', ...alphabet),
  });

  test('it is a study, or faults whose places lie inside the file', () => {
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.array(mutation, { minLength: 1, maxLength: 4 }), (text, mutations) => {
        let broken = text;
        for (const { at, cut, put } of mutations) {
          const from = Math.floor(at * broken.length);
          broken = broken.slice(0, from) + put + broken.slice(from + cut);
        }
        const lines = broken.split('\n');
        const reading = readStudy(broken, 'study.yaml');
        const faults = reading.ok ? reading.study.remarks : reading.faults;
        if (!reading.ok) expect(faults.length).toBeGreaterThan(0);
        for (const { place, code } of faults) {
          if (code === 'study/more-faults') continue;
          expect(place!.line).toBeLessThanOrEqual(lines.length);
          const line = lines[place!.line - 1].replace(/\r$/, '');
          if (code !== 'study/binary') expect(place!.text).toBe(line);
          expect(place!.column).toBeGreaterThanOrEqual(1);
          expect(place!.column).toBeLessThanOrEqual(line.length + 1);
          expect(place!.length).toBeGreaterThanOrEqual(1);
        }
      }),
      { numRuns: 150, seed: 20 },
    );
  });
});

test.each([
  ['crest: 1.1 ± 0.05', 'crest: 1.1 ± 0.2', 'demand.crest'],
  ['efficiency: 0.88 ± 0.02', 'efficiency: 0.95(3)', 'parts.adapter.efficiency'],
  ['- resistance: 0.3 K/W ± 20 %', '- resistance: 0.3 K/W ± 120 %', 'heat.links.interface.through.0.resistance'],
  ['joint: 0.1 mohm ± 0.05 mohm', 'joint: 0.1 mohm ± 0.2 mohm', 'parts.core-sense.fitted.0.joint'],
])('an uncertainty that reaches what can’t be is told: %s becomes %s', (from, to, field) => {
  const told = (text: string) =>
    readWell(text)
      .remarks.filter(({ code }) => code === 'study/reaches-out')
      .map(({ data, severity }) => [data.field, severity]);
  expect(told(small)).toEqual([]);
  expect(small).toContain(from);
  expect(told(small.replace(from, to))).toEqual([[field, 'warning']]);
});

test.each(['joint: 0 mohm ± 0.05 mohm', 'joint: 0.1 mohm ~ 80 %'])('%s reaches nothing that can’t be', (written) => {
  const text = small.replace('joint: 0.1 mohm ± 0.05 mohm', written);
  expect(readWell(text).remarks.map(({ code }) => code)).not.toContain('study/reaches-out');
});
