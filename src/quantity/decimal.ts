import type { Unit } from './unit-table.ts';

/** A number as people write it; the bracket holds a standard uncertainty in the last digits. */
export const numberPattern = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:\(\d+\))?(?:[eE][+-]?\d+)?`;

/** An exact decimal number, whole · 10^ten: what is written is reckoned with as it is written, and rounded once, when it becomes a double. */
export interface Decimal {
  readonly whole: bigint;
  readonly ten: number;
}

/** Exponents beyond this are far outside a double's range; exact sums of such numbers would cost time and memory. */
const furthest = 700;

/** Digits without a bracket as a decimal; null when the exponent is out of every use. */
export function readDecimal(digits: string): Decimal | null {
  const [mantissa, exponent = '0'] = digits.split(/[eE]/);
  const [before, after = ''] = mantissa.replace('+', '').split('.');
  const ten = Number(exponent) - after.length;
  const negative = before.startsWith('-');
  const whole = BigInt(before.replace('-', '') + after || '0');
  return Math.abs(ten) > furthest ? null : { whole: negative ? -whole : whole, ten };
}

/** A finite double as the shortest decimal that stands for it: 0.1 is a tenth. */
export function decimalOf(value: number): Decimal {
  return readDecimal(String(value))!;
}

/** The nearest double. */
export function toDouble({ whole, ten }: Decimal): number {
  return Number(`${whole}e${ten}`);
}

export function plus(a: Decimal, b: Decimal): Decimal {
  const ten = Math.min(a.ten, b.ten);
  return { whole: a.whole * 10n ** BigInt(a.ten - ten) + b.whole * 10n ** BigInt(b.ten - ten), ten };
}

export function minus(a: Decimal, b: Decimal): Decimal {
  return plus(a, { whole: -b.whole, ten: b.ten });
}

export function times(a: Decimal, b: Decimal): Decimal {
  return { whole: a.whole * b.whole, ten: a.ten + b.ten };
}

export function magnitude({ whole, ten }: Decimal): Decimal {
  return { whole: whole < 0n ? -whole : whole, ten };
}

/** A quotient to some forty digits; `b` isn't zero. */
export function over(a: Decimal, b: Decimal): Decimal {
  const more = 40 + Math.max(0, String(b.whole).length - String(a.whole).length);
  return { whole: (a.whole * 10n ** BigInt(more)) / b.whole, ten: a.ten - b.ten - more };
}

/** A number in a unit, in SI. `zero: 'ignored'` makes it a difference: 2 °C is then 2 K. */
export function scale(number: Decimal, { ten, factor, zero }: Unit, counted: 'zero counted' | 'zero ignored'): Decimal {
  const shifted = { whole: number.whole, ten: number.ten + ten };
  const scaled = factor === 1 ? shifted : times(shifted, decimalOf(factor));
  return zero === 0 || counted === 'zero ignored' ? scaled : plus(scaled, decimalOf(zero));
}

/** The reverse of `scale`, to some forty digits. */
export function unscale(
  number: Decimal,
  { ten, factor, zero }: Unit,
  counted: 'zero counted' | 'zero ignored',
): Decimal {
  const above = zero === 0 || counted === 'zero ignored' ? number : minus(number, decimalOf(zero));
  const scaled = factor === 1 ? above : over(above, decimalOf(factor));
  return { whole: scaled.whole, ten: scaled.ten - ten };
}

/** Standard uncertainty in the last digits: 5.02(3) is ± 0.03. Source: JCGM 100:2008 (GUM), 7.2.2. */
export function lastDigits(digits: string, bracket: string): Decimal | null {
  const [mantissa, exponent = '0'] = digits.replace(/\(\d+\)/, '').split(/[eE]/);
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return readDecimal(`${bracket}e${Number(exponent) - decimals}`);
}

/** A decimal rounded to a number of digits, as text. */
export function writeDecimal({ whole, ten }: Decimal, digits: number): string {
  const all = String(whole < 0n ? -whole : whole);
  const cut = Math.max(0, all.length - digits);
  const unit = 10n ** BigInt(cut);
  const rounded = String((BigInt(all) + unit / 2n) / unit);
  const kept = rounded.replace(/0+$/, '') || '0';
  const exponent = ten + cut + rounded.length - 1;
  return (whole < 0n ? '-' : '') + placePoint(kept, exponent);
}

/** Digits with the first one's power of ten, the way a double is written by this language. */
function placePoint(digits: string, exponent: number): string {
  if (exponent < -6 || exponent > 20) {
    const tail = digits.length > 1 ? `.${digits.slice(1)}` : '';
    return `${digits[0]}${tail}e${exponent}`;
  }
  if (exponent < 0) return `0.${'0'.repeat(-exponent - 1)}${digits}`;
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, '0');
  return digits.length > exponent + 1 ? `${whole}.${digits.slice(exponent + 1)}` : whole;
}
