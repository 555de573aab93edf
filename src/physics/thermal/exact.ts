/** Numbers as whole multiples of one power of two, without any rounding: value = whole·2^−bits. */
export interface Exact {
  readonly whole: readonly bigint[];
  readonly bits: number;
}

/** Finite doubles above zero as whole multiples of the largest power of two that fits all of them. */
export function exactly(values: readonly number[]): Exact {
  const bits = Math.max(...values.map((value) => 52 - Math.floor(Math.log2(value)) + 1));
  return { whole: values.map((value) => wholeMultiple(value, bits)), bits };
}

function wholeMultiple(value: number, bits: number): bigint {
  // Two steps, since 2^bits alone may be beyond a double where value·2^bits isn't.
  const first = Math.min(bits, 1000);
  const high = value * 2 ** first;
  return Number.isInteger(high) ? BigInt(high) << BigInt(bits - first) : BigInt(high * 2 ** (bits - first));
}

/** The double nearest to numerator/denominator·2^shift, within one unit of its last place. */
export function quotient(numerator: bigint, denominator: bigint, shift: number): number {
  const lift = 64 - (bitsOf(numerator) - bitsOf(denominator));
  const ratio = lift >= 0 ? (numerator << BigInt(lift)) / denominator : numerator / (denominator << BigInt(-lift));
  const half = Math.trunc((shift - lift) / 2);
  return Number(ratio) * 2 ** half * 2 ** (shift - lift - half);
}

function bitsOf(value: bigint): number {
  return value.toString(16).replace('-', '').length * 4;
}
