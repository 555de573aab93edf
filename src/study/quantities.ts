import type { Quantity } from '../quantity/quantity.ts';
import { type Path, type Raw, rawAt } from './raw.ts';
import type { Board } from './schema/study.ts';

/**
 * Gives each quantity of a board its address, and the source of the part, resistor, node or link it belongs to where it names none of its own.
 * The board is changed in place: a quantity that takes over a source is a new object.
 */
export function addressQuantities(board: Board, raw: Raw): Map<Quantity, string> {
  const quantities = new Map<Quantity, string>();
  visit(board, [], undefined);
  return quantities;

  function visit(holder: object, path: Path, inherited: string | undefined): void {
    const own = 'source' in holder && typeof holder.source === 'string' ? holder.source : inherited;
    for (const [key, value] of Object.entries(holder)) {
      const here = [...path, Array.isArray(holder) ? Number(key) : key];
      if (typeof value !== 'object' || value === null) continue;
      if (!isQuantity(value)) {
        visit(value, here, own);
        continue;
      }
      const quantity = value.source === undefined && own !== undefined ? { ...value, source: own } : value;
      (holder as Record<string, unknown>)[key] = quantity;
      quantities.set(quantity, addressOf(raw, here));
    }
  }
}

/** The address of the number at `path`: where it came into the study, even when a removal before it has moved it up in a list. */
export function addressOf(raw: Raw, path: Path): string {
  const found = rawAt(raw, path);
  if (!found) return path.join('.');
  const value = found.shape === 'map' ? found.entries.get('value')?.value : undefined;
  const step = value?.address.split('#')[1];
  return step !== undefined && !found.address.includes('#') ? `${found.address}#${step}` : found.address;
}

export function isQuantity(value: object): value is Quantity {
  return 'spread' in value && 'unit' in value && 'value' in value;
}
