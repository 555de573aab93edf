/** Numbers as whole multiples of one power of two, without any rounding: value = whole·2^−bits. */
export interface Exact {
  readonly whole: readonly bigint[];
  readonly bits: number;
}

/** Finite doubles above zero as whole multiples of the largest power of two that fits all of them. */
export function exactly(values: readonly number[]): Exact {
  const own = values.map((value) => 53 - Math.floor(Math.log2(value)));
  const bits = Math.max(...own);
  return { whole: values.map((value, i) => timesPower(value, own[i]) << BigInt(bits - own[i])), bits };
}

/** In two steps, since 2^power alone may be beyond a double where value·2^power isn't. */
function timesPower(value: number, power: number): bigint {
  const half = Math.trunc(power / 2);
  return BigInt(value * 2 ** half * 2 ** (power - half));
}

/** The double nearest to numerator/denominator·2^shift, within one unit of its last place. */
export function quotient(numerator: bigint, denominator: bigint, shift: number): number {
  const lift = 64 - (bitsOf(numerator) - bitsOf(denominator));
  const ratio = (numerator << BigInt(lift)) / denominator;
  const half = Math.trunc((shift - lift) / 2);
  return Number(ratio) * 2 ** half * 2 ** (shift - lift - half);
}

function bitsOf(value: bigint): number {
  return value.toString(16).replace('-', '').length * 4;
}
