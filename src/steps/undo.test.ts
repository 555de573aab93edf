import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';
import { takenBack, undoWay } from './undo.ts';

const small = readFileSync('test/boards/small.yaml', 'utf8');

function withSteps(steps: readonly (readonly { at: string; becomes?: unknown; removed?: true }[])[]): Study | null {
  const written = steps.map((changes, i) => ({ id: `s${i}`, ...(changes.length > 0 && { changes }) }));
  const text = `${small.slice(0, small.indexOf('steps:'))}steps: ${JSON.stringify(written)}\n`;
  const reading = readStudy(text, 'study.yaml');
  return reading.ok ? reading.study : null;
}

const resistor = (milliohms: number) => ({ resistance: `${milliohms} mohm ± 1 %`, 'rated-power': '1 W' });
const said = (study: Study, from: string, to: string) =>
  undoWay(study, from, to).changes.map(({ change }) => change.undo);

describe('what is taken back', () => {
  const stacked = 'parts.core-sense.fitted.1';
  const study = withSteps([
    [],
    [{ at: stacked, becomes: resistor(22) }],
    [{ at: `${stacked}.resistance`, becomes: '12 mohm ± 1 %' }],
    [{ at: `${stacked}.resistance`, becomes: '9.1 mohm ± 1 %' }],
  ])!;

  test('a resistor that was stacked and then replaced twice is taken off, and that is all', () => {
    expect(undoWay(study, 's3', 's0').changes).toMatchObject([
      {
        step: 's1',
        changedAgain: ['s2', 's3'],
        change: { work: 'resistor-added', undo: expect.stringContaining('Take off the resistor of 9.1 mΩ ± 1 %') },
      },
    ]);
  });

  test('to a step in between, the one that stood there comes back in one move', () => {
    const [only, ...none] = said(study, 's3', 's1');
    expect(only).toContain('take off the resistor of 9.1 mΩ ± 1 % and solder one of 22 mΩ ± 1 % in its place');
    expect(none).toEqual([]);
  });

  test('the person’s own words come first', () => {
    const own = withSteps([[], [{ at: stacked, becomes: resistor(22), undo: 'two irons, pull up' } as never]])!;
    expect(said(own, 's1', 's0')).toEqual(['two irons, pull up']);
  });

  test('a step to itself is nothing; a later step is a programmer’s error', () => {
    expect(undoWay(study, 's2', 's2')).toMatchObject({ changes: [], byHand: false });
    expect(() => undoWay(study, 's1', 's2')).toThrow('comes after');
  });

  test('what came and went is nothing', () => {
    const gone = withSteps([[], [{ at: stacked, becomes: resistor(22) }], [{ at: stacked, removed: true }]])!;
    expect(said(gone, 's2', 's0')).toEqual([]);
  });

  test('what is again as it was needs no hand', () => {
    const at = 'heat.links.interface.through.0.resistance';
    const again = withSteps([[], [{ at, becomes: '0.2 K/W ± 20 %' }], [{ at, becomes: '0.3 K/W ± 20 %' }]])!;
    expect(said(again, 's2', 's0')).toEqual([]);
    expect(said(again, 's2', 's1')).toHaveLength(1);
  });

  test('a removal that moved a resistor up isn’t mixed up with the one that stood there', () => {
    const moved = withSteps([
      [],
      [{ at: stacked, becomes: resistor(22) }],
      [{ at: 'parts.core-sense.fitted.0', removed: true }],
      [{ at: 'parts.core-sense.fitted.0.resistance', becomes: '20 mohm ± 1 %' }],
    ])!;
    const [first, second, third] = said(moved, 's3', 's0');
    expect(first).toContain('take off the resistor of 20 mΩ ± 1 % and solder one of 22 mΩ ± 1 %');
    expect(second).toContain('Solder a resistor of 5 mΩ ± 1 %');
    expect(third).toContain('Take off the resistor of 22 mΩ ± 1 %');
  });
});

/** A ladder of changes at one sense point and one link, some of which don't fit the board and are then left out. */
const ladder = fc.array(
  fc.array(
    fc.oneof(
      fc
        .record({ at: fc.constantFrom(0, 1, 2), milliohms: fc.integer({ min: 1, max: 40 }) })
        .map(({ at, milliohms }) => ({
          at: `parts.core-sense.fitted.${at}`,
          becomes: resistor(milliohms),
        })),
      fc
        .record({ at: fc.constantFrom(0, 1), milliohms: fc.integer({ min: 41, max: 80 }) })
        .map(({ at, milliohms }) => ({
          at: `parts.core-sense.fitted.${at}.resistance`,
          becomes: `${milliohms} mohm ± 1 %`,
        })),
      fc.constantFrom(0, 1).map((at) => ({ at: `parts.core-sense.fitted.${at}`, removed: true as const })),
      fc.integer({ min: 1, max: 9 }).map((tenths) => ({
        at: 'heat.links.interface.through.0.resistance',
        becomes: `0.${tenths} K/W ± 20 %`,
      })),
    ),
    { maxLength: 3 },
  ),
  { minLength: 1, maxLength: 5 },
);

test('making the changes backwards gives the board of the earlier step, whatever the ladder', () => {
  let tried = 0;
  fc.assert(
    fc.property(ladder, fc.nat(), fc.nat(), (steps, a, b) => {
      const study = withSteps([[], ...steps]);
      if (!study) return;
      tried++;
      const [from, to] = [a, b].map((n) => n % study.steps.length).sort((x, y) => y - x);
      const texts = (step: number) => JSON.stringify(shown(study, step));
      let board: unknown = shown(study, from);
      for (const { change } of takenBack(study, `s${from}`, `s${to}`))
        board = placed(board, change.at.split('.'), change.before, change.after === undefined);
      expect(JSON.stringify(board)).toBe(texts(to));
    }),
    { seed: 20260305, numRuns: 200 },
  );
  expect(tried).toBeGreaterThan(30);
});

/** What the changes of these ladders touch, as written. */
function shown(study: Study, step: number): unknown {
  const { parts, heat } = study.steps[step].board;
  const { fitted } = parts['core-sense'] as { fitted: { resistance: { text: string } }[] };
  const [element] = heat.links.interface.through as { resistance: { text: string } }[];
  return {
    parts: { 'core-sense': { fitted: fitted.map(({ resistance }) => ({ resistance: resistance.text })) } },
    heat: { links: { interface: { through: [{ resistance: element.resistance.text }] } } },
  };
}

/** `holder` with `value` at the place: put in where it had been removed from a list, taken out where it had not been before. */
function placed(holder: unknown, [key, ...rest]: readonly string[], value: unknown, insert: boolean): unknown {
  const content =
    typeof value === 'object' && value !== null && 'resistance' in value ? { resistance: value.resistance } : value;
  if (Array.isArray(holder)) {
    const index = Number(key);
    if (rest.length > 0) return holder.map((item, i) => (i === index ? placed(item, rest, value, insert) : item));
    return holder.toSpliced(index, insert ? 0 : 1, ...(value === undefined ? [] : [content]));
  }
  const map = holder as Record<string, unknown>;
  return { ...map, [key]: rest.length > 0 ? placed(map[key], rest, value, insert) : content };
}
