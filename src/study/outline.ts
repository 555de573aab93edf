import { type Path, type Raw, rawAt } from './raw.ts';

/** A word in the study that names something else. */
export interface Reference {
  readonly path: Path;
  readonly name: string;
  readonly to: 'part' | 'node' | 'sense';
}

export interface OutlinePart {
  readonly name: string;
  readonly kind: string;
  readonly feeder: string | undefined;
  readonly path: Path;
}

/** The board's names and how they hang together, taken from the raw text so that it can be checked even where a number is faulty. */
export interface Outline {
  readonly parts: readonly OutlinePart[];
  readonly nodes: readonly string[];
  readonly links: readonly { readonly path: Path; readonly ends: readonly string[] }[];
  readonly streams: readonly { readonly path: Path; readonly through: readonly string[] }[];
  readonly references: readonly Reference[];
}

/** The outline of a board. What isn't of the right shape is left out: the schema has a word on it. */
export function outlineOf(board: Raw): Outline {
  const references: Reference[] = [];
  const refer = (to: Reference['to'], path: Path) => {
    const name = textAt(board, path);
    if (name !== undefined) references.push({ path, name, to });
  };
  const parts = keysAt(board, ['parts']).map((name): OutlinePart => {
    const path = ['parts', name];
    refer('part', [...path, 'fed-by']);
    for (const inner of [[], ['stages'], ['inductors']]) refer('node', [...path, 'heats', ...inner]);
    return { name, kind: textAt(board, [...path, 'kind']) ?? '', feeder: textAt(board, [...path, 'fed-by']), path };
  });
  for (const name of keysAt(board, ['limiters'])) {
    const path = ['limiters', name];
    refer('node', [...path, 'node']);
    for (const index of keysAt(board, [...path, 'reads'])) refer('sense', [...path, 'reads', Number(index), 'sense']);
  }
  const texts = (path: Path) =>
    keysAt(board, path).flatMap((index) => {
      refer('node', [...path, Number(index)]);
      return textAt(board, [...path, Number(index)]) ?? [];
    });
  const links = keysAt(board, ['heat', 'links']).map((name) => {
    const path = ['heat', 'links', name, 'between'];
    return { path, ends: texts(path) };
  });
  const streams = keysAt(board, ['heat', 'streams']).map((name) => {
    const path = ['heat', 'streams', name, 'through'];
    return { path, through: texts(path) };
  });
  return { parts, nodes: keysAt(board, ['heat', 'nodes']), links, streams, references };
}

/** The text at `path`, or undefined when there is something else or nothing. */
export function textAt(raw: Raw, path: Path): string | undefined {
  const found = rawAt(raw, path);
  return found?.shape === 'scalar' && typeof found.value === 'string' ? found.value : undefined;
}

/** Keys of the map, or indexes of the list, at `path`. */
export function keysAt(raw: Raw, path: Path): string[] {
  const found = rawAt(raw, path);
  if (found?.shape === 'map') return [...found.entries.keys()];
  return found?.shape === 'list' ? found.items.map((_, index) => String(index)) : [];
}
