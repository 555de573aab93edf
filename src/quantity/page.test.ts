import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type KindName, kinds } from './kind.ts';
import { readQuantity, readUnit } from './read.ts';

const page = readFileSync(new URL('../../docs/quantities.md', import.meta.url), 'utf8');
const kindNames = Object.keys(kinds) as KindName[];

/** Code of one column of the table under a heading. */
function codes(heading: string, column: number): string[] {
  const section = page.split(/^## /m).find((part) => part.startsWith(heading))!;
  const rows = section.split('\n').filter((line) => /^\| (?!---)/.test(line));
  return rows.flatMap((row) => [...row.split('|')[column].matchAll(/`([^`]+)`/g)].map((found) => found[1]));
}

test.each(codes('The unit', 2).filter((code) => code !== 'AWG 18'))('the page names %s, and it is a unit', (unit) => {
  expect(kindNames.some((kind) => readUnit(unit, kind))).toBe(true);
});

test.each(codes('The uncertainty', 1))('the page shows %s, and it is read with an uncertainty', (text) => {
  const readings = kindNames.map((kind) => readQuantity(text, kind));
  expect(readings.some((reading) => reading.ok && reading.quantity.spread !== null)).toBe(true);
});
