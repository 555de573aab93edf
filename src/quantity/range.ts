import { type Decimal, numberPattern, scale, toDouble } from './decimal.ts';
import type { KindName } from './kind.ts';
import { fail, missingUnit, notANumber, type Piece, readDigits, refuseUnit } from './misread.ts';
import { parseUnit, readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';

const rangePattern = new RegExp(String.raw`^\s*(${numberPattern})(.*?)\s*\.\.\s*(${numberPattern})(?![\d.,])(.*)$`);

/** Two ends as written, lower one first. */
export interface Ends {
  readonly lowest: Decimal;
  readonly highest: Decimal;
  /** In SI. */
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  readonly unitText: string;
}

/** Reads `0.4..0.6 K/W` or `400 mK/W .. 0.6 K/W`. `text`: the whole, of which `piece` is a part. */
export function readEnds(piece: Piece, kind: KindName, text: string): Ends {
  const [, first, firstUnit, last, lastUnit] = rangePattern.exec(piece.text) ?? [];
  if (first === undefined || (firstUnit + lastUnit).includes('.')) throw notANumber(piece, kind);
  const place = (inside: string, from: number): Piece => ({ text: inside, at: piece.at + from });
  const firstAt = piece.text.indexOf(first);
  const unitPiece = place(lastUnit, piece.text.length - lastUnit.length);
  if (/±|\+-|\+\/-|~/.test(lastUnit) || /\(/.test(first + last)) fail('quantity/two-uncertainties', text, piece);
  const unit = unitOf(text, unitPiece, kind);
  const firstOf = firstUnit.trim() === '' ? unit : unitOf(text, place(firstUnit, firstAt + first.length), kind);
  const lowest = readValue(place(first, firstAt), firstOf, kind, text);
  const highest = readValue(place(last, piece.text.length - lastUnit.length - last.length), unit, kind, text);
  const [low, high] = [toDouble(lowest), toDouble(highest)];
  if (!(low < high)) fail('quantity/bad-range', text, piece);
  return { lowest, highest, low, high, unit, unitText: lastUnit.trim() };
}

/** Number and unit in SI, within a double's reach and, for a temperature, not below absolute zero. */
export function readValue(piece: Piece, unit: Unit, kind: KindName, text: string): Decimal {
  const digits = piece.text.trim().replace(/\(\d+\)/, '');
  const exact = scale(readDigits(digits, text, piece), unit, 'zero counted');
  const value = toDouble(exact);
  if (!Number.isFinite(value) || (value === 0 && exact.whole !== 0n)) fail('quantity/out-of-reach', text, piece);
  if (kind === 'temperature' && value < 0) fail('quantity/below-absolute-zero', text, piece);
  return exact;
}

export function unitOf(text: string, piece: Piece, kind: KindName): Unit {
  const written = piece.text.trim();
  if (written === '') {
    if (kind === 'ratio' || kind === 'count') return parseUnit('1')!;
    throw missingUnit(text, kind, { text, at: 0 });
  }
  const unit = readUnit(written, kind);
  if (!unit) throw refuseUnit(written, text, kind, piece);
  return unit;
}
