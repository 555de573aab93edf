import type { Unit } from './unit-table.ts';

/** A number as people write it; the bracket holds a standard uncertainty in the last digits. */
export const numberPattern = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:\(\d+\))?(?:[eE][+-]?\d+)?`;

/** Longer numbers than this are rounded once more than needed, so that a hostile file can't cost time. */
const longestExact = 60;

/** Digits as an integer and a power of ten; null when there are too many to be worth it. */
function parts(digits: string): { whole: bigint; ten: number } | null {
  if (digits.length > longestExact) return null;
  const [mantissa, exponent = '0'] = digits.replace('+', '').split(/[eE]/);
  const [before, after = ''] = mantissa.split('.');
  const ten = Number(exponent.replace('+', '')) - after.length;
  return Math.abs(ten) > 400 ? null : { whole: BigInt(before + after || '0'), ten };
}

/**
 * Digits times a unit, in SI, as the double nearest to the decimal result where the unit is a decimal one: 5 mΩ is 0.005, 1 in is 0.0254 and
 * 25.1 °C is 298.25, without the roundings of a product and a sum. `zero: 'ignored'` makes it a difference.
 */
export function scaleDigits(digits: string, unit: Unit, zero: 'counted' | 'ignored' = 'counted'): number {
  const offset = zero === 'counted' ? unit.zero : 0;
  const exact = Number.isInteger(unit.factor) ? parts(digits) : null;
  if (!exact) return (shiftDecimal(Number(digits), unit.ten) + offset / unit.factor) * unit.factor;
  const whole = exact.whole * BigInt(unit.factor);
  const ten = exact.ten + unit.ten;
  if (offset === 0) return Number(`${whole}e${ten}`);
  const shift = parts(String(offset))!;
  const least = Math.min(ten, shift.ten);
  const sum = whole * 10n ** BigInt(ten - least) + shift.whole * 10n ** BigInt(shift.ten - least);
  return Number(`${sum}e${least}`);
}

/** Multiplies by a power of ten in decimals: 0.005 becomes 5 and not 5.000000000000001. */
export function shiftDecimal(value: number, ten: number): number {
  if (ten === 0 || value === 0 || !Number.isFinite(value)) return value;
  const [mantissa, exponent = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent) + ten}`);
}

/** Standard uncertainty in the last digits: 5.02(3) is ± 0.03. Source: JCGM 100:2008 (GUM), 7.2.2. */
export function lastDigits(digits: string, bracket: string, unit: Unit): number {
  const [mantissa, exponent = '0'] = digits.replace(/\(\d+\)/, '').split(/[eE]/);
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return scaleDigits(`${bracket}e${Number(exponent) - decimals}`, unit, 'ignored');
}
