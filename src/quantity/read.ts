import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type KindName, kinds } from './kind.ts';
import type { Quantity } from './quantity.ts';
import type { Spread } from './spread.ts';
import { parseUnit, prettyUnit, sameDimension, type Unit, unitSymbols } from './unit.ts';
import { readWireGauge } from './wire-gauge.ts';

export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  /** Where in the text the fault lies, for a caret. */
  | { readonly ok: false; readonly fault: Fault; readonly offset: number; readonly length: number };

/** Thrown inside the reader only; `readQuantity` turns it into a result. */
class Misread {
  constructor(
    readonly fault: Fault,
    readonly offset: number,
    readonly length: number,
  ) {}
}

/** A piece of the text and where it begins. */
interface Piece {
  readonly text: string;
  readonly at: number;
}

const numberPattern = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:\(\d+\))?(?:[eE][+-]?\d+)?`;
const rangePattern = new RegExp(String.raw`^(\s*)(${numberPattern})\s*\.\.\s*(${numberPattern})(.*)$`);
const numberAtStart = new RegExp(String.raw`^(\s*)(${numberPattern})(?![\d.,])`);
const asymmetric = new RegExp(String.raw`^\s*\+\s*(${numberPattern})(.*?)\s-\s*(${numberPattern})(.*)$`);

/** Kinds that can't be negative, so that a large spread is log-normal. */
const signed: readonly KindName[] = ['temperature', 'temperature-difference', 'temperature-coefficient', 'voltage', 'voltage-temperature-coefficient', 'ratio', 'angle'];

/** From this relative standard uncertainty on, a guess about a positive quantity is taken as log-normal. */
const largeSpread = 0.2;

/**
 * Reads a number with unit and uncertainty: `5 mΩ ± 1 %`, `0.4..0.6 K/W`, `5.02(3) mΩ`, `5.02 mΩ ± 0.06 mΩ (k=2)`, `45 um ~ 30 %`, `5 V +10 % -5 %`, `AWG 18`.
 * A ratio's `%` tolerance counts in points: `90 % ± 2 %` is 0.88 to 0.92.
 */
export function readQuantity(text: string, kind: KindName): QuantityReading {
  try {
    return { ok: true, quantity: read(text, kind) };
  } catch (error) {
    if (error instanceof Misread) return { ok: false, fault: error.fault, offset: error.offset, length: error.length };
    throw error;
  }
}

/** Reads a unit for a kind; null when it isn't a unit of that kind. */
export function readUnit(text: string, kind: KindName): Unit | null {
  const unit = (kind === 'temperature' && text.trim() === 'C' ? parseUnit('degC') : parseUnit(text)) ?? null;
  return unit && sameDimension(unit.dimension, kinds[kind].dimension) ? unit : null;
}

function read(original: string, kind: KindName): Quantity {
  // One character for one, so that places in the text stay true.
  const text = original.replace(/[\u00a0\u2007\u2009\u202f]/g, ' ').replace(/\u2212/g, '-').replace(/μ/g, 'µ');
  const made = (value: number, unit: string, spread: Spread | null): Quantity => ({ kind, value, unit, spread, text: original.trim() });
  if (kind === 'length') {
    const diameter = readWireGauge(text);
    if (diameter !== null) return made(diameter, 'mm', null);
  }
  const range = rangePattern.exec(text);
  if (range) {
    const unitPiece = { text: range[4], at: text.length - range[4].length };
    const unit = unitOf(text, unitPiece, kind);
    const [low, high] = [range[2], range[3]].map((digits) => scaled(digits, unit, kind, text));
    if (!(low < high)) fail('quantity/bad-range', { text: text.trim() }, { text: text.trim(), at: text.indexOf(text.trim()) });
    return made((low + high) / 2, unitPiece.text.trim(), { shape: 'rectangular', low, high });
  }
  const first = numberAtStart.exec(text);
  if (!first) throw notANumber(text, kind);
  const digits = first[2];
  const rest = { text: text.slice(first[0].length), at: first[0].length };
  const tail = tailOf(rest);
  const ownUnit: Piece = { text: rest.text.slice(0, tail.at - rest.at), at: rest.at };
  const borrowed = ownUnit.text.trim() === '' && tail.sign === '±' ? trailingUnit(tail) : null;
  const unitPiece = borrowed ?? ownUnit;
  const unit = unitOf(text, unitPiece, kind);
  const value = scaled(digits, unit, kind, text);
  const bracket = /\((\d+)\)/.exec(digits);
  if (bracket) {
    if (tail.sign !== '') fail('quantity/two-uncertainties', { text: text.trim() }, { text: tail.text, at: tail.at });
    return made(value, unitPiece.text.trim(), { shape: 'normal', u: lastDigits(digits, bracket[1], unit) });
  }
  return made(value, unitPiece.text.trim(), spreadOf(tail, { value, unit, kind, text }));
}

/** The part that speaks of uncertainty, with the sign it begins with. */
interface Tail extends Piece {
  readonly sign: '' | '±' | '~' | '+';
}

function tailOf(rest: Piece): Tail {
  const found = /±|\+-|\+\/-|~|\+\s*\d/.exec(rest.text);
  if (!found) return { sign: '', text: '', at: rest.at + rest.text.length };
  const sign = found[0] === '~' ? '~' : /^\+\s*\d/.test(found[0]) ? '+' : '±';
  const start = sign === '+' ? found.index : found.index + found[0].length;
  return { sign, text: rest.text.slice(start), at: rest.at + found.index };
}

/** In `5.02 ± 0.06 mΩ` the unit stands once, behind both. */
function trailingUnit(tail: Tail): Piece | null {
  const body = tail.text.replace(/\(\s*k\s*=.*$/, '');
  const number = numberAtStart.exec(body);
  const unit = number ? body.slice(number[0].length) : '';
  return unit.trim() !== '' && unit.trim() !== '%' ? { text: unit, at: tail.at + tail.text.indexOf(unit) } : null;
}

interface Subject {
  readonly value: number;
  readonly unit: Unit;
  readonly kind: KindName;
  readonly text: string;
}

function spreadOf(tail: Tail, subject: Subject): Spread | null {
  const { value } = subject;
  if (tail.sign === '') return null;
  if (tail.sign === '+') {
    const found = asymmetric.exec(tail.text);
    if (!found) fail('quantity/bad-tolerance', { text: subject.text.trim() }, tail);
    const up = toleranceOf({ text: `${found[1]}${found[2]}`, at: tail.at }, subject);
    const down = toleranceOf({ text: `${found[3]}${found[4]}`, at: tail.at }, subject);
    return { shape: 'rectangular', low: value - down, high: value + up };
  }
  const coverage = /\(\s*k\s*=\s*([\d.]+)\s*\)\s*$/.exec(tail.text);
  const body = { text: coverage ? tail.text.slice(0, coverage.index) : tail.text, at: tail.at };
  const size = toleranceOf(body, subject);
  if (coverage) {
    const k = Number(coverage[1]);
    if (!(k > 0)) fail('quantity/bad-tolerance', { text: subject.text.trim() }, tail);
    return { shape: 'normal', u: size / k };
  }
  if (tail.sign === '±') return { shape: 'rectangular', low: value - size, high: value + size };
  const relative = size / Math.abs(value);
  if (relative >= largeSpread && value > 0 && !signed.includes(subject.kind))
    return { shape: 'log-normal', sigma: Math.sqrt(Math.log1p(relative * relative)) };
  return { shape: 'normal', u: size };
}

/** Half width or standard uncertainty [SI] from `1 %`, `0.06 mΩ` or, where the unit was borrowed or isn't needed, `0.06`. */
function toleranceOf(piece: Piece, subject: Subject): number {
  const { kind, value, unit, text } = subject;
  const number = numberAtStart.exec(piece.text);
  if (!number || number[2].includes('(')) throw misread('quantity/bad-tolerance', { text: text.trim() }, piece);
  const size = Number(number[2]);
  const written = piece.text.slice(number[0].length).trim();
  if (!(size > 0)) fail('quantity/bad-tolerance', { text: text.trim() }, piece);
  const points = kind === 'ratio' || kind === 'count';
  if (written === '%' && !points) {
    if (kind === 'temperature') fail('quantity/percent-of-temperature', { text: text.trim() }, piece);
    return (Math.abs(value) * size) / 100;
  }
  if (written === '') {
    // `0.90 ± 0.02`, or the unit stood behind both and has been read.
    if (points || /[±~]|\+-|\+\/-/.test(text)) return points ? amount(number[2], unit) : failMissing(piece, subject);
  }
  const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
  const own = written === '' ? unit : (readUnit(written, differenceKind) ?? readUnit(written, kind));
  if (!own) throw unknownUnit(written, text, differenceKind, { text: written, at: piece.at + piece.text.indexOf(written) });
  return amount(number[2], own);
}

function failMissing(piece: Piece, { kind, text }: Subject): never {
  const { title, example } = kinds[kind];
  throw misread('quantity/missing-unit', { text: text.trim(), expectedKind: title, example }, piece);
}

/** A number times its unit, without the zero of a temperature scale. */
function amount(digits: string, unit: Unit): number {
  return times(digits, unit.ten) * unit.factor;
}

function scaled(digits: string, unit: Unit, kind: KindName, text: string): number {
  const plainDigits = digits.replace(/\(\d+\)/, '');
  const value = unit.zero === 0 ? amount(plainDigits, unit) : addDecimals(plainDigits, unit);
  if (!Number.isFinite(value)) throw notANumber(text, kind);
  return value;
}

/** 25 °C is the double nearest to 298.15: the sum is made in decimals, because 25.1 + 273.15 rounds twice. */
function addDecimals(digits: string, unit: Unit): number {
  const sum = Number(digits) * unit.factor + unit.zero;
  return unit.factor === 1 ? Number(sum.toPrecision(15)) : sum;
}

function times(digits: string, ten: number): number {
  const [mantissa, exponent = '0'] = digits.split(/[eE]/);
  return Number(`${mantissa}e${Number(exponent) + ten}`);
}

/** Standard uncertainty in the last digits: 5.02(3) is ± 0.03. Source: JCGM 100:2008 (GUM), 7.2.2. */
function lastDigits(digits: string, bracket: string, unit: Unit): number {
  const [mantissa, exponent = '0'] = digits.replace(/\(\d+\)/, '').split(/[eE]/);
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return times(bracket, Number(exponent) - decimals + unit.ten) * unit.factor;
}

function unitOf(text: string, piece: Piece, kind: KindName): Unit {
  const written = piece.text.trim();
  const { title, example, dimension } = kinds[kind];
  const place = { text: written, at: piece.at + Math.max(0, piece.text.indexOf(written)) };
  const bare = kind === 'ratio' || kind === 'count' || kind === 'angle';
  if (written === '') {
    if (bare && kind !== 'angle') return parseUnit('1')!;
    throw misread('quantity/missing-unit', { text: text.trim(), expectedKind: title, example }, { text: text.trim(), at: text.search(/\S/) });
  }
  const unit = kind === 'temperature' && written === 'C' ? parseUnit('degC') : parseUnit(written);
  if (!unit) throw unknownUnit(written, text, kind, place);
  if (!sameDimension(unit.dimension, dimension)) throw wrongDimension(text, unit, kind, place);
  if (kind === 'temperature-difference' && unit.zero !== 0)
    throw misread('quantity/scale-for-difference', { text: text.trim(), unit: prettyUnit(written) }, place);
  return unit;
}

function wrongDimension(text: string, unit: Unit, kind: KindName, place: Piece): Misread {
  const found = Object.values(kinds).find(({ dimension }) => sameDimension(dimension, unit.dimension));
  const data = {
    text: text.trim(),
    foundKind: found?.title ?? 'of another dimension',
    expectedKind: kinds[kind].title,
    example: kinds[kind].example,
  };
  return misread('quantity/wrong-dimension', data, place);
}

function unknownUnit(written: string, text: string, kind: KindName, place: Piece): Misread {
  const { title, example } = kinds[kind];
  const near = nearest(written, unitSymbols);
  return misread('quantity/unknown-unit', { unit: written, text: text.trim(), near, expectedKind: title, example }, place);
}

function notANumber(text: string, kind: KindName): Misread {
  const trimmed = text.trim();
  const piece = { text: trimmed, at: Math.max(0, text.search(/\S/)) };
  const code = /^[+-]?\d+,\d/.test(trimmed) ? 'quantity/comma' : 'quantity/not-a-number';
  return misread(code, { text: trimmed, expectedKind: kinds[kind].title, example: kinds[kind].example }, piece);
}

function misread(code: Fault['code'], data: Fault['data'], { text, at }: Piece): Misread {
  return new Misread(refuse(code, data), at, Math.max(1, text.length));
}

function fail(code: Fault['code'], data: Fault['data'], piece: Piece): never {
  throw misread(code, data, piece);
}
