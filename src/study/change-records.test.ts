import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from './read.ts';

const small = readFileSync('test/boards/small.yaml', 'utf8');
const read = (steps: string) => readStudy(`${small.slice(0, small.indexOf('steps:'))}steps:\n${steps}`, 'study.yaml');

function changesOf(steps: string) {
  const reading = read(steps);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults, null, 1));
  return reading.study.steps.map(({ changes }) => changes);
}

function saidOf(record: string) {
  const reading = read(`
  - id: a
  - id: b
    changes:
      - { at: parts.core-sense.fitted.0.resistance, becomes: 4 mohm ± 1 %, ${record} }
`);
  return reading.ok ? [] : reading.faults.map((fault) => sayFault(fault).found);
}

test('a change keeps what stood there before, what stands there after, and what is written about it', () => {
  const [, second, third] = changesOf(`
  - id: a
  - id: b
    changes:
      - at: parts.core-sense.fitted.1
        becomes: { resistance: 22 mohm ± 1 %, rated-power: 0.5 W }
        why: stacked
        where: on top of R2
        photo: photos/r2.jpg
        undo: take it off with two irons
        done: 2026-03-05T14:10Z
      - at: parts.core-sense.fitted.1.resistance
        becomes: { value: 20 mohm ± 1 %, source: measured }
  - id: c
    changes:
      - { at: parts.core-sense.fitted.1, removed: true }
`);
  const stacked = { resistance: '22 mohm ± 1 %', 'rated-power': '0.5 W' };
  const better = { value: '20 mohm ± 1 %', source: 'measured' };
  expect(second).toEqual([
    {
      at: 'parts.core-sense.fitted.1',
      before: undefined,
      after: stacked,
      why: 'stacked',
      where: 'on top of R2',
      photo: 'photos/r2.jpg',
      undo: 'take it off with two irons',
      done: '2026-03-05T14:10Z',
    },
    // The change before it has been made already.
    { at: 'parts.core-sense.fitted.1.resistance', before: '22 mohm ± 1 %', after: better },
  ]);
  expect(third).toEqual([
    { at: 'parts.core-sense.fitted.1', before: { ...stacked, resistance: better }, after: undefined },
  ]);
});

describe('when it was done', () => {
  test.each(['2026-03-05', '2026-03-05T14:10Z', '2026-03-05T14:10:59Z', '2028-02-29'])('%s is a time', (time) =>
    expect(saidOf(`done: '${time}'`)).toEqual([]),
  );
  test.each(['5.3.2026', '2026-02-31', '2026-13-01', '2026-03-05T25:10Z', '2026-03-05T14:10', '2026-03-05 14:10'])(
    '%s is none: not a date, or not in UTC',
    (time) => expect(saidOf(`done: '${time}'`)).toEqual([`"${time}" is not a time`]),
  );
});

describe('its picture', () => {
  test.each(['photos/r2.jpg', 'r2.png', 'photos/step 1/r2..jpg'])('%s lies in the folder', (path) =>
    expect(saidOf(`photo: ${path}`)).toEqual([]),
  );
  test.each(['../r2.jpg', '/r2.jpg', 'photos/../../r2.jpg', 'photos\\r2.jpg', 'C:/r2.jpg', 'photos//r2.jpg'])(
    '%s doesn’t, or not on every machine',
    (path) => expect(saidOf(`photo: '${path}'`)).toEqual([`"${path}" is no picture of this study`]),
  );
});
