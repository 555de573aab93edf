import type { Fault } from '../fault/fault.ts';
import { type Decimal, decimalOf, lastDigits, numberPattern, plus, scale, times, toDouble } from './decimal.ts';
import { type KindName, kinds } from './kind.ts';
import { fail, Misread, misread, missingUnit, type Piece, readDigits, refuseUnit, takeNumber } from './misread.ts';
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
const decimalComma = /[+-]?[\d.]*,\d[\d.,]*/;

/** No number with unit and uncertainty is longer; what is longer isn't searched through. */
const longest = 200;

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

type Made = (value: number, unit: string, spread: Spread | null) => Quantity;

function read(original: string, kind: KindName): Quantity {
  if (original.length > longest) throw notANumber(`${original.trim().slice(0, 60)} …`, kind);
  // One character for one, so that places in the text stay true.
  const text = original
    .replace(/[\u00a0\u2000-\u200a\u202f]/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\u212a/g, 'K');
  const made: Made = (value, unit, spread) => ({ kind, value, unit: unit.trim(), spread, text: original.trim() });
  const gauge = kind === 'length' ? readWireGauge(text) : null;
  if (gauge !== null) return made(gauge, 'mm', null);
  if (decimalComma.test(text)) throw notANumber(text, kind);
  return text.includes('..') ? readRange(text, kind, made) : readSingle(text, kind, made);
}

function readSingle(text: string, kind: KindName, made: Made): Quantity {
  const number = takeNumber(text);
  if (number === null) throw notANumber(text, kind);
  const rest = { text: text.slice(number.length), at: number.length };
  const tail = findTail(rest, text);
  const ownUnit = { text: rest.text.slice(0, tail.at - rest.at).replace(/(±|\+-|\+\/-|~)$/, ''), at: rest.at };
  const standsBehind = ownUnit.text.trim() === '' && (tail.sign === '±' || tail.sign === '~');
  const unitPiece = (standsBehind && trailingUnit(tail)) || ownUnit;
  const unit = unitOf(text, unitPiece, kind);
  const digits = { text: number, at: 0 };
  const exact = readValue(digits, unit, kind, text);
  const value = toDouble(exact);
  const bracket = /\((\d+)\)/.exec(number)?.[1];
  if (bracket !== undefined) {
    if (tail.sign !== '') fail('quantity/two-uncertainties', text, tail);
    const last = lastDigits(number.trim(), bracket);
    const u = last ? toDouble(scale(last, unit, 'zero ignored')) : 0;
    if (!(u > 0 && u < Infinity)) fail('quantity/bad-tolerance', text, digits);
    return made(value, unitPiece.text, { shape: 'normal', u });
  }
  const unitText = unitPiece.text.trim();
  return made(value, unitPiece.text, readSpread(tail, { value: exact, unit, unitText, kind, text }));
}

/** `0.4..0.6 K/W`; the best value is the middle. */
function readRange(text: string, kind: KindName, made: Made): Quantity {
  const [, first, firstUnit, last, lastUnit] = rangePattern.exec(text) ?? [];
  if (first === undefined || (firstUnit + lastUnit).includes('.')) throw notANumber(text, kind);
  const unitPiece = { text: lastUnit, at: text.length - lastUnit.length };
  const tail = findTail(unitPiece, text);
  if (tail.sign !== '' || /\(/.test(first + last)) fail('quantity/two-uncertainties', text, { text, at: 0 });
  const unit = unitOf(text, unitPiece, kind);
  const behindFirst = { text: firstUnit, at: text.indexOf(first) + first.length };
  const firstOf = firstUnit.trim() === '' ? unit : unitOf(text, behindFirst, kind);
  const lowest = readValue({ text: first, at: text.indexOf(first) }, firstOf, kind, text);
  const highest = readValue({ text: last, at: unitPiece.at - last.length }, unit, kind, text);
  const [low, high] = [toDouble(lowest), toDouble(highest)];
  if (!(low < high)) fail('quantity/bad-range', text, { text, at: 0 });
  const middle = toDouble(times(plus(lowest, highest), decimalOf(0.5)));
  return made(middle, lastUnit, { shape: 'rectangular', low, high });
}

/** Number and unit in SI, within a double's reach and, for a temperature, not below absolute zero. */
function readValue(piece: Piece, unit: Unit, kind: KindName, text: string): Decimal {
  const digits = piece.text.trim().replace(/\(\d+\)/, '');
  const exact = scale(readDigits(digits, text, piece), unit, 'zero counted');
  const value = toDouble(exact);
  if (!Number.isFinite(value) || (value === 0 && exact.whole !== 0n)) fail('quantity/out-of-reach', text, piece);
  if (kind === 'temperature' && value < 0) fail('quantity/below-absolute-zero', text, piece);
  return exact;
}

function unitOf(text: string, piece: Piece, kind: KindName): Unit {
  const written = piece.text.trim();
  if (written === '') {
    if (kind === 'ratio' || kind === 'count') return parseUnit('1')!;
    throw missingUnit(text, kind, { text, at: 0 });
  }
  const unit = readUnit(written, kind);
  if (!unit) throw refuseUnit(written, text, kind, piece);
  return unit;
}

function notANumber(text: string, kind: KindName): Misread {
  const { title, example } = kinds[kind];
  const data = { text: text.trim(), expectedKind: title, example };
  const comma = decimalComma.exec(text);
  if (comma) return misread('quantity/comma', data, { text: comma[0], at: comma.index });
  const split = /^[+-]?\d+(?:\.\d+)?['_\s]\s*\d/.test(data.text);
  return misread(split ? 'quantity/split-number' : 'quantity/not-a-number', data, { text, at: 0 });
}
