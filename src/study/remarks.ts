import type { Fault } from '../fault/fault.ts';
import type { Lines } from './lines.ts';
import { isQuantity } from './quantities.ts';
import { type Path, plainOf, spanAt } from './raw.ts';
import type { RawStep } from './read.ts';
import { board as boardSchema } from './schema/study.ts';
import { visitFields } from './schema/walk.ts';
import type { Step } from './study.ts';

/** Numbers without an uncertainty and ratings without data, each with its place. */
export function remarksOf(step: Step, raw: RawStep, lines: Lines): Fault[] {
  const remarks: Fault[] = [];
  const heated = new Set(
    Object.values(step.board.parts).flatMap(({ heats }) => (typeof heats === 'string' ? heats : Object.values(heats))),
  );
  // A place that no part heats, such as a fin stack or the air, is no part that could be harmed.
  const harmless = (path: Path) => path[1] === 'nodes' && path.at(-1) === 'limit' && !heated.has(String(path[2]));
  visitFields(boardSchema, plainOf(raw.board), (path, { role, about }) => {
    const value = valueAt(step.board, path);
    const field = path.join('.');
    const place = () => lines.place(spanAt(raw.board, path));
    if (role === 'rating' && (value === 'open' || (value === undefined && !harmless(path)))) {
      remarks.push({
        code: 'study/open-rating',
        severity: 'open',
        data: { field, about, left: value === undefined ? 1 : 0 },
        place: place(),
      });
    }
    if (
      role === 'quantity' &&
      typeof value === 'object' &&
      value !== null &&
      isQuantity(value) &&
      value.spread === null
    ) {
      remarks.push({
        code: 'study/no-uncertainty',
        severity: 'warning',
        data: { field, text: value.text },
        place: place(),
      });
    }
  });
  return remarks;
}

function valueAt(holder: unknown, path: Path): unknown {
  let here = holder;
  for (const key of path) here = (here as Record<string, unknown> | undefined)?.[key];
  return here;
}
