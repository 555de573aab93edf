import { expect, test } from 'vitest';
import { writeTable } from './text-table.ts';

test('columns line up where characters are wide, combined or unseen', () => {
  const columns = [{ heading: 'part' }, { heading: 'power', align: 'right' }] as const;
  const rows = [
    ['電源', '5 W'],
    ['ab́c', '15 W'],
    ['⚡x', '1 W'],
    ['x\u200by', '2 W'],
  ];
  expect(writeTable(columns, rows)).toBe(
    ['part  power', '電源    5 W', 'ab́c    15 W', '⚡x     1 W', 'x\u200by      2 W'].join('\n'),
  );
});
