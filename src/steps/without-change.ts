import type { Quantity } from '../quantity/quantity.ts';
import type { Board } from '../study/schema/study.ts';
import type { Step } from '../study/study.ts';

type Holder = Record<string, unknown>;

/**
 * A step as it would be without some of its changes: what stands at their paths is as it was at the step before, its numbers with their old addresses.
 * Null where that is no whole board, because another change builds on one of them.
 */
export function withoutChanges(step: Step, before: Step, paths: readonly string[]): Step | null {
  let board: unknown = step.board;
  // From the last one backwards, so that what a change has appended to a list goes before what it stands behind.
  for (const path of paths.toReversed()) {
    board = restored(board, before.board, path.split('.'));
    if (board === undefined) return null;
  }
  const whole = board as Board;
  if (!isWhole(whole)) return null;
  const quantities = new Map<Quantity, string>();
  const known = new Map([...before.quantities, ...step.quantities]);
  collect(whole, (quantity) => quantities.set(quantity, known.get(quantity)!), known);
  return { ...step, board: whole, quantities, changed: step.changed.filter((path) => !paths.includes(path)) };
}

/** A copy of `now` in which the value at a path is that of `then`; undefined where the way there is missing. */
function restored(now: unknown, then: unknown, [key, ...rest]: readonly string[]): unknown {
  if (!isHolder(now)) return undefined;
  const [here, there] = [child(now, key), isHolder(then) ? child(then, key) : undefined];
  if (rest.length > 0) {
    const inner = restored(here, there, rest);
    return inner === undefined ? undefined : put(now, key, inner);
  }
  if (!Array.isArray(now)) return there === undefined ? without(now, key) : put(now, key, there);
  const index = Number(key);
  const old = Array.isArray(then) ? then : [];
  if (now.length < old.length) return now.toSpliced(index, 0, there);
  return now.length > old.length ? now.toSpliced(index, 1) : now.with(index, there);
}

function isHolder(value: unknown): value is Holder {
  return typeof value === 'object' && value !== null;
}

function child(holder: Holder, key: string): unknown {
  return Object.hasOwn(holder, key) ? holder[key] : undefined;
}

function put(holder: Holder, key: string, value: unknown): unknown {
  return Array.isArray(holder) ? holder.with(Number(key), value) : { ...holder, [key]: value };
}

function without(holder: Holder, key: string): Holder {
  const { [key]: _, ...others } = holder;
  return others;
}

function collect(value: unknown, found: (quantity: Quantity) => void, known: ReadonlyMap<Quantity, string>): void {
  if (!isHolder(value)) return;
  if (known.has(value as unknown as Quantity)) found(value as unknown as Quantity);
  else for (const inner of Object.values(value)) collect(inner, found, known);
}

/** Whether all that the heat path names exists: nodes at the ends of links, in streams and under parts, dies that press. */
function isWhole({ heat, plate, parts, limiters }: Board): boolean {
  const nodes = new Set([...Object.keys(heat.nodes), 'ambient']);
  const dies = new Set(Object.keys(plate?.dies ?? {}));
  const named = [
    ...Object.values(heat.links).flatMap(({ between }) => between),
    ...Object.values(heat.streams ?? {}).flatMap(({ through }) => through),
    ...Object.values(parts).flatMap(({ heats }) => (typeof heats === 'string' ? heats : Object.values(heats))),
    ...Object.values(limiters).flatMap((limiter) => ('node' in limiter ? limiter.node : [])),
  ];
  const pressed = Object.values(heat.links).flatMap(({ through }) =>
    through.flatMap((element) => ('bond-line' in element ? (element['bond-line']['pressed-by'] ?? []) : [])),
  );
  return named.every((node) => nodes.has(node)) && pressed.every((die) => dies.has(die)) && hasWaysOut({ heat });
}

/** Every node has a way to ambient. */
function hasWaysOut({ heat }: Pick<Board, 'heat'>): boolean {
  const reached = new Set(['ambient', ...Object.values(heat.streams ?? {}).flatMap(({ through }) => through)]);
  const links = Object.values(heat.links);
  for (let size = 0; size < reached.size; ) {
    size = reached.size;
    for (const { between } of links)
      if (between.some((end) => reached.has(end))) for (const end of between) reached.add(end);
  }
  return Object.keys(heat.nodes).every((node) => reached.has(node));
}
