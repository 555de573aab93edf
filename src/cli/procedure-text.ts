import type { ExpectedReading } from '../steps/expected-readings.ts';
import type { Procedure } from '../steps/procedure.ts';
import type { ProcedureItem } from '../steps/procedure-item.ts';
import { type ItemState, orphansOf, stateOf } from '../steps/procedure-ticks.ts';
import type { Ticks } from '../study/ticks.ts';
import { plural, writeTable } from './text-table.ts';

/** A procedure with its ticks, for a terminal. */
export function procedureText(procedure: Procedure, ticks: Ticks): string {
  const { study, step, title, about, items } = procedure;
  const done = items.filter((item) => stateOf(item, ticks).state === 'done').length;
  let phase = '';
  const blocks = items.map((item) => {
    const head = item.phase === phase ? [] : [`── ${item.phase}`];
    phase = item.phase;
    return [...head, itemText(item, stateOf(item, ticks))].join('\n');
  });
  return [
    [`${study}: ${step}, ${title}`, about, `${done} of ${plural(items.length, 'item')} done`]
      .filter(Boolean)
      .join('\n'),
    ...numbersOnly(procedure),
    ...blocks,
    ...warnings(procedure, ticks),
  ].join('\n\n');
}

/** What differs between the procedure and what was ticked: the study has changed since. */
export function warnings({ items, step }: Procedure, ticks: Ticks): string[] {
  const changed = items.filter((item) => stateOf(item, ticks).state === 'changed');
  const orphans = orphansOf(items, ticks);
  return [
    ...(changed.length > 0
      ? [
          `The procedure of ${step} has changed since it was ticked: ${changed.map(({ number, id }) => `${number} ${id}`).join(', ')}. What was ticked there counts as not done.`,
        ]
      : []),
    ...orphans.map(([id, { at, said }]) => `Ticked ${at} and no longer in the procedure: ${id}: ${said}`),
  ];
}

/** Changes that are only figures of the study: nothing to do for them. */
function numbersOnly({ changes }: Procedure): string[] {
  const numbers = changes.filter(({ work }) => work === 'number').map(({ does }) => does);
  return numbers.length > 0 ? [numbers.join('\n')] : [];
}

const boxes = { open: '[ ]', done: '[x]', changed: '[?]' } as const;

function itemText(item: ProcedureItem, state: ItemState): string {
  const indent = ' '.repeat(9);
  const when =
    state.state === 'done'
      ? [`done ${state.at}`]
      : state.state === 'changed'
        ? [`ticked ${state.at}, when it said: ${state.said}`]
        : [];
  const lines = [
    ...when,
    ...item.details,
    ...(item.stop ? [`Stop: ${item.stop}`] : []),
    ...item.cautions.map((each) => `! ${each}`),
  ];
  return [
    `${boxes[state.state]} ${String(item.number).padStart(2)}  ${item.does}  (${item.id})`,
    ...lines.map((line) => indent + line),
    ...(item.readings.length > 0 ? [readingsTable(item.readings, indent)] : []),
  ].join('\n');
}

function readingsTable(readings: readonly ExpectedReading[], indent: string): string {
  return writeTable(
    [
      { heading: 'instrument' },
      { heading: 'expected', align: 'right' },
      { heading: '95 %', align: 'right' },
      { heading: 'stop and think', align: 'right' },
      { heading: 'break off', align: 'right' },
    ],
    readings.map(({ title, expected, low, high, think, abort }) => [
      title,
      expected.text,
      `${low.text} to ${high.text}`,
      think ? `> ${think.text}` : 'break off first',
      abort ? sayAbort(abort) : 'no limit known',
    ]),
    indent,
  );
}

/** "> 99 °C". */
export function sayAbort({ side, at }: NonNullable<ExpectedReading['abort']>): string {
  return `${side === 'under' ? '>' : '<'} ${at.text}`;
}
