import type { Tick, Ticks } from '../study/ticks.ts';
import type { ProcedureItem } from './procedure-item.ts';

/** How far an item is. `changed`: it was ticked, but says something else now; it counts as not done. */
export type ItemState =
  | { readonly state: 'open' }
  | { readonly state: 'done'; readonly at: string }
  | { readonly state: 'changed'; readonly at: string; readonly said: string };

/** What a tick keeps of an item: what it said and the figures it gave. */
export function tickOf(item: ProcedureItem, at: string): Tick {
  const figures = figuresOf(item);
  return { at, said: saidOf(item), ...(figures.length > 0 && { figures }) };
}

export function stateOf(item: ProcedureItem, ticks: Ticks): ItemState {
  const tick = ticks.get(item.id);
  if (!tick) return { state: 'open' };
  const { at, said, figures = [] } = tick;
  const same = said === saidOf(item) && figures.join('\n') === figuresOf(item).join('\n');
  return same ? { state: 'done', at } : { state: 'changed', at, said };
}

/** Ticks of items that the procedure no longer has. */
export function orphansOf(items: readonly ProcedureItem[], ticks: Ticks): readonly (readonly [string, Tick])[] {
  const known = new Set(items.map(({ id }) => id));
  return [...ticks].filter(([id]) => !known.has(id));
}

const saidOf = ({ does, stop }: ProcedureItem) => (stop ? `${does} ${stop}` : does);

const figuresOf = ({ readings }: ProcedureItem) =>
  readings.map(
    ({ title, low, high, abort }) =>
      `${title}: ${low.text} to ${high.text}${abort ? `, break off at ${abort.at.text}` : ''}`,
  );
