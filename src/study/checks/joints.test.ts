import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { compatibility, interfaceMetals, surfaces } from '../../physics/chemistry/compatibility.ts';
import { readStudy } from '../read.ts';

const base = readFileSync('test/broken-studies/heat-element-unknown.yaml', 'utf8');

/** What is said about a joint of a study that is whole but for it. */
function said(joint: string) {
  const element = `contact: { resistance: 5 K*mm^2/W ± 10 %, area: 100 mm^2 ± 5 %${joint} }`;
  const reading = readStudy(base.replace('past: { area: 100 mm^2 }', element), 'study.yaml');
  const faults = reading.ok ? reading.study.remarks : reading.faults;
  const about = faults.filter(({ code }) => /surface|pair/.test(code));
  return about.map(({ code, severity, place }) => ({
    code,
    severity,
    at: place!.text.slice(place!.column - 1, place!.column - 1 + place!.length),
  }));
}

test.each(Object.keys(interfaceMetals).flatMap((metal) => Object.keys(surfaces).map((surface) => [metal, surface])))(
  'a joint of %s on %s is refused, warned of or let pass as the table of compatibility has it',
  (metal, surface) => {
    const told = compatibility(metal, surface);
    if (!told.ok) throw new Error('the table doesn’t know its own names');
    const expected = {
      never: [{ code: 'study/destroys-surface', severity: 'refusal', at: surface }],
      warned: [{ code: 'study/attacks-surface', severity: 'warning', at: surface }],
      open: [{ code: 'study/unknown-pair', severity: 'warning', at: surface }],
      fine: [],
    }[told.entry.verdict];
    expect(said(`, material: ${metal}, surfaces: [${surface}]`)).toEqual(expected);
  },
);

test('gallium without its surfaces is warned of, at its name', () => {
  expect(said(', material: gallium')).toEqual([
    { code: 'study/surfaces-not-named', severity: 'warning', at: 'gallium' },
  ]);
});

test('a paste may lie on anything, and a joint that says nothing is let pass', () => {
  expect(said(', material: paste, surfaces: [aluminium]')).toEqual([]);
  expect(said('')).toEqual([]);
});
