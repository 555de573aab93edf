import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import { type Fault, refuse } from '../fault/fault.ts';
import type { Lines } from './lines.ts';

/** A stretch of the file's text: offsets of its first character and of the one behind its last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

interface Spanned {
  readonly span: Span;
  /** The path under which this came into the study; with `#<step id>` when a step's change brought it. */
  readonly address: string;
}

export interface RawScalar extends Spanned {
  readonly shape: 'scalar';
  readonly value: string | number | boolean | null;
}

export interface RawMap extends Spanned {
  readonly shape: 'map';
  readonly entries: ReadonlyMap<string, RawEntry>;
}

export interface RawEntry {
  readonly key: Span;
  readonly value: Raw;
}

export interface RawList extends Spanned {
  readonly shape: 'list';
  readonly items: readonly Raw[];
}

/** The study as written, before any meaning: maps, lists and scalars, each with its place in the file. */
export type Raw = RawScalar | RawMap | RawList;

export type Path = readonly (string | number)[];

const deepest = 30;

/** Turns a YAML node into a raw tree; faults go to `faults`. */
export function rawOf(
  node: Node | null,
  lines: Lines,
  faults: Fault[],
  path: Path = [],
  empty: Span = { from: 0, to: 0 },
): Raw {
  const address = path.join('.');
  const span = node?.range ? { from: node.range[0], to: node.range[1] } : empty;
  const nothing: RawScalar = { shape: 'scalar', value: null, span, address };
  if (node === null) return nothing;
  const refuseHere = (code: 'study/too-deep' | 'study/alias' | 'study/tag') => {
    if (!faults.some((fault) => fault.code === code)) faults.push(refuse(code, {}, lines.place(span)));
    return nothing;
  };
  if (path.length > deepest) return refuseHere('study/too-deep');
  if (isAlias(node) || (node as { anchor?: string }).anchor) return refuseHere('study/alias');
  if (node.tag?.startsWith('!')) return refuseHere('study/tag');
  if (isMap(node)) {
    const entries = new Map<string, RawEntry>();
    for (const pair of node.items) {
      const keyNode = pair.key as Node | null;
      const keyRange = keyNode?.range;
      const key = keyRange ? { from: keyRange[0], to: keyRange[1] } : span;
      const name = isScalar(keyNode) ? String(keyNode.value) : '';
      if (isAlias(keyNode) || (keyNode as { anchor?: string } | null)?.anchor) {
        refuseHere('study/alias');
        continue;
      }
      if (name === '' || name === '__proto__') {
        faults.push(refuse('study/bad-key', {}, lines.place(key)));
        continue;
      }
      const first = entries.get(name);
      if (first) {
        faults.push(refuse('study/duplicate-key', { name, line: lines.place(first.key).line }, lines.place(key)));
        continue;
      }
      entries.set(name, { key, value: rawOf(pair.value as Node | null, lines, faults, [...path, name], key) });
    }
    return { shape: 'map', entries, span, address };
  }
  if (isSeq(node)) {
    const items = node.items.map((item, index) => rawOf(item as Node | null, lines, faults, [...path, index], span));
    return { shape: 'list', items, span, address };
  }
  if (isScalar(node)) {
    const { value, source } = node;
    // A number is kept as the text it was written in wherever the two differ, so that no digit is lost.
    const kept = typeof value === 'number' && String(value) !== source ? (source ?? String(value)) : value;
    return { shape: 'scalar', value: kept as RawScalar['value'], span, address };
  }
  return nothing;
}

/** The part of the tree at `path`, or undefined. */
export function rawAt(raw: Raw, path: Path): Raw | undefined {
  let here: Raw | undefined = raw;
  for (const key of path) {
    if (here?.shape === 'map') here = here.entries.get(String(key))?.value;
    else if (here?.shape === 'list') here = here.items[Number(key)];
    else return undefined;
  }
  return here;
}

/** The tree as plain data. */
export function plainOf(raw: Raw): unknown {
  if (raw.shape === 'scalar') return raw.value;
  if (raw.shape === 'list') return raw.items.map(plainOf);
  return Object.fromEntries([...raw.entries].map(([key, entry]) => [key, plainOf(entry.value)]));
}

/** Where to point for something said about `path`: its value, its key (`key`), or, when it isn't there, the nearest thing that holds it. */
export function spanAt(raw: Raw, path: Path, part: 'key' | 'value' = 'value'): Span {
  for (let length = path.length; length > 0; length--) {
    const holder = rawAt(raw, path.slice(0, length - 1));
    const last = path[length - 1];
    const entry = holder?.shape === 'map' ? holder.entries.get(String(last)) : undefined;
    const value = entry?.value ?? rawAt(raw, path.slice(0, length));
    if (!value) continue;
    const whole = length === path.length;
    if (entry && (part === 'key' || !whole || value.shape !== 'scalar' || value.span.from === value.span.to))
      return entry.key;
    if (value.shape === 'map') return [...value.entries.values()][0]?.key ?? value.span;
    return value.span;
  }
  return { from: raw.span.from, to: raw.span.from + 1 };
}
