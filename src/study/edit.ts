import { stringify } from 'yaml';
import { nearest } from '../fault/nearest.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { linesOf } from './lines.ts';
import { addressOf } from './quantities.ts';
import { type Path, type Raw, rawAt, type RawMap, type Span } from './raw.ts';
import { climb, readStudy } from './read.ts';
import { readText } from './yaml-text.ts';
import { pathOf } from './changes.ts';

/** A new content for one field. */
export interface Edit {
  /** Address of the field, such as `parts.core-sense.fitted.1.resistance#stacked-22`. */
  readonly path: string;
  readonly value: string;
  /** Where the new number comes from; left out: what is written about its source stays. */
  readonly source?: string;
}

export type Edited = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly faults: readonly Fault[] };

interface Splice extends Span {
  readonly text: string;
}

/**
 * The study's text with some fields changed and everything else, comments, order and quoting, as it was.
 * Refused: a field that doesn't exist (a rating left out is added), and a text that would no longer read as a study.
 */
export function editStudy(text: string, file: string, edits: readonly Edit[]): Edited {
  const reading = readText(text, file);
  if (!reading.ok) return reading;
  const { steps } = climb(reading.raw, linesOf(text, file));
  const splices: Splice[] = [];
  const faults: Fault[] = [];
  for (const edit of edits) {
    const [written, id] = edit.path.split('#');
    const path = pathOf(written);
    const board = id === undefined ? reading.raw : steps.find((step) => step.id === id)?.board;
    const found = board && findField(board, path, edit.path);
    if (found?.shape === 'scalar') splices.push(scalarSplice(text, found, edit));
    else if (found?.shape === 'map' && found.entries.has('value')) splices.push(...mapSplices(text, found, edit));
    else {
      const holder = found || id !== undefined ? undefined : rawAt(reading.raw, path.slice(0, -1));
      const added = holder?.shape === 'map' ? addition(text, holder, String(path.at(-1)), edit) : undefined;
      if (added) splices.push(added);
      else faults.push(refuse('study/no-such-field', { path: edit.path, nearest: nearest(edit.path, addresses(text, file)) }));
    }
  }
  if (faults.length > 0) return { ok: false, faults };
  splices.sort((a, b) => b.from - a.from);
  const edited = splices.reduce((whole, { from, to, text: piece }) => whole.slice(0, from) + piece + whole.slice(to), text);
  const check = readStudy(edited, file);
  return check.ok ? { ok: true, text: edited } : { ok: false, faults: check.faults };
}

function addresses(text: string, file: string): string[] {
  const reading = readStudy(text, file);
  return reading.ok ? [...new Set(reading.study.steps.flatMap((step) => [...step.quantities.values()]))] : [];
}

/** The field with this address. A change may have moved it up in its list, so the address counts, not the place. */
function findField(board: Raw, path: Path, address: string): Raw | undefined {
  const here = rawAt(board, path);
  if (here && (!address.includes('#') || addressOf(board, path) === address)) return here;
  return walk(board, []);

  function walk(raw: Raw, at: Path): Raw | undefined {
    if (at.length > 0 && addressOf(board, at) === address) return raw;
    const children: (readonly [string | number, Raw])[] =
      raw.shape === 'map' ? [...raw.entries].map(([key, { value }]) => [key, value]) : raw.shape === 'list' ? [...raw.items.entries()] : [];
    for (const [key, child] of children) {
      const found = walk(child, [...at, key]);
      if (found) return found;
    }
    return undefined;
  }
}

function scalarSplice(text: string, { span }: Raw, { value, source }: Edit): Splice {
  const before = text.slice(span.from, span.to);
  if (source !== undefined) return { ...span, text: `{ value: ${quoted(value, before, true)}, source: ${quoted(source, '', true)} }` };
  // An empty field has no text of its own: its place is right behind its key.
  if (before === '' || span.from === span.to) return { ...span, text: ` ${quoted(value, '', inFlow(text, span.from))}` };
  return { ...span, text: quoted(value, before, inFlow(text, span.from)) };
}

function mapSplices(text: string, map: RawMap, { value, source }: Edit): Splice[] {
  const number = map.entries.get('value')!.value;
  const flow = text[map.span.from] === '{';
  const splices = [{ ...number.span, text: quoted(value, text.slice(number.span.from, number.span.to), flow) }];
  if (source === undefined) return splices;
  const old = map.entries.get('source')?.value;
  if (old) return [...splices, { ...old.span, text: quoted(source, text.slice(old.span.from, old.span.to), flow) }];
  const added = addition(text, map, 'source', { path: '', value: source });
  return added ? [...splices, added] : splices;
}

/** A new field behind the last one of its map. */
function addition(text: string, map: RawMap, key: string, { value, source }: Edit): Splice | undefined {
  const last = [...map.entries.values()].at(-1);
  if (!last) return undefined;
  const flow = text[map.span.from] === '{';
  const content = source === undefined ? quoted(value, '', flow) : `{ value: ${quoted(value, '', true)}, source: ${quoted(source, '', true)} }`;
  const end = last.value.span.to;
  if (flow) return { from: end, to: end, text: `, ${key}: ${content}` };
  const first = [...map.entries.values()][0].key.from;
  const indent = ' '.repeat(first - (text.lastIndexOf('\n', first - 1) + 1));
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  // The end of a nested block lies behind its last line break.
  if (text[end - 1] === '\n') return { from: end, to: end, text: `${indent}${key}: ${content}${newline}` };
  const lineEnd = text.indexOf('\n', end);
  return lineEnd < 0
    ? { from: text.length, to: text.length, text: `${newline}${indent}${key}: ${content}` }
    : { from: lineEnd + 1, to: lineEnd + 1, text: `${indent}${key}: ${content}${newline}` };
}

/** Whether a scalar at `offset` stands inside braces or brackets of its own line. */
function inFlow(text: string, offset: number): boolean {
  const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
  return /[{[]/.test(line);
}

/** `value` as a YAML scalar, quoted as the text before it was, or only where it must be. */
function quoted(value: string, before: string, flow: boolean): string {
  if (before.startsWith('"')) return JSON.stringify(value);
  if (before.startsWith("'") && !/[\n\r]/.test(value)) return `'${value.replaceAll("'", "''")}'`;
  if (/[\n\r]/.test(value) || (flow && /[,[\]{}]/.test(value))) return JSON.stringify(value);
  if (/^-?\d+(\.\d+)?$/.test(value)) return value;
  return stringify(value, { lineWidth: 0, defaultStringType: 'PLAIN', defaultKeyType: 'PLAIN' }).trimEnd();
}
