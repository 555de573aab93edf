import { parseDocument } from 'yaml';
import { type Fault, type Place, refuse } from '../fault/fault.ts';
import { type Lines, linesOf } from './lines.ts';
import { type Raw, rawOf } from './raw.ts';

const longestText = 5_000_000;
const longestLine = 10_000;

export type TextReading =
  | { readonly ok: true; readonly raw: Raw; readonly lines: Lines; readonly faults: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads YAML into a raw tree. Not ok: nothing can be said about the content (syntax, size). Ok with faults: duplicate keys and other things
 * that don't hinder reading on. Aliases are refused unexpanded, so a file can't grow while it is read.
 */
export function readText(text: string, file: string): TextReading {
  const size = text.length;
  if (size > longestText) return failed(refuse('study/too-big', { size, most: longestText }));
  const lines = linesOf(text, file);
  const long = longLine(text);
  if (long >= 0) {
    const place = lines.place({ from: long, to: long + 1 });
    return failed(refuse('study/long-line', { most: longestLine }, { ...place, text: place.text.slice(0, 100) }));
  }
  const binary = text.search(controlCharacter);
  if (binary >= 0) return failed(refuse('study/binary', {}, printable(lines.place({ from: binary, to: binary + 1 }))));
  if (text.trim() === '') return failed(refuse('study/empty', {}, lines.place({ from: 0, to: 1 })));

  const deep = deepBracket(text);
  if (deep >= 0) return failed(refuse('study/too-deep', {}, lines.place({ from: deep, to: deep + 1 })));

  const faults: Fault[] = [];
  try {
    const document = parseDocument(text, {
      uniqueKeys: false,
      prettyErrors: false,
      merge: false,
      schema: 'core',
      logLevel: 'error',
    });
    const [error] = document.errors;
    if (error) {
      const [from, to] = error.pos;
      const message = error.message.split('\n')[0];
      return failed(refuse('study/yaml', { code: error.code, message }, lines.place({ from, to })));
    }
    const raw = rawOf(document.contents, lines, faults);
    // What stands behind an alias, a tag or too many brackets hasn't been read: the rest would be judged wrongly.
    const unread = faults.filter(
      ({ code }) => code === 'study/alias' || code === 'study/tag' || code === 'study/too-deep',
    );
    return unread.length > 0 ? failed(...unread) : { ok: true, raw, lines, faults };
  } catch (error) {
    // The YAML reader descends by recursion: text nested without end exhausts the stack.
    if (error instanceof RangeError) return failed(refuse('study/too-deep', {}, lines.place({ from: 0, to: 1 })));
    throw error;
  }
}

/** Brackets nested deeper than this are no study; the YAML reader would run out of stack on far more, at a depth that depends on the machine. */
const deepestBracket = 200;

/** Offset of the first bracket that is nested too deeply; −1 without one. Quotes and comments aren't looked at: no study has so many brackets in them. */
function deepBracket(text: string): number {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (c === '[' || c === '{') depth++;
    else if ((c === ']' || c === '}') && depth > 0) depth--;
    if (depth > deepestBracket) return i;
  }
  return -1;
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const controlCharacter = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffd]/;

function printable(place: Place): Place {
  return { ...place, text: place.text.replace(new RegExp(controlCharacter, 'g'), '·') };
}

function longLine(text: string): number {
  let start = 0;
  while (start < text.length) {
    const end = text.indexOf('\n', start);
    if ((end < 0 ? text.length : end) - start > longestLine) return start;
    if (end < 0) return -1;
    start = end + 1;
  }
  return -1;
}

function failed(...faults: Fault[]): TextReading {
  return { ok: false, faults };
}
