import type { Fault } from '../fault/fault.ts';
import { lastDigits, numberPattern, scaleDigits } from './decimal.ts';
import { type KindName, kinds } from './kind.ts';
import { fail, Misread, misread, type Piece, refuseUnit, takeNumber } from './misread.ts';
import type { Quantity } from './quantity.ts';
import type { Spread } from './spread.ts';
import { findTail, readSpread, trailingUnit } from './tolerance.ts';
import { parseUnit, readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';
import { readWireGauge } from './wire-gauge.ts';

export { readUnit };

export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  /** Where in the text the fault lies, for a caret. */
  | { readonly ok: false; readonly fault: Fault; readonly offset: number; readonly length: number };

const rangePattern = new RegExp(String.raw`^\s*(${numberPattern})(.*?)\s*\.\.\s*(${numberPattern})(?![\d.,])(.*)$`);

/**
 * Reads a number with unit and uncertainty: `5 mΩ ± 1 %`, `0.4..0.6 K/W`, `5.02(3) mΩ`, `5.02 mΩ ± 0.06 mΩ (k=2)`, `45 um ~ 30 %`, `5 V +10 % -5 %`,
 * `45 um (sigma=0.3)`, `AWG 18`. A ratio's `%` tolerance counts in points: `90 % ± 2 %` is 0.88 to 0.92.
 */
export function readQuantity(text: string, kind: KindName): QuantityReading {
  try {
    return { ok: true, quantity: read(text, kind) };
  } catch (error) {
    if (error instanceof Misread) return { ok: false, fault: error.fault, offset: error.offset, length: error.length };
    throw error;
  }
}

/** No number with unit and uncertainty is longer; what is longer isn't searched through. */
const longest = 200;

function read(original: string, kind: KindName): Quantity {
  if (original.length > longest) throw notANumber(`${original.trim().slice(0, 60)} …`, kind);
  // One character for one, so that places in the text stay true.
  const text = original.replace(/[\u00a0\u2007\u2009\u202f]/g, ' ').replace(/[\u2212\u2013]/g, '-');
  const made = (value: number, unit: string, spread: Spread | null): Quantity => {
    return { kind, value, unit: unit.trim(), spread, text: original.trim() };
  };
  const gauge = kind === 'length' ? readWireGauge(text) : null;
  if (gauge !== null) return made(gauge, 'mm', null);
  if (text.includes('..')) return readRange(text, kind, made);

  const number = takeNumber(text);
  if (number === null) throw notANumber(text, kind);
  const digits = number.trim();
  const rest = { text: text.slice(number.length), at: number.length };
  const tail = findTail(rest);
  const ownUnit = { text: rest.text.slice(0, tail.at - rest.at).replace(/(±|\+-|\+\/-|~)$/, ''), at: rest.at };
  const borrowed = ownUnit.text.trim() === '' && tail.sign === '±' ? trailingUnit(tail) : null;
  const unitPiece = borrowed ?? ownUnit;
  const unit = unitOf(text, unitPiece, kind);
  const value = readValue(digits, unit, text);
  const bracket = /\((\d+)\)/.exec(digits)?.[1];
  if (bracket !== undefined) {
    if (tail.sign !== '') fail('quantity/two-uncertainties', text, tail);
    const u = lastDigits(digits, bracket, unit);
    if (!(u > 0 && u < Infinity)) fail('quantity/bad-tolerance', text, { text: number, at: 0 });
    return made(value, unitPiece.text, { shape: 'normal', u });
  }
  const hasUnit = unitPiece.text.trim() !== '';
  return made(value, unitPiece.text, readSpread(tail, { value, unit, hasUnit, kind, text }));
}

/** `0.4..0.6 K/W`; the best value is the middle. */
function readRange(
  text: string,
  kind: KindName,
  made: (value: number, unit: string, spread: Spread) => Quantity,
): Quantity {
  const [, first, firstUnit, last, lastUnit] = rangePattern.exec(text) ?? [];
  if (first === undefined || /\(/.test(first + last)) throw notANumber(text, kind);
  const unit = unitOf(text, { text: lastUnit, at: text.length - lastUnit.length }, kind);
  const lowUnit =
    firstUnit.trim() === '' ? unit : unitOf(text, { text: firstUnit, at: text.indexOf(first) + first.length }, kind);
  const low = readValue(first, lowUnit, text);
  const high = readValue(last, unit, text);
  if (!(low < high)) fail('quantity/bad-range', text, { text, at: 0 });
  return made(low + (high - low) / 2, lastUnit, { shape: 'rectangular', low, high });
}

function readValue(digits: string, unit: Unit, text: string): number {
  const plain = digits.replace(/\(\d+\)/, '');
  const value = scaleDigits(plain, unit);
  if (!Number.isFinite(value)) fail('quantity/out-of-reach', text, { text, at: 0 });
  return value;
}

function unitOf(text: string, piece: Piece, kind: KindName): Unit {
  const written = piece.text.trim();
  if (written === '') {
    if (kind === 'ratio' || kind === 'count') return parseUnit('1')!;
    const { title, example } = kinds[kind];
    throw misread('quantity/missing-unit', { text: text.trim(), expectedKind: title, example }, { text, at: 0 });
  }
  const unit = readUnit(written, kind);
  if (!unit) throw refuseUnit(written, text, kind, piece);
  return unit;
}

function notANumber(text: string, kind: KindName): Misread {
  const { title, example } = kinds[kind];
  const written = text.trim();
  const code = /^[+-]?\d+,\d/.test(written)
    ? 'quantity/comma'
    : /^[+-]?\d+(?:\.\d+)?['_\s]\s*\d/.test(written)
      ? 'quantity/split-number'
      : 'quantity/not-a-number';
  return misread(code, { text: written, expectedKind: title, example }, { text, at: 0 });
}
