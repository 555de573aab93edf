import { type HeadingUnit, unitOfHeading } from './header-unit.ts';

/** How a time column counts. */
export type TimeFormat = 'epoch seconds' | 'epoch milliseconds' | 'elapsed seconds' | 'elapsed milliseconds' | 'date and time';

/** One column as it was found. */
export interface DetectedColumn {
  readonly heading: string;
  readonly type: 'number' | 'text';
  readonly unit: HeadingUnit | null;
}

/** How a text log was found to be written. Shown before anything is stored; each guess can be overridden. */
export interface Detection {
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly columns: readonly DetectedColumn[];
  /** Index of the time column; −1 when none was found. */
  readonly time: number;
  readonly timeFormat: TimeFormat;
}

export const delimiters = [',', ';', '\t', '|'] as const;

/** Splits one line at the delimiter, quotes respected. */
export function splitLine(line: string, delimiter: string): string[] {
  if (!line.includes('"')) return line.split(delimiter);
  const fields: string[] = [];
  let field = '';
  let inside = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i];
    if (inside && c === '"' && line[i + 1] === '"') {
      field += '"';
      i++;
    } else if (c === '"') inside = !inside;
    else if (c === delimiter && !inside) {
      fields.push(field);
      field = '';
    } else field += c;
  }
  fields.push(field);
  return fields;
}

/** Fields that say "no value". */
export const missing = ['', 'NA', 'N/A', 'NaN', 'nan', 'null', '-'];

const numeric = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\s*$/;

/** A field that is a number, or says that there is none. */
export function isNumber(field: string): boolean {
  return numeric.test(field) || missing.includes(field.trim());
}

/** Guesses from the first lines of a log; the first of them is its header. `delimiter` and `time` override. */
export function detect(lines: readonly string[], given: { delimiter?: string; time?: string } = {}): Detection {
  const [header, ...rows] = lines;
  const delimiter = (given.delimiter as Detection['delimiter'] | undefined) ?? bestDelimiter(header, rows);
  const headings = splitLine(header, delimiter).map((heading) => heading.trim());
  const cells = rows.map((row) => splitLine(row, delimiter));
  const columns = headings.map((heading, c): DetectedColumn => {
    const written = cells.map((row) => row[c]).filter((cell) => cell !== undefined && !missing.includes(cell.trim()));
    // One cell that isn't a number makes no text column: it is a fault to be shown in its place.
    const numbers = written.filter((cell) => numeric.test(cell)).length;
    const type = written.length > 0 && numbers >= written.length / 2 ? 'number' : written.length === 0 ? 'number' : 'text';
    return { heading, type, unit: unitOfHeading(heading) };
  });
  const time = given.time === undefined ? timeColumn(columns, cells) : headings.indexOf(given.time);
  const first = cells.find((row) => row[time] !== undefined)?.[time] ?? '';
  return { delimiter, columns, time, timeFormat: time < 0 ? 'elapsed seconds' : timeFormat(columns[time], first) };
}

function bestDelimiter(header: string, rows: readonly string[]): Detection['delimiter'] {
  const counts = delimiters.map((delimiter) => {
    const width = splitLine(header, delimiter).length;
    const agreeing = rows.filter((row) => splitLine(row, delimiter).length === width).length;
    return { delimiter, width, agreeing };
  });
  counts.sort((a, b) => Number(b.width > 1) - Number(a.width > 1) || b.agreeing - a.agreeing || b.width - a.width);
  return counts[0].delimiter;
}

function timeColumn(columns: readonly DetectedColumn[], cells: readonly (readonly string[])[]): number {
  const named = columns.findIndex(({ heading }) => /^(time|timestamp|elapsed|date|datetime|t)([_\s[(]|$)/i.test(heading));
  if (named >= 0) return named;
  return columns.findIndex((_, c) => cells.length > 0 && isDate(cells[0][c] ?? ''));
}

function isDate(text: string): boolean {
  return /^\s*\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}/.test(text);
}

function timeFormat({ heading, unit }: DetectedColumn, first: string): TimeFormat {
  if (isDate(first)) return 'date and time';
  const size = Number(first);
  const milliseconds = unit?.unit === 'ms' || /_ms$/.test(heading);
  if (size > 1e11) return 'epoch milliseconds';
  if (size > 1e8 && !milliseconds) return 'epoch seconds';
  return milliseconds ? 'elapsed milliseconds' : 'elapsed seconds';
}
