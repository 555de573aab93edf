import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Edit, editStudy } from './edit.ts';
import { readStudy } from './read.ts';
import type { Study } from './study.ts';

const file = 'examples/mini-pc/study.yaml';
const text = readFileSync(file, 'utf8');
const study = readWell(text);

function readWell(from: string): Study {
  const reading = readStudy(from, file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults, null, 1));
  return reading.study;
}

function edit(from: string, ...edits: Edit[]): string {
  const edited = editStudy(from, file, edits);
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults, null, 1));
  return edited.text;
}

/** Lines that differ, as [old, new]. */
function changedLines(a: string, b: string): [string, string][] {
  const [old, made] = [a.split('\n'), b.split('\n')];
  expect(made.length).toBe(old.length);
  return old.flatMap((line, i): [string, string][] => (line === made[i] ? [] : [[line, made[i]]]));
}

const addresses = [
  ...new Map(study.steps.flatMap((step) => [...step.quantities].map(([q, path]) => [path, q] as const))),
];

test('an edit changes its own line and keeps the comment behind it', () => {
  const edited = edit(text, { path: 'parts.adapter.voltage', value: '19.42(2) V' });
  expect(changedLines(text, edited)).toEqual([
    [
      '    voltage: 19.5 V ± 2 %                  # at no load',
      '    voltage: 19.42(2) V                  # at no load',
    ],
  ]);
});

test('a number of a step is edited inside that step’s change, the base stays', () => {
  const edited = edit(text, {
    path: 'parts.core-sense.fitted.1.resistance#stacked-9',
    value: '9.08(2) mohm',
    source: 'measured',
  });
  expect(changedLines(text, edited)).toEqual([
    [
      '        becomes: { value: 9.1 mohm ± 1 %, source: invented data sheet }',
      '        becomes: { value: 9.08(2) mohm, source: measured }',
    ],
  ]);
});

test('a source and what was stated before turn a plain number into a map', () => {
  const change = {
    path: 'heat.links.board-air.through.0.film.area',
    value: '171(9) cm^2',
    source: 'learnt, from run 1',
    before: '180 cm^2 ± 10 %',
  };
  const once = edit(text, change);
  expect(once).toContain('area: { value: 171(9) cm^2, before: 180 cm^2 ± 10 %, source: "learnt, from run 1" } ');
  const twice = edit(once, { ...change, value: '170(5) cm^2', before: '171(9) cm^2' });
  expect(twice).toContain('area: { value: 170(5) cm^2, before: 180 cm^2 ± 10 %, source: "learnt, from run 1" } ');
});

test('a rating that was left out is added to its part', () => {
  const without = text.replace(/^ {4}rated-current: open {2,}# the marking.*\n/m, '');
  const edited = edit(without, { path: 'parts.fuse.rated-current', value: '8 A', source: 'data sheet' });
  expect(edited).toContain('    heats: board\n    rated-current: { value: 8 A, source: data sheet }\n  system-sense:');
});

test('editing every number at once and editing back gives the identical text', () => {
  const edits = addresses.flatMap(([path, { text: old }]) => {
    const other = old.replace(/^(\d+)\.(\d+)/, '$1.$21').replace(/^([1-9]\d*)(?= )/, '$1.01');
    return other === old ? [] : [{ path, old, other }];
  });
  expect(edits.length).toBeGreaterThan(180);
  const there = edit(text, ...edits.map(({ path, other }) => ({ path, value: other })));
  expect(changedLines(text, there).length).toBeGreaterThan(180);
  expect(edit(there, ...edits.map(({ path, old }) => ({ path, value: old })))).toBe(text);
});

test('a text that would no longer read is refused with its faults', () => {
  const edited = editStudy(text, file, [{ path: 'parts.adapter.voltage', value: '5 mohm' }]);
  expect(edited).toMatchObject({ ok: false, faults: [{ code: 'quantity/wrong-dimension', place: { file } }] });
});

test('an address that isn’t there is refused with the nearest one', () => {
  const edited = editStudy(text, file, [{ path: 'parts.adaptor.voltage', value: '5 V' }]);
  expect(edited).toMatchObject({
    ok: false,
    faults: [{ code: 'study/no-such-field', data: { nearest: 'parts.adapter.voltage' } }],
  });
});

test('whatever is written as a source comes back as it was', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (source) => {
      fc.pre(!/[\p{C}\ufffd]/u.test(source));
      const edited = readWell(edit(text, { path: 'parts.adapter.voltage', value: '19.42(2) V', source }));
      const { board } = edited.steps[0];
      const { adapter } = board.parts;
      expect(adapter.kind === 'supply' && adapter.voltage.source).toBe(source);
    }),
    { numRuns: 30, seed: 7 },
  );
});
