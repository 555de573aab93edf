import type { Fault } from '../fault/fault.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { endsOf, standardUncertainty } from '../quantity/spread.ts';
import type { Lines } from './lines.ts';
import { isQuantity } from './quantities.ts';
import { type Path, plainOf, spanAt } from './raw.ts';
import type { RawStep } from './read.ts';
import { type Range, ranges } from './schema/leaf.ts';
import { board as boardSchema } from './schema/study.ts';
import { visitFields } from './schema/walk.ts';
import type { Step } from './study.ts';

/** Numbers without an uncertainty, or with one that reaches what can't be, and ratings without data, each with its place. */
export function remarksOf(step: Step, raw: RawStep, lines: Lines): Fault[] {
  const remarks: Fault[] = [];
  const heated = new Set(
    Object.values(step.board.parts).flatMap(({ heats }) => (typeof heats === 'string' ? heats : Object.values(heats))),
  );
  // A place that no part heats, such as a fin stack or the air, is no part that could be harmed.
  const harmless = (path: Path) => path[1] === 'nodes' && path.at(-1) === 'limit' && !heated.has(String(path[2]));
  visitFields(boardSchema, plainOf(raw.board), (path, { role, about, range = 'any' }) => {
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
    if (role !== 'quantity' || typeof value !== 'object' || value === null || !isQuantity(value)) return;
    const data = { field, text: value.text };
    if (value.spread === null)
      remarks.push({ code: 'study/no-uncertainty', severity: 'warning', data, place: place() });
    else if (reachesOut(value, range))
      remarks.push({
        code: 'study/reaches-out',
        severity: 'warning',
        data: { ...data, possible: ranges[range].says },
        place: place(),
      });
  });
  return remarks;
}

/** Whether a spread's ends, or two standard uncertainties, lie where the number can't be. A zero may be told with a little on either side. */
function reachesOut({ value, spread }: Quantity, range: Range): boolean {
  if (spread === null || spread.shape === 'log-normal' || value === 0) return false;
  const u = 2 * standardUncertainty(spread, value);
  const { low, high } = endsOf(spread) ?? { low: value - u, high: value + u };
  return ![low, high].every(ranges[range].holds);
}

function valueAt(holder: unknown, path: Path): unknown {
  let here = holder;
  for (const key of path) here = (here as Record<string, unknown> | undefined)?.[key];
  return here;
}
