import type { Fault } from '../fault/fault.ts';
import { isChoice, readChoice } from './choice.ts';
import { decimalOf, lastDigits, plus, scale, times, toDouble } from './decimal.ts';
import type { KindName } from './kind.ts';
import { decimalComma, fail, Misread, notANumber, takeNumber } from './misread.ts';
import type { Quantity } from './quantity.ts';
import { readEnds, readValue, unitOf } from './range.ts';
import { cutShape, type Shape, shaped } from './shape.ts';
import type { Spread } from './spread.ts';
import { findTail, readSpread, trailingUnit } from './tolerance.ts';
import { readUnit } from './unit.ts';
import { readWireGauge } from './wire-gauge.ts';

export { readUnit };

export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  /** Where in the text the fault lies, for a caret. */
  | { readonly ok: false; readonly fault: Fault; readonly offset: number; readonly length: number };

/** No number with unit and uncertainty is longer; what is longer isn't searched through. */
const longest = 200;

/**
 * Reads a number with unit and uncertainty: `5 mΩ ± 1 %`, `0.4..0.6 K/W`, `5.02(3) mΩ`, `5.02 mΩ ± 0.06 mΩ (k=2)`, `45 um ~ 30 %`, `5 V +10 % -5 %`,
 * `45 um (sigma=0.3)`, `10 mΩ or 12 mΩ`, `AWG 18`; the shape in brackets, as in `25 degC ± 2 K (triangular)` or `5.02(3) mΩ (10 readings)`. A ratio's
 * `%` tolerance counts in points: `90 % ± 2 %` is 0.88 to 0.92.
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
  if (original.length > longest) throw notANumber({ text: `${original.trim().slice(0, 60)} …`, at: 0 }, kind);
  // One character for one, so that places in the text stay true.
  const text = original
    .replace(/[\u00a0\u2000-\u200a\u202f]/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\u212a/g, 'K');
  const made: Made = (value, unit, spread) => ({ kind, value, unit: unit.trim(), spread, text: original.trim() });
  const gauge = kind === 'length' ? readWireGauge(text) : null;
  if (gauge !== null) return made(gauge, 'mm', null);
  if (decimalComma.test(text)) throw notANumber({ text, at: 0 }, kind);
  if (isChoice(text)) {
    const { value, unit, spread } = readChoice(text, kind);
    return made(value, unit, spread);
  }
  const { rest, shape } = cutShape(text);
  return rest.includes('..') ? readRange(text, rest, shape, kind, made) : readSingle(text, rest, shape, kind, made);
}

/** `written`: the text without the brackets that say the shape. */
function readSingle(text: string, written: string, shape: Shape | null, kind: KindName, made: Made): Quantity {
  const number = takeNumber(written);
  if (number === null) throw notANumber({ text, at: 0 }, kind);
  const rest = { text: written.slice(number.length), at: number.length };
  const tail = findTail(rest, text);
  const ownUnit = { text: rest.text.slice(0, tail.at - rest.at).replace(/(±|\+-|\+\/-|~)$/, ''), at: rest.at };
  const standsBehind = ownUnit.text.trim() === '' && (tail.sign === '±' || tail.sign === '~');
  const unitPiece = (standsBehind && trailingUnit(tail)) || ownUnit;
  const unit = unitOf(text, unitPiece, kind);
  const digits = { text: number, at: 0 };
  const exact = readValue(digits, unit, kind, text);
  const value = toDouble(exact);
  const unitText = unitPiece.text.trim();
  const subject = { value: exact, unit, unitText, kind, text };
  const bracket = /\((\d+)\)/.exec(number)?.[1];
  if (bracket !== undefined) {
    if (tail.sign !== '') fail('quantity/two-uncertainties', text, tail);
    const last = lastDigits(number.trim(), bracket);
    const u = last ? toDouble(scale(last, unit, 'zero ignored')) : 0;
    if (!(u > 0 && u < Infinity)) fail('quantity/bad-tolerance', text, digits);
    if (shape?.coverage !== undefined) fail('quantity/bad-shape', text, shape.piece);
    return made(value, unitPiece.text, shaped({ shape: 'normal', u }, shape, subject));
  }
  return made(value, unitPiece.text, shaped(readSpread(tail, subject, shape?.coverage), shape, subject));
}

/** `0.4..0.6 K/W`; the best value is the middle. */
function readRange(text: string, written: string, shape: Shape | null, kind: KindName, made: Made): Quantity {
  const { lowest, highest, low, high, unit, unitText } = readEnds({ text: written, at: 0 }, kind, text);
  const value = times(plus(lowest, highest), decimalOf(0.5));
  const spread = shaped({ shape: 'rectangular', low, high }, shape, { value, unit, unitText, kind, text });
  return made(toDouble(value), unitText, spread);
}
