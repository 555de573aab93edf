import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from './read.ts';

const small = readFileSync('test/boards/small.yaml', 'utf8');
const resistance = 'parts.core-sense.fitted.0.resistance';

const faultsOf = (more: string, text = small) => {
  const reading = readStudy(`${text}\n${more}\n`, 'study.yaml');
  if (reading.ok) return [];
  return reading.faults.map((fault) => {
    for (const sentence of Object.values(sayFault(fault))) expect(`${sentence ?? ''}`).not.toMatch(/undefined|NaN/);
    const { code, place } = fault;
    return [code, place!.text.slice(place!.column - 1, place!.column - 1 + place!.length)];
  });
};

const shared = (entry: string) => `shared:\n  meter: {${entry}}`;
const correlated = (...entries: string[]) => `correlations:\n${entries.map((entry) => `  - {${entry}}`).join('\n')}`;

describe('what several numbers have in common', () => {
  test('is read, and is a number of the board with a path of its own', () => {
    const more = `${shared(`factor: 100 % ± 0.2 %, of: [${resistance}], source: certificate`)}
  probe: {offset: 0 K ± 0.5 K, of: [heat.ambient]}
${correlated(`between: [${resistance}, parts.core-sense.fitted.0.joint], coefficient: 0.4, reason: one reel`)}`;
    const reading = readStudy(`${small}\n${more}\n`, 'study.yaml');
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    const numbers = new Map([...reading.study.steps[0].quantities].map(([quantity, path]) => [path, quantity]));
    expect(numbers.get('shared.meter.factor')).toMatchObject({ value: 1, source: 'certificate' });
    expect(numbers.get('shared.probe.offset')).toMatchObject({ kind: 'temperature-difference', value: 0 });
  });

  test.each([
    [
      shared(`factor: 100 % ± 1 %, of: [parts.core-sens.fitted.0.resistance]`),
      'study/unknown-name',
      'parts.core-sens.fitted.0.resistance',
    ],
    [shared(`factor: 100 % ± 1 %, of: [shared.meter.factor]`), 'study/unknown-name', 'shared.meter.factor'],
    [shared(`factor: 100 % ± 1 %, of: [${resistance}, ${resistance}]`), 'study/named-twice', resistance],
    [shared('factor: 100 % ± 1 %, of: []'), 'study/too-few', 'of'],
    [shared(`factor: 0 % ± 1 %, of: [${resistance}]`), 'study/out-of-range', '0 % ± 1 %'],
    [shared(`offset: 0 K ± 0.5 K, of: [${resistance}]`), 'study/offset-kind', resistance],
    [shared(`offset: 0 furlong ± 1 furlong, of: [${resistance}]`), 'quantity/no-such-unit', '0 furlong ± 1 furlong'],
    [shared(`offset: 0 V ± 0 V, of: [${resistance}]`), 'quantity/bad-tolerance', '0 V'],
    [shared(`of: [${resistance}]`), 'study/missing-key', 'meter'],
    [correlated(`between: [${resistance}, nowhere], coefficient: 0.5`), 'study/unknown-name', 'nowhere'],
    [correlated(`between: [${resistance}, ${resistance}], coefficient: 0.5`), 'study/named-twice', resistance],
    [correlated(`between: [${resistance}, demand.scale], coefficient: 0.5`), 'study/exact-correlated', 'demand.scale'],
    [
      correlated(
        `between: [${resistance}, heat.ambient], coefficient: 1`,
        `between: [heat.ambient, ${resistance}], coefficient: 1`,
      ),
      'study/correlated-twice',
      'between',
    ],
    [
      correlated(
        `between: [${resistance}, heat.ambient], coefficient: 0.9`,
        'between: [heat.ambient, demand.crest], coefficient: 0.9',
      ),
      'study/impossible-correlations',
      '0.9',
    ],
  ])('%s is refused: %s', (more, code, marked) => {
    expect(faultsOf(more, small.replace(/scale: .*/, 'scale: 2'))).toEqual([[code, marked]]);
  });

  test.each([
    ['1.1', 'study/beyond'],
    ['-1.1', 'study/beyond'],
    ['half', 'study/wrong-shape'],
  ])('a coefficient of %s is refused', (coefficient, code) => {
    const faults = faultsOf(correlated(`between: [${resistance}, heat.ambient], coefficient: ${coefficient}`));
    expect(faults).toEqual([[code, coefficient]]);
  });

  test('a number that a step brings in can be named, and one that is gone is no fault', () => {
    const text = small.slice(0, small.indexOf('steps:'));
    const added = 'parts.core-sense.fitted.1.resistance#b';
    const steps = `steps:
  - id: a
  - id: b
    changes:
      - { at: parts.core-sense.fitted.1, becomes: { resistance: 22 mohm ± 1 % } }
  - id: c
    changes:
      - { at: parts.core-sense.fitted.0, removed: true }`;
    expect(faultsOf(`${steps}\n${shared(`factor: 100 % ± 1 %, of: [${resistance}, ${added}]`)}`, text)).toEqual([]);
  });
});
