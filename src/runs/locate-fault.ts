import { createInterface } from 'node:readline';
import { type Fault, refuse } from '../fault/fault.ts';
import { type Detection, isNumber, splitLine } from './detect.ts';
import { openLog, place } from './scan.ts';

/**
 * Looks for the first line that isn't as the detection says: a field too many or too few, or one that is no number.
 * Slow and exact; called only after the store has refused the file. Null when every line is in order.
 */
export async function locateFault(file: string, name: string, detection: Detection, headerLine: number): Promise<Fault | null> {
  const { delimiter, columns } = detection;
  const reader = createInterface({ input: openLog(file), crlfDelay: Number.POSITIVE_INFINITY });
  let number = 0;
  try {
    for await (const line of reader) {
      number++;
      if (number <= headerLine || line === '') continue;
      const fields = splitLine(line, delimiter);
      if (fields.length !== columns.length) {
        const data = { found: fields.length, expected: columns.length };
        return refuse('run/ragged', data, place(name, number, line, 1, line.length));
      }
      let at = 1;
      for (let c = 0; c < fields.length; c++) {
        const dated = c === detection.time && detection.timeFormat === 'date and time';
        if (columns[c].type === 'number' && !dated && !isNumber(fields[c]))
          return refuse(
            'run/not-a-number',
            { text: fields[c].slice(0, 60), column: columns[c].heading },
            place(name, number, line, at, Math.max(1, fields[c].length)),
          );
        at += fields[c].length + 1;
      }
    }
  } finally {
    reader.close();
  }
  return null;
}

/** A line's text by its number, for showing a place. */
export async function lineAt(file: string, wanted: number): Promise<string> {
  const reader = createInterface({ input: openLog(file), crlfDelay: Number.POSITIVE_INFINITY });
  let number = 0;
  try {
    for await (const line of reader) if (++number === wanted) return line;
  } finally {
    reader.close();
  }
  return '';
}
