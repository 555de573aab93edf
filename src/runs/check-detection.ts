import { Refusal, refuse } from '../fault/fault.ts';
import { type Detection, delimiters, type Given, isNumber } from './detect.ts';
import { headingUnit } from './header-unit.ts';
import { elapsed } from './run.ts';
import { place, type Scan } from './scan.ts';
import { splitLine } from './split-line.ts';

/** Refuses what was given for a log and can't be used with any. */
export function checkGiven({ delimiter, units = {} }: Given): void {
  if (delimiter !== undefined && !delimiters.some((each) => each === delimiter))
    throw new Refusal(refuse('run/bad-delimiter', { delimiter }));
  for (const [column, unit] of Object.entries(units))
    if (unit !== '' && !headingUnit(column, unit)) throw new Refusal(refuse('run/bad-unit', { column, unit }));
}

/** Refuses a log whose header makes no table of it. */
export function checkDetection(detection: Detection, scan: Scan, name: string, given: Given): void {
  const header = scan.head[0];
  const at = place(name, scan.headerLine, header, 1, Math.max(1, header.length));
  const atHeading = (c: number) => {
    const raw = splitLine(header, detection.delimiter);
    const before = raw.slice(0, c).reduce((sum, field) => sum + field.length + 1, 0);
    return place(name, scan.headerLine, header, before + 1, Math.max(1, raw[c].length));
  };
  const headings = detection.columns.map(({ heading }) => heading);
  if (headings.length < 2) throw new Refusal(refuse('run/one-column', {}, at));
  const nameless = headings.indexOf('');
  if (nameless >= 0) throw new Refusal(refuse('run/nameless-column', { number: nameless + 1 }, atHeading(nameless)));
  if (headings.every((heading) => isNumber(heading, detection.decimal)))
    throw new Refusal(refuse('run/no-header', {}, at));
  const lower = headings.map((heading) => heading.toLowerCase());
  const twice = lower.findIndex((heading, c) => lower.indexOf(heading) !== c);
  if (twice >= 0) throw new Refusal(refuse('run/duplicate-column', { column: headings[twice] }, atHeading(twice)));
  const named: [string, string][] = [
    ...(given.time === undefined ? [] : [['--time', given.time] as [string, string]]),
    ...Object.keys(given.units ?? {}).map((column): [string, string] => ['--unit', column]),
    ...(given.text ?? []).map((column): [string, string] => ['--text', column]),
  ];
  const unknown = named.find(([, column]) => !headings.includes(column));
  if (unknown)
    throw new Refusal(refuse('run/no-such-column', { option: unknown[0], column: unknown[1], known: headings }, at));
  if (scan.lines < 2) throw new Refusal(refuse('run/header-only', {}, at));
  if (detection.time < 0) throw new Refusal(refuse('run/no-time', { known: headings }, at));
  const reserved = lower.findIndex((heading, c) => heading === elapsed && c !== detection.time);
  if (reserved >= 0)
    throw new Refusal(refuse('run/reserved-column', { column: headings[reserved] }, atHeading(reserved)));
  const { heading } = detection.columns[detection.time];
  if (detection.timeFormat === 'unknown')
    throw new Refusal(refuse('run/time-format', { text: detection.firstTime, column: heading }, firstTimePlace()));

  function firstTimePlace() {
    const row = scan.head[1];
    const before = splitLine(row, detection.delimiter)
      .slice(0, detection.time)
      .reduce((sum, field) => sum + field.length + 1, 0);
    return place(name, scan.headerLine + 1, row, before + 1, Math.max(1, detection.firstTime.length));
  }
}
