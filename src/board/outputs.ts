import type { Output } from '../metrology/model.ts';
import type { KindName } from '../quantity/kind.ts';

/** Gives every result of a board its place in the model's output vector. */
export class Outputs {
  readonly list: Output[] = [];
  readonly #place = new Map<string, number>();

  add(id: string, kind: KindName, unit: string, title: string, hold?: Output['hold']): number {
    if (this.#place.has(id)) throw new Error(`output "${id}" stands twice`);
    const place = this.list.length;
    this.#place.set(id, place);
    this.list.push({ id, kind, unit, title, hold });
    return place;
  }

  /** −1 when no output has this id. */
  find(id: string): number {
    return this.#place.get(id) ?? -1;
  }
}
