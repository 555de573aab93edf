/** Draws that are solved together, each in a lane of its own: enough to share the cost of every call, few enough to stay in the cache. */
export const lanes = 64;

/** One number a lane. */
export function column(value = 0): Float64Array {
  return new Float64Array(lanes).fill(value);
}

/** Columns that stand one after the other in one array. */
export interface Table {
  readonly all: Float64Array;
  readonly columns: readonly Float64Array[];
}

export function table(count: number): Table {
  const all = new Float64Array(count * lanes);
  return { all, columns: Array.from({ length: count }, (_, k) => all.subarray(k * lanes, (k + 1) * lanes)) };
}

/** Sets some lanes of a column to a value. A loop: the built-in way costs more than that for a single lane. */
export function fill(target: Float64Array, value: number, from: number, to: number): void {
  for (let s = from; s < to; s++) target[s] = value;
}

/** Copies some lanes of a column. */
export function copy(source: Float64Array, target: Float64Array, from: number, to: number): void {
  for (let s = from; s < to; s++) target[s] = source[s];
}
