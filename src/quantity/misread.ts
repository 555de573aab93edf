import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type Decimal, numberPattern, readDecimal } from './decimal.ts';
import { type KindName, kinds } from './kind.ts';
import { parseUnit, prettyUnit, readUnit, sameDimension } from './unit.ts';
import { unitSymbols } from './unit-table.ts';

/** A piece of the text and where it begins. */
export interface Piece {
  readonly text: string;
  readonly at: number;
}

/** Thrown inside the reader only; `readQuantity` turns it into a result. */
export class Misread {
  readonly fault: Fault;
  readonly offset: number;
  readonly length: number;

  constructor(fault: Fault, offset: number, length: number) {
    this.fault = fault;
    this.offset = offset;
    this.length = length;
  }
}

export function misread(code: Fault['code'], data: Fault['data'], { text, at }: Piece): Misread {
  const inside = text.trim();
  return new Misread(refuse(code, data), at + text.indexOf(inside), Math.max(1, inside.length));
}

export function fail(code: Fault['code'], text: string, piece: Piece): never {
  throw misread(code, { text: text.trim() }, piece);
}

const numberAtStart = new RegExp(String.raw`^\s*${numberPattern}(?![\d.,'_xX]|\s+(?!1\s*/)\d)`);

/** The number at the start of a text with the space before it; null when there is none, or when digits go on behind a gap, a comma or a point. */
export function takeNumber(text: string): string | null {
  return numberAtStart.exec(text)?.[0] ?? null;
}

/** A number's digits exactly as written; a power of ten that no double reaches is refused. */
export function readDigits(digits: string, text: string, place: Piece): Decimal {
  return readDecimal(digits) ?? fail('quantity/out-of-reach', text, place);
}

/** A unit is due and there is none. */
export function missingUnit(text: string, kind: KindName, place: Piece): Misread {
  const { title, example } = kinds[kind];
  return misread('quantity/missing-unit', { text: text.trim(), expectedKind: title, example }, place);
}

/** Why a unit can't be taken: it isn't one, it is of another kind, or it is a temperature scale where a difference is due. */
export function refuseUnit(written: string, text: string, kind: KindName, place: Piece): Misread {
  const { title, example, dimension } = kinds[kind];
  const unit = parseUnit(written);
  const data = { text: text.trim(), unit: written, expectedKind: title, example };
  if (!unit) {
    const near = nearest(
      written,
      unitSymbols.filter((symbol) => readUnit(symbol, kind)),
    );
    return misread('quantity/unknown-unit', { ...data, near }, place);
  }
  if (kind === 'temperature-difference' && sameDimension(unit.dimension, dimension))
    return misread('quantity/scale-for-difference', { text: text.trim(), unit: prettyUnit(written) }, place);
  const found = unit.angle
    ? kinds.angle
    : Object.values(kinds).find((each) => sameDimension(each.dimension, unit.dimension));
  return misread('quantity/wrong-dimension', { ...data, foundKind: found?.title ?? 'of another kind' }, place);
}

export const decimalComma = /[+-]?[\d.]*,\d[\d.,]*/;

/** Why a text doesn't begin with a number that can be read. */
export function notANumber(piece: Piece, kind: KindName): Misread {
  const { title, example } = kinds[kind];
  const data = { text: piece.text.trim(), expectedKind: title, example };
  const comma = decimalComma.exec(piece.text);
  if (comma) return misread('quantity/comma', data, { text: comma[0], at: piece.at + comma.index });
  const split = /^[+-]?\d+(?:\.\d+)?['_\s]\s*\d/.test(data.text);
  return misread(split ? 'quantity/split-number' : 'quantity/not-a-number', data, piece);
}
