import { toUnit, unitFor } from './convert.ts';
import { decimalOf, toDouble, unscale } from './decimal.ts';
import type { KindName } from './kind.ts';
import { prettyUnit } from './unit.ts';

export { fromUnit, toUnit } from './convert.ts';
export { writeForFile } from './write-for-file.ts';

export interface ShownValue {
  readonly value: string;
  readonly u: string | null;
  /** Ready to stand behind the number; '' for a bare number. */
  readonly unit: string;
  /** Unit of the uncertainty: kelvins for a temperature in °C. */
  readonly uUnit: string;
}

const significantDigits = 4;

/** Digits by the uncertainty: u with two significant digits, the value to the same place; without one, four significant digits. */
export function showValue(value: number, u: number | null, unit: string, kind: KindName): ShownValue {
  const shown = toUnit(value, unit, kind);
  const scale = unitFor(unit, kind);
  const pretty =
    kind === 'temperature-difference' ? differenceUnit(unit) : prettyUnit(unit.trim() === '1' ? '' : unit.trim());
  const uUnit = scale.zero === 0 ? pretty : differenceUnit(unit);
  if (u === null || !(u > 0) || !Number.isFinite(u)) {
    return { value: plainNumber(shown, significantPlaces(shown, significantDigits)), u: null, unit: pretty, uUnit };
  }
  const shownU = toDouble(unscale(decimalOf(u), scale, 'zero ignored'));
  // Rounded first: 0.0999 has its second digit where 0.10 has it.
  const places = 1 - Number(shownU.toExponential(1).split('e')[1]);
  return { value: plainNumber(shown, places), u: plainNumber(shownU, places), unit: pretty, uUnit };
}

function differenceUnit(unit: string): string {
  const pretty = prettyUnit(unit.trim());
  return /[C℃]$/.test(pretty) ? 'K' : pretty;
}

/** `5.020 mΩ ± 0.030 mΩ`: ± is one standard uncertainty here, as everywhere in results. */
export function writeValue(value: number, u: number | null, unit: string, kind: KindName): string {
  const shown = showValue(value, u, unit, kind);
  const own = withUnit(shown.value, shown.unit);
  return shown.u === null ? own : `${own} ± ${withUnit(shown.u, shown.uUnit)}`;
}

function withUnit(number: string, unit: string): string {
  return unit === '' ? number : `${number} ${unit}`;
}

function significantPlaces(value: number, digits: number): number {
  return value === 0 ? 0 : digits - 1 - Number(value.toExponential(digits - 1).split('e')[1]);
}

/** A number to a decimal place, negative places for tens; powers of ten only where zeros would mislead or fill the line. */
function plainNumber(value: number, places: number): string {
  if (places > 9 || value >= 1e9 || value <= -1e9 || places < -6) {
    const digits = Math.max(0, places + (value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)))));
    return value.toExponential(Math.min(digits, 20)).replace('e+', 'e');
  }
  const rounded = places >= 0 ? value : Math.round(value / 10 ** -places) * 10 ** -places;
  const text = rounded.toFixed(Math.max(0, places));
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}
