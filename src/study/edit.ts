import { stringify } from 'yaml';
import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { pathOf } from './changes.ts';
import { linesOf } from './lines.ts';
import { addressOf } from './quantities.ts';
import { type Path, type Raw, type RawMap, rawAt, type Span } from './raw.ts';
import { climb, readStudy } from './read.ts';
import { readText } from './yaml-text.ts';

/** A new content for one field. */
export interface Edit {
  /** Address of the field, such as `parts.core-sense.fitted.1.resistance#stacked-22`. */
  readonly path: string;
  readonly value: string;
  /** Where the new number comes from; left out: what is written about its source stays. */
  readonly source?: string;
  /** What was stated before this number was learnt; kept where it is already written. */
  readonly before?: string;
}

export type Edited =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly faults: readonly Fault[] };

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
      const content = isAnnotated(edit) ? annotated(edit, '') : undefined;
      const added =
        holder?.shape === 'map' && holder.entries.size > 0
          ? addition(text, holder, [
              [String(path.at(-1)), content ?? quoted(edit.value, '', text[holder.span.from] === '{')],
            ])
          : undefined;
      if (added) splices.push(added);
      else
        faults.push(
          refuse('study/no-such-field', { path: edit.path, nearest: nearest(edit.path, addresses(text, file)) }),
        );
    }
  }
  if (faults.length > 0) return { ok: false, faults };
  splices.sort((a, b) => b.from - a.from);
  const edited = splices.reduce(
    (whole, { from, to, text: piece }) => whole.slice(0, from) + piece + whole.slice(to),
    text,
  );
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
      raw.shape === 'map'
        ? [...raw.entries].map(([key, { value }]) => [key, value])
        : raw.shape === 'list'
          ? [...raw.items.entries()]
          : [];
    for (const [key, child] of children) {
      const found = walk(child, [...at, key]);
      if (found) return found;
    }
    return undefined;
  }
}

function scalarSplice(text: string, { span }: Raw, edit: Edit): Splice {
  const before = text.slice(span.from, span.to);
  if (isAnnotated(edit)) return { ...span, text: annotated(edit, before) };
  const value = quoted(edit.value, before, inFlow(text, span.from));
  // An empty field has no text of its own: its place is right behind its key.
  return { ...span, text: before === '' ? ` ${value}` : value };
}

/** A number already written as `{ value, … }`: what the edit doesn't speak of stays, and so does what was stated before an earlier fit. */
function mapSplices(text: string, map: RawMap, { value, source, before }: Edit): Splice[] {
  const flow = text[map.span.from] === '{';
  const replace = ({ span }: Raw, by: string) => ({ ...span, text: quoted(by, text.slice(span.from, span.to), flow) });
  const splices: Splice[] = [replace(map.entries.get('value')!.value, value)];
  const added: [string, string][] = [];
  if (before !== undefined && !map.entries.has('before')) added.push(['before', before]);
  const old = map.entries.get('source')?.value;
  if (source !== undefined && old) splices.push(replace(old, source));
  else if (source !== undefined) added.push(['source', source]);
  if (added.length > 0)
    splices.push(
      addition(
        text,
        map,
        added.map(([key, by]) => [key, quoted(by, '', flow)]),
      ),
    );
  return splices;
}

/** New fields behind the last one of their map. */
function addition(text: string, map: RawMap, fields: readonly (readonly [key: string, content: string])[]): Splice {
  const entries = [...map.entries.values()];
  const end = entries.at(-1)!.value.span.to;
  const written = fields.map(([key, content]) => `${key}: ${content}`);
  if (text[map.span.from] === '{') return { from: end, to: end, text: `, ${written.join(', ')}` };
  const first = entries[0].key.from;
  const indent = ' '.repeat(first - (text.lastIndexOf('\n', first - 1) + 1));
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const lines = written.map((field) => `${indent}${field}${newline}`).join('');
  // The end of a nested block lies behind its last line break.
  if (text[end - 1] === '\n') return { from: end, to: end, text: lines };
  const lineEnd = text.indexOf('\n', end);
  if (lineEnd < 0) return { from: text.length, to: text.length, text: `${newline}${lines.slice(0, -newline.length)}` };
  return { from: lineEnd + 1, to: lineEnd + 1, text: lines };
}

function isAnnotated({ source, before }: Edit): boolean {
  return source !== undefined || before !== undefined;
}

/** The edit as `{ value, before, source }`. */
function annotated({ value, source, before }: Edit, old: string): string {
  const fields = [`value: ${quoted(value, old, true)}`];
  if (before !== undefined) fields.push(`before: ${quoted(before, '', true)}`);
  if (source !== undefined) fields.push(`source: ${quoted(source, '', true)}`);
  return `{ ${fields.join(', ')} }`;
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
