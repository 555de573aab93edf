import { scaleDigits } from './decimal.ts';
import { type KindName, kinds } from './kind.ts';
import { fail, misread, type Piece, refuseUnit, takeNumber } from './misread.ts';
import type { Spread } from './spread.ts';
import { readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';

/** The part of a text that speaks of uncertainty, with the sign it begins with. */
export interface Tail extends Piece {
  readonly sign: '' | '±' | '~' | '+' | 'sigma';
}

/** The number that the uncertainty is about. */
export interface Subject {
  readonly value: number;
  readonly unit: Unit;
  /** False where a ratio stands as a plain number. */
  readonly hasUnit: boolean;
  readonly kind: KindName;
  readonly text: string;
}

/** Kinds that can be negative; a large guess about any other is log-normal. */
const signed: readonly KindName[] = [
  ...(['temperature', 'temperature-difference', 'temperature-coefficient', 'voltage-temperature-coefficient'] as const),
  ...(['voltage', 'ratio', 'angle'] as const),
];

/** From this relative standard uncertainty on, a guess about a positive quantity is log-normal. */
const largeSpread = 0.2;

const asymmetric = /^\s*\+\s*(\S.*?)\s*(?:\s|\/)\s*-\s*(\S.*)$/;
const coverageFactor = /\(\s*k\s*=\s*(\d+(?:\.\d+)?)\s*\)\s*$/;

/** Cuts what is behind the number where the uncertainty begins. */
export function findTail(rest: Piece): Tail {
  const found = /±|\+-|\+\/-|~|\+\s*[\d.]|\(\s*sigma\s*=/.exec(rest.text);
  if (!found) return { sign: '', text: '', at: rest.at + rest.text.length };
  const [mark] = found;
  const sign = mark === '~' ? '~' : mark.startsWith('(') ? 'sigma' : /^\+\s*[\d.]/.test(mark) ? '+' : '±';
  const start = found.index + (sign === '~' || sign === '±' ? mark.length : 0);
  return { sign, text: rest.text.slice(start), at: rest.at + start };
}

/** In `5.02 ± 0.06 mΩ` the unit stands once, behind both. */
export function trailingUnit(tail: Tail): Piece | null {
  const body = tail.text.replace(coverageFactor, '');
  const number = takeNumber(body);
  const unit = number ? body.slice(number.length) : '';
  return /^\s*$|^\s*(%|ppm)\s*$/.test(unit) ? null : { text: unit, at: tail.at + number!.length };
}

/** What the tail says about the subject; null when there is none. */
export function readSpread(tail: Tail, subject: Subject): Spread | null {
  const { value, kind } = subject;
  switch (tail.sign) {
    case '':
      return null;
    case '+':
      return readAsymmetric(tail, subject);
    case 'sigma': {
      const sigma = Number(/^\(\s*sigma\s*=\s*([\d.eE+-]+)\s*\)\s*$/.exec(tail.text)?.[1]);
      if (!(sigma > 0 && sigma < Infinity) || !(value > 0)) fail('quantity/bad-tolerance', subject.text, tail);
      return { shape: 'log-normal', sigma };
    }
    case '±': {
      const coverage = coverageFactor.exec(tail.text);
      const size = readSize(coverage ? { text: tail.text.slice(0, coverage.index), at: tail.at } : tail, subject);
      if (!coverage) return { shape: 'rectangular', low: value - size, high: value + size };
      const k = Number(coverage[1]);
      if (!(k > 0)) fail('quantity/bad-tolerance', subject.text, tail);
      return { shape: 'normal', u: size / k };
    }
    case '~': {
      const size = readSize(tail, subject);
      const relative = size / value;
      if (relative < largeSpread || !(value > 0) || signed.includes(kind)) return { shape: 'normal', u: size };
      return { shape: 'log-normal', sigma: Math.sqrt(Math.log1p(relative * relative)) };
    }
  }
}

/** `+10 % -5 %`, `+10 % / -5 %`, or with one unit behind both: `+10 -5 %`. */
function readAsymmetric(tail: Tail, subject: Subject): Spread {
  const found = asymmetric.exec(tail.text);
  if (!found) throw misread('quantity/bad-tolerance', { text: subject.text.trim() }, tail);
  const [, plus, minus] = found;
  const unit = minus.slice(takeNumber(minus)?.length ?? 0);
  const up = readSize({ text: takeNumber(plus) === plus ? plus + unit : plus, at: tail.at }, subject);
  const down = readSize({ text: minus, at: tail.at + tail.text.length - minus.length }, subject);
  return { shape: 'rectangular', low: subject.value - down, high: subject.value + up };
}

/** A half width or standard uncertainty [SI]: `1 %`, `50 ppm`, `0.06 mΩ` or, where the unit stands behind both, `0.06 mΩ` of `5.02 ± 0.06 mΩ`. */
function readSize(piece: Piece, subject: Subject): number {
  const { kind, value, unit, text } = subject;
  const number = takeNumber(piece.text);
  if (number === null || /[(-]/.test(number.replace(/[eE]-/, '')))
    throw misread('quantity/bad-tolerance', { text: text.trim() }, piece);
  const rest = piece.text.slice(number.length);
  const written = rest.trim();
  const place = { text: written, at: piece.at + number.length + rest.search(/\S|$/) };
  const size = sizeOf(number.trim(), written, place);
  if (!(size > 0 && size < Infinity)) fail('quantity/bad-tolerance', text, piece);
  return size;

  function sizeOf(digits: string, symbol: string, at: Piece): number {
    if (symbol === '%' || symbol === 'ppm') {
      if (kind === 'temperature') fail('quantity/percent-of-temperature', text, piece);
      if (kind !== 'ratio') return Math.abs(value) * scaleDigits(digits, readUnit(symbol, 'ratio')!);
      if (!subject.hasUnit) fail('quantity/ambiguous-tolerance', text, piece);
    }
    if (symbol === '') {
      if (kind === 'count' || (kind === 'ratio' && !subject.hasUnit)) return scaleDigits(digits, unit);
      const { title, example } = kinds[kind];
      throw misread('quantity/missing-unit', { text: text.trim(), expectedKind: title, example }, piece);
    }
    const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
    const own = readUnit(symbol, differenceKind) ?? readUnit(symbol, kind);
    if (!own) throw refuseUnit(symbol, text, differenceKind, at);
    return scaleDigits(digits, own, 'ignored');
  }
}
