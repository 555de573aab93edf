import type { Place } from '../fault/fault.ts';
import { pathOf } from './changes.ts';
import { spanAt } from './raw.ts';
import { readText } from './yaml-text.ts';

/** Where a field, or what holds it, stands in a study's text; undefined when the text can't be read. */
export function placeOf(text: string, file: string, path: string): Place | undefined {
  const reading = readText(text, file);
  return reading.ok ? reading.lines.place(spanAt(reading.raw, pathOf(path))) : undefined;
}
