import type { KindName } from './kind.ts';
import type { Quantity } from './quantity.ts';
import { readQuantity, readUnit } from './read.ts';
import type { Spread } from './spread.ts';
import { parseUnit, prettyUnit, type Unit } from './unit.ts';

/** The text a quantity was read from. */
export function writeQuantity(quantity: Quantity): string {
  return quantity.text;
}

/** The unit a value is shown in; the kind's unit must fit, an empty one is a bare number. */
function unitFor(unit: string, kind: KindName): Unit {
  const found = unit.trim() === '' ? parseUnit('1') : readUnit(unit, kind);
  if (!found) throw new Error(`"${unit}" is no unit of ${kind}`);
  return found;
}

/** A value in a unit, from SI. */
export function toUnit(value: number, unit: string, kind: KindName): number {
  const { ten, factor, zero } = unitFor(unit, kind);
  const scaled = (value - zero) / factor;
  return ten === 0 ? scaled : shift(scaled, -ten);
}

/** A value in SI, from a unit. */
export function fromUnit(value: number, unit: string, kind: KindName): number {
  const { ten, factor, zero } = unitFor(unit, kind);
  return shift(value, ten) * factor + zero;
}

/** Multiplies by a power of ten in decimals: 0.005 becomes 5 and not 5.000000000000001. */
function shift(value: number, ten: number): number {
  if (!Number.isFinite(value) || value === 0) return value;
  const [mantissa, exponent = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent) + ten}`);
}

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
  const pretty = prettyUnit(unit.trim() === '1' ? '' : unit.trim());
  const uUnit = scale.zero === 0 ? pretty : scale.factor === 1 ? 'K' : '°F';
  if (u === null || !(u > 0) || !Number.isFinite(u)) {
    return { value: plainNumber(shown, significantPlaces(shown, significantDigits)), u: null, unit: pretty, uUnit };
  }
  const shownU = shift(u / scale.factor, -scale.ten);
  // Rounded first: 0.0999 has its second digit where 0.10 has it.
  const places = 1 - Number(shownU.toExponential(1).split('e')[1]);
  return { value: plainNumber(shown, places), u: plainNumber(shownU, places), unit: pretty, uUnit };
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

/**
 * Text for a file that reads back to the very same value and spread: in the unit asked for where that can be, else in SI.
 * A log-normal spread is written as a relative standard uncertainty.
 */
export function writeForFile(value: number, spread: Spread | null, unit: string, kind: KindName): string {
  for (const candidate of [unit, siSpelling(kind, unit)]) {
    const text = fileText(value, spread, candidate, kind);
    const back = readQuantity(text, kind);
    if (back.ok && back.quantity.value === value && sameSpread(back.quantity.spread, spread)) return text;
  }
  return fileText(value, spread, unit, kind);
}

function fileText(value: number, spread: Spread | null, unit: string, kind: KindName): string {
  const differenceUnit = unitFor(unit, kind).zero === 0 ? unit : 'K';
  const differenceKind: KindName = kind === 'temperature' ? 'temperature-difference' : kind;
  const own = withUnit(String(toUnit(value, unit, kind)), unit.trim());
  if (spread === null) return own;
  if (spread.shape === 'normal') {
    const u = toUnit(spread.u, differenceUnit, differenceKind);
    return `${own} ± ${withUnit(String(u), differenceUnit.trim())} (k=1)`;
  }
  if (spread.shape === 'log-normal') return `${own} ~ ${100 * Math.sqrt(Math.expm1(spread.sigma ** 2))} %`;
  if (value === (spread.low + spread.high) / 2) {
    const [low, high] = [spread.low, spread.high].map((end) => toUnit(end, unit, kind));
    return withUnit(`${low}..${high}`, unit.trim());
  }
  const [up, down] = [spread.high - value, value - spread.low].map((part) => toUnit(part, differenceUnit, differenceKind));
  return `${own} +${withUnit(String(up), differenceUnit)} -${withUnit(String(down), differenceUnit)}`;
}

function siSpelling(kind: KindName, unit: string): string {
  return kind === 'ratio' || kind === 'count' ? '' : (siUnits[kind] ?? unit);
}

const siUnits: Partial<Record<KindName, string>> = { temperature: 'K', 'temperature-difference': 'K' };

function sameSpread(a: Spread | null, b: Spread | null): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
