import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Lines } from './lines.ts';
import { textAt } from './outline.ts';
import { type Path, plainOf, type Raw, type RawEntry, type RawMap, rawAt, type Span } from './raw.ts';
import type { StepChange } from './study.ts';

/** One change of a step, as written. */
interface Change {
  readonly at: Path;
  readonly atSpan: Span;
  /** undefined: removed. */
  readonly becomes: Raw | undefined;
  /** What else is written about it. */
  readonly said: Omit<StepChange, 'at' | 'before' | 'after'>;
}

/** `parts.core-sense.fitted.1` as a path; whole numbers are places in a list. */
export function pathOf(written: string): Path {
  return written.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));
}

/** The board after a step's changes, with a record of each; a change that can't be made is a fault and is left out. */
export function applyChanges(
  board: Raw,
  step: Raw,
  id: string,
  lines: Lines,
): { board: Raw; changes: StepChange[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const changes: StepChange[] = [];
  let after = board;
  for (const change of changesOf(step)) {
    const path = change.at.join('.');
    const place = lines.place(change.atSpan);
    if (changes.some(({ at }) => at === path)) {
      faults.push(refuse('study/change-twice', { path, step: id }, place));
      continue;
    }
    const becomes = change.becomes && readdress(change.becomes, path, id);
    const made = put(after, change.at, becomes, change.atSpan);
    if ('shape' in made) {
      const before = rawAt(after, change.at);
      changes.push({
        at: path,
        before: before && plainOf(before),
        after: becomes && plainOf(becomes),
        ...change.said,
      });
      after = made;
      continue;
    }
    const reached = change.at.slice(0, made.reached).join('.');
    const key = String(change.at[made.reached]);
    const close = typeof change.at[made.reached] === 'number' ? '' : nearest(key, made.keys);
    const near = close && [reached, close].filter(Boolean).join('.');
    faults.push(
      refuse(
        'study/no-such-path',
        { path, reached, key, keys: made.keys, near, step: id, removed: becomes ? 0 : 1 },
        place,
      ),
    );
  }
  return { board: after, changes, faults };
}

function changesOf(step: Raw): Change[] {
  const list = rawAt(step, ['changes']);
  if (list?.shape !== 'list') return [];
  return list.items.flatMap((item): Change[] => {
    const at = rawAt(item, ['at']);
    const becomes = rawAt(item, ['becomes']);
    const removed = rawAt(item, ['removed']);
    if (at?.shape !== 'scalar' || typeof at.value !== 'string' || (becomes === undefined) === (removed === undefined))
      return [];
    return [{ at: pathOf(at.value), atSpan: at.span, becomes, said: saidOf(item) }];
  });
}

function saidOf(item: Raw): Change['said'] {
  const keys = ['why', 'where', 'photo', 'undo', 'done'] as const;
  return Object.fromEntries(
    keys.flatMap((key) => {
      const text = textAt(item, [key]);
      return text === undefined ? [] : [[key, text]];
    }),
  );
}

/** `raw` with new addresses, born at `path` in step `id`. */
function readdress(raw: Raw, path: string, id: string): Raw {
  const address = `${path}#${id}`;
  if (raw.shape === 'scalar') return { ...raw, address };
  if (raw.shape === 'list')
    return { ...raw, address, items: raw.items.map((item, index) => readdress(item, `${path}.${index}`, id)) };
  const entries = new Map<string, RawEntry>();
  for (const [key, entry] of raw.entries)
    entries.set(key, { ...entry, value: readdress(entry.value, `${path}.${key}`, id) });
  return { ...raw, address, entries };
}

interface Missing {
  readonly reached: number;
  readonly keys: readonly string[];
}

/** A copy of `raw` with `becomes` at `path` (or without it); what isn't touched is shared. */
function put(raw: Raw, path: Path, becomes: Raw | undefined, span: Span, depth = 0): Raw | Missing {
  const key = path[depth];
  const last = depth === path.length - 1;
  const missing = (keys: Iterable<string | number>): Missing => ({ reached: depth, keys: [...keys].map(String) });
  if (raw.shape === 'scalar') return missing([]);
  if (raw.shape === 'list') {
    const item = typeof key === 'number' ? raw.items[key] : undefined;
    const appends = last && becomes && key === raw.items.length;
    if (!item && !appends) return missing([...raw.items.keys(), ...(last && becomes ? [raw.items.length] : [])]);
    const items = [...raw.items];
    if (last && !becomes) {
      items.splice(key as number, 1);
    } else {
      const inner = last ? becomes! : put(item!, path, becomes, span, depth + 1);
      if (!('shape' in inner)) return inner;
      items[key as number] = inner;
    }
    return { ...raw, items };
  }
  const name = String(key);
  const entry = raw.entries.get(name);
  // Only what lies inside a map of the board may be new: the board's own sections can't be invented.
  const creates = last && becomes && depth > 0;
  if (!entry && !creates) return missing(raw.entries.keys());
  const entries = new Map(raw.entries);
  if (last && !becomes) {
    entries.delete(name);
  } else {
    const inner = last ? becomes! : put(entry!.value, path, becomes, span, depth + 1);
    if (!('shape' in inner)) return inner;
    entries.set(name, { key: last ? span : entry!.key, value: inner });
  }
  return { ...raw, entries } satisfies RawMap;
}
