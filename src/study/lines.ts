import type { Place } from '../fault/fault.ts';
import type { Span } from './raw.ts';

/** Offsets of a text turned into lines and columns. */
export interface Lines {
  place(span: Span): Place;
}

/** Indexes the lines of `text`, which came from `file`. */
export function linesOf(text: string, file: string): Lines {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return {
    place({ from, to }) {
      const offset = Math.min(Math.max(from, 0), text.length);
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (starts[middle] <= offset) low = middle;
        else high = middle - 1;
      }
      const start = starts[low];
      const end = starts[low + 1] ?? text.length + 1;
      const line = text.slice(start, end - 1).replace(/\r$/, '');
      const column = Math.min(offset - start, line.length);
      const length = Math.max(1, Math.min(to - offset, line.length - column));
      return { file, line: low + 1, column: column + 1, length, text: line };
    },
  };
}
