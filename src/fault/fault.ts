import { type FaultCode, words } from './words/index.ts';

/** Where something stands in a file of the user's: 1-based line and column, the length to underline, and the line's own text. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly length: number;
  readonly text: string;
}

/** What a fault's sentence is made of: names, numbers and lists of names, never finished prose. */
export type FaultData = Readonly<Record<string, string | number | readonly string[]>>;

/**
 * Something that was found and can't be accepted (`refusal`), should be known (`warning`) or isn't known (`open`).
 * A code and data; the words live in `words/`.
 */
export interface Fault {
  readonly code: FaultCode;
  readonly severity: 'refusal' | 'warning' | 'open';
  readonly data: FaultData;
  readonly place?: Place;
}

/** Thrown where a door (command line, server, page) has to tell the person: holds one or more faults. */
export class Refusal extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[] | Fault) {
    const list = 'code' in faults ? [faults] : faults;
    super(list.map((fault) => `${fault.code}: ${sayFault(fault).found}`).join('\n'));
    this.name = 'Refusal';
    this.faults = list;
  }
}

/** Makes a refusing fault; `place` may be added later by whoever knows the file. */
export function refuse(code: FaultCode, data: FaultData = {}, place?: Place): Fault {
  return { code, severity: 'refusal', data, place };
}

/** The sentences of a fault: what was found, what was expected, what to do. */
export interface Sentences {
  readonly found: string;
  readonly expected?: string;
  readonly remedy?: string;
}

/** The words for a fault. */
export function sayFault(fault: Fault): Sentences {
  return words[fault.code](fault.data as never);
}

/** A fault as text for a terminal: place, line, caret, what was found, expected, and what to do. */
export function writeFault(fault: Fault): string {
  const { found, expected, remedy } = sayFault(fault);
  const lines: string[] = [];
  const { place } = fault;
  lines.push(place ? `${place.file}:${place.line}:${place.column}: ${found}` : found);
  if (place) {
    // A very long line is shown as a window around the place: a log or a study may hold a line of many megabytes.
    const from = Math.max(0, place.column - 61);
    const shown = place.text.slice(from, from + 120).replace(/\t/g, ' ');
    const number = String(place.line);
    lines.push(`  ${number} | ${shown}`);
    const width = Math.max(1, Math.min(place.length, shown.length - (place.column - 1 - from)));
    lines.push(`  ${' '.repeat(number.length)} | ${' '.repeat(place.column - 1 - from)}${'^'.repeat(width)}`);
  }
  if (expected) lines.push(`  expected: ${expected}`);
  if (remedy) lines.push(`  do: ${remedy}`);
  return lines.join('\n');
}
