import type { Input } from '../metrology/model.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { column } from './lanes.ts';

/** Gives every number of a board its place in the model's input vector, and the column that holds its values. */
export class Slots {
  readonly inputs: Input[] = [];
  /** One column an input; whoever evaluates fills them. */
  readonly columns: Float64Array[] = [];
  readonly #place = new Map<Quantity, number>();

  constructor(quantities: ReadonlyMap<Quantity, string>) {
    for (const [quantity, path] of quantities) this.add(quantity, path);
  }

  /** Adds a number that isn't in the study itself, such as a dialled power. */
  add(quantity: Quantity, id: string): number {
    const place = this.inputs.length;
    this.#place.set(quantity, place);
    const { kind, unit, value, spread, source = '' } = quantity;
    this.inputs.push({ id, kind, unit, value, spread, source });
    this.columns.push(column(value));
    return place;
  }

  /** The place of a number; throws when the number isn't one of this board's. */
  of(quantity: Quantity): number {
    const place = this.#place.get(quantity);
    if (place === undefined) throw new Error(`"${quantity.text}" has no place among this board's inputs`);
    return place;
  }

  /** The values of a number; of one that may be left out, a column that stays at `otherwise`. */
  column(quantity: Quantity | undefined, otherwise = Number.NaN): Float64Array {
    return quantity === undefined ? column(otherwise) : this.columns[this.of(quantity)];
  }
}
