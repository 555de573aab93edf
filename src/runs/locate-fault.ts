import { createInterface } from 'node:readline';
import { type Fault, refuse } from '../fault/fault.ts';
import { type Detection, isDate, isNumber } from './detect.ts';
import { openLog, place } from './scan.ts';
import { splitLine } from './split-line.ts';

interface Line {
  readonly number: number;
  readonly text: string;
}

/**
 * Looks for the first line that isn't as the detection says: a field too many or too few, one that is no number, a time that is none.
 * Slow and exact; called only after the store has refused the file. Null when every line is in order.
 */
export async function locateFault(
  file: string,
  name: string,
  detection: Detection,
  headerLine: number,
): Promise<Fault | null> {
  for await (const { number, text } of rowsOf(file, headerLine)) {
    const fault = lineFault(text, detection);
    if (fault) return { ...fault.what, place: place(name, number, text, fault.column, Math.max(1, fault.length)) };
  }
  return null;
}

/** Line of a row of readings (0-based), for showing its place. */
export async function lineOfRow(file: string, headerLine: number, row: number): Promise<Line> {
  let before = 0;
  for await (const line of rowsOf(file, headerLine)) if (before++ === row) return line;
  return { number: headerLine, text: '' };
}

async function* rowsOf(file: string, headerLine: number): AsyncGenerator<Line> {
  const reader = createInterface({ input: openLog(file), crlfDelay: Number.POSITIVE_INFINITY });
  let number = 0;
  try {
    for await (const text of reader) if (++number > headerLine && text !== '') yield { number, text };
  } finally {
    reader.close();
  }
}

/** What is wrong with one line of readings, and where in it; null when nothing is. */
export function lineFault(line: string, detection: Detection): { what: Fault; column: number; length: number } | null {
  const { delimiter, decimal, columns, time, timeFormat } = detection;
  if ((line.match(/"/g)?.length ?? 0) % 2 === 1)
    return { what: refuse('run/open-quote'), column: line.lastIndexOf('"') + 1, length: 1 };
  const fields = splitLine(line, delimiter);
  if (fields.length !== columns.length) {
    const what = refuse('run/ragged', { found: fields.length, expected: columns.length });
    return { what, column: 1, length: line.length };
  }
  let column = 1;
  for (const [c, field] of fields.entries()) {
    const { heading, type } = columns[c];
    const data = { text: field.slice(0, 60), column: heading };
    const at = { column, length: field.length };
    if (c === time && timeFormat === 'date and time') {
      if (field.trim() !== '' && !isDate(field)) return { what: refuse('run/time-format', data), ...at };
    } else if (type === 'number' && !isNumber(field, decimal))
      return { what: refuse(decimal === ',' ? 'run/not-a-comma-number' : 'run/not-a-number', data), ...at };
    column += field.length + 1;
  }
  return null;
}
