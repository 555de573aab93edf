import { expect, test } from 'vitest';
import { tableText } from './table-text.ts';

test('cells are separated by tabs and rows by line breaks, whatever a cell holds', () => {
  expect(tableText(['limit', 'margin'], [['a\tb\nc', '3.1 A']])).toBe('limit\tmargin\na b c\t3.1 A');
});

test('a title from a file is never pasted as a formula, a signed number stays one', () => {
  expect(tableText(['=HYPERLINK("x")', '@a', '-b'], [['-3.1 A', '+4 %', '−2 K']])).toBe(
    "'=HYPERLINK(\"x\")\t'@a\t'-b\n-3.1 A\t+4 %\t−2 K",
  );
});
