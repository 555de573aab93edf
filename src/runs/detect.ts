import { type HeadingUnit, headingUnit, unitOfHeading } from './header-unit.ts';
import { splitLine } from './split-line.ts';

/** Seconds in one unit of each way in which a time column counts. */
export const timeScales = {
  'epoch seconds': 1,
  'epoch milliseconds': 1e-3,
  'epoch microseconds': 1e-6,
  'epoch nanoseconds': 1e-9,
  'elapsed seconds': 1,
  'elapsed milliseconds': 1e-3,
  'elapsed microseconds': 1e-6,
  'elapsed minutes': 60,
  'elapsed hours': 3600,
  'date and time': 1,
};

/** How a time column counts; `unknown` is a column that was named and holds nothing that is read as a time. */
export type TimeFormat = keyof typeof timeScales | 'unknown';

/** One column as it was found. */
export interface DetectedColumn {
  readonly heading: string;
  readonly type: 'number' | 'text';
  readonly unit: HeadingUnit | null;
}

/** How a text log was found to be written. Shown before anything is stored; each guess can be overridden. */
export interface Detection {
  readonly delimiter: Delimiter;
  readonly decimal: '.' | ',';
  readonly columns: readonly DetectedColumn[];
  /** Index of the time column; −1 when none was found. */
  readonly time: number;
  readonly timeFormat: TimeFormat;
  /** The time in the first row of readings, as written. */
  readonly firstTime: string;
}

/** What a person says about a log instead of having it guessed. */
export interface Given {
  readonly delimiter?: string;
  /** Heading of the time column. */
  readonly time?: string;
  /** Units by heading; '' for a column that has none. */
  readonly units?: Readonly<Record<string, string>>;
  /** Headings of columns that hold text. */
  readonly text?: readonly string[];
}

export const delimiters = [',', ';', '\t', '|'] as const;
type Delimiter = (typeof delimiters)[number];

/** Fields that say "no value". */
export const missing = ['', 'NA', 'N/A', 'NaN', 'nan', 'null', '-'];

const numeric = {
  '.': /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\s*$/,
  ',': /^\s*[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?\s*$/,
};

/** A field that is a number, or says that there is none. */
export function isNumber(field: string, decimal: Detection['decimal']): boolean {
  return numeric[decimal].test(field) || missing.includes(field);
}

/** A date with a time of day as in ISO 8601, with or without a zone. */
export function isDate(text: string): boolean {
  return /^\s*\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?\s*(Z|[+-]\d{2}(:?\d{2})?)?\s*$/.test(text);
}

/** Guesses from the first lines of a log; the first of them is its header. What is given goes before what is found. */
export function detect(lines: readonly string[], given: Given = {}): Detection {
  const [header, ...rows] = lines;
  const delimiter = (given.delimiter as Delimiter | undefined) ?? bestDelimiter(header, rows);
  const headings = splitLine(header, delimiter).map((heading) => heading.trim());
  const cells = rows.map((row) => splitLine(row, delimiter));
  const decimal = decimalMark(cells.flat(), delimiter);
  const columns = headings.map((heading, c): DetectedColumn => {
    const written = cells.map((row) => row[c]).filter((cell) => cell !== undefined && !missing.includes(cell.trim()));
    // One cell that isn't a number makes no text column: it is a fault to be shown in its place.
    const numbers = written.filter((cell) => numeric[decimal].test(cell)).length;
    const isText = given.text?.includes(heading) || numbers < written.length / 2;
    const stated = given.units?.[heading];
    const unit = stated === undefined ? unitOfHeading(heading) : headingUnit(heading, stated);
    return { heading, type: isText ? 'text' : 'number', unit };
  });
  const time = given.time === undefined ? timeColumn(columns, cells) : headings.indexOf(given.time);
  const firstTime = cells[0]?.[time] ?? '';
  const format = time < 0 ? 'unknown' : timeFormat(columns[time], firstTime);
  return { delimiter, decimal, columns, time, timeFormat: format, firstTime };
}

function bestDelimiter(header: string, rows: readonly string[]): Delimiter {
  const counts = delimiters.map((delimiter) => {
    const width = splitLine(header, delimiter).length;
    const agreeing = rows.filter((row) => splitLine(row, delimiter).length === width).length;
    return { delimiter, width, agreeing };
  });
  counts.sort((a, b) => Number(b.width > 1) - Number(a.width > 1) || b.agreeing - a.agreeing || b.width - a.width);
  return counts[0].delimiter;
}

/** A comma is the decimal mark where it doesn't separate and more fields are numbers with it than with a point. */
function decimalMark(cells: readonly string[], delimiter: Delimiter): Detection['decimal'] {
  if (delimiter === ',') return '.';
  const withComma = cells.filter((cell) => cell.includes(',') && numeric[','].test(cell)).length;
  const withPoint = cells.filter((cell) => cell.includes('.') && numeric['.'].test(cell)).length;
  return withComma > withPoint ? ',' : '.';
}

function timeColumn(columns: readonly DetectedColumn[], cells: readonly (readonly string[])[]): number {
  const named = columns.findIndex(({ heading }) =>
    /^(time|timestamp|elapsed|date|datetime|t)([_\s[(]|$)/i.test(heading),
  );
  if (named >= 0) return named;
  return columns.findIndex((_, c) => cells.length > 0 && isDate(cells[0][c] ?? ''));
}

const elapsedUnits: Readonly<Record<string, TimeFormat>> = {
  ms: 'elapsed milliseconds',
  us: 'elapsed microseconds',
  µs: 'elapsed microseconds',
  min: 'elapsed minutes',
  h: 'elapsed hours',
};

/** A number since 1970 is told from an elapsed one by its size: as seconds 1e8 is 1973, and 1e11 is the year 5138. */
function timeFormat({ unit, type }: DetectedColumn, first: string): TimeFormat {
  if (isDate(first)) return 'date and time';
  if (type === 'text') return 'unknown';
  const size = Number(first.replace(',', '.'));
  if (size > 1e17) return 'epoch nanoseconds';
  if (size > 1e14) return 'epoch microseconds';
  if (size > 1e11) return 'epoch milliseconds';
  const elapsed = elapsedUnits[unit?.unit ?? ''];
  return elapsed ?? (size > 1e8 ? 'epoch seconds' : 'elapsed seconds');
}
