import { type Decimal, decimalOf, magnitude, minus, over, plus, scale, times, toDouble } from './decimal.ts';
import type { KindName } from './kind.ts';
import { fail, missingUnit, type Piece, readDigits, refuseUnit, takeNumber } from './misread.ts';
import type { Spread } from './spread.ts';
import { readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';

/** The part of a text that speaks of uncertainty, with the sign it begins with. */
export interface Tail extends Piece {
  readonly sign: '' | '±' | '~' | '+' | 'sigma';
}

/** The number that the uncertainty is about. */
export interface Subject {
  /** In SI, as written. */
  readonly value: Decimal;
  readonly unit: Unit;
  /** The unit as written; '' where a ratio or a count stands as a plain number. */
  readonly unitText: string;
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

const anySign = /±|\+-|\+\/-|~|\+\s*[\d.]|(?:^|\s)-\s*[\d.]|\(\s*sigma\s*=/;
const asymmetric = /^\s*\+\s*(\S.*?)\s*(?:\s|\/)\s*-\s*(\S.*)$/;
const sigmaAlone = /^\(\s*sigma\s*=\s*(\d+(?:\.\d+)?(?:e-?\d+)?)\s*\)\s*$/;

/** Cuts what is behind the number where the uncertainty begins. */
export function findTail(rest: Piece, text: string): Tail {
  const found = anySign.exec(rest.text);
  if (!found) return { sign: '', text: '', at: rest.at + rest.text.length };
  if (found[0].trim().startsWith('-'))
    fail('quantity/bad-tolerance', text, { text: rest.text.slice(found.index), at: rest.at + found.index });
  const sign = signOf(found[0].trim());
  const start = found.index + (sign === '~' || sign === '±' ? found[0].length : 0);
  return { sign, text: rest.text.slice(start), at: rest.at + start };
}

function signOf(mark: string): Tail['sign'] {
  if (mark === '~') return '~';
  if (mark.startsWith('(')) return 'sigma';
  return /^\+\s*[\d.]/.test(mark) ? '+' : '±';
}

/** In `5.02 ± 0.06 mΩ` the unit stands once, behind both. */
export function trailingUnit(tail: Tail): Piece | null {
  const number = takeNumber(tail.text);
  const unit = number ? tail.text.slice(number.length).split(anySign)[0] : '';
  return /^\s*$|^\s*(%|ppm)\s*$/.test(unit) ? null : { text: unit, at: tail.at + number!.length };
}

/** Normal coverage factors by the per cent between the two ends (GUM 4.3.4, 4.3.5 and table G.1), with more digits than printed there. */
const normalFactors: Readonly<Record<string, number>> = {
  50: 0.6744897501960817,
  90: 1.6448536269514715,
  95: 1.9599639845400536,
  95.45: 2,
  99: 2.5758293035489,
  99.73: 3,
};

/** The factor of a coverage in per cent; null for one that isn't in the table, or no percentage. */
export function factorOf({ text }: Piece): Decimal | null {
  const [, percent] = /^\s*([\d.]+)\s*%/.exec(text) ?? [];
  const factor = percent === undefined ? undefined : normalFactors[Number(percent)];
  return factor === undefined ? null : decimalOf(factor);
}

/** What the tail says about the subject; null when there is none. `coverage`: a coverage behind it, as `k=2` or `95 %`. */
export function readSpread(tail: Tail, subject: Subject, coverage?: Piece): Spread | null {
  const { value, kind, text } = subject;
  if (coverage && tail.sign !== '±') fail('quantity/bad-tolerance', text, coverage);
  switch (tail.sign) {
    case '':
      return null;
    case '+':
      return readAsymmetric(tail, subject);
    case 'sigma': {
      const sigma = Number(sigmaAlone.exec(tail.text)?.[1]);
      if (!(sigma > 0 && sigma < Infinity) || value.whole <= 0n) fail('quantity/bad-tolerance', text, tail);
      return { shape: 'log-normal', sigma };
    }
    case '±': {
      const size = readSize(tail, subject);
      if (!coverage) return rectangle(size, size, subject, tail);
      const k = factorOf(coverage) ?? readDigits(coverage.text.split('=')[1].trim(), text, coverage);
      if (k.whole === 0n) fail('quantity/bad-tolerance', text, coverage);
      return { shape: 'normal', u: toDouble(over(size, k)) };
    }
    case '~': {
      const size = readSize(tail, subject);
      if (value.whole <= 0n || signed.includes(kind)) return { shape: 'normal', u: toDouble(size) };
      const relative = toDouble(over(size, value));
      if (relative < largeSpread) return { shape: 'normal', u: toDouble(size) };
      return { shape: 'log-normal', sigma: Math.sqrt(Math.log1p(relative * relative)) };
    }
  }
}

function rectangle(down: Decimal, up: Decimal, { value, text }: Subject, tail: Tail): Spread {
  const [low, high] = [toDouble(minus(value, down)), toDouble(plus(value, up))];
  if (!(low < high && Number.isFinite(high - low))) fail('quantity/bad-tolerance', text, tail);
  return { shape: 'rectangular', low, high };
}

/** `+10 % -5 %`, `+10 % / -5 %`, or with one unit behind both: `+10 -5 %`. One side may be zero. */
function readAsymmetric(tail: Tail, subject: Subject): Spread {
  const found = asymmetric.exec(tail.text);
  if (!found) return fail('quantity/bad-tolerance', subject.text, tail);
  const [, above, below] = found;
  const unit = below.slice(takeNumber(below)?.length ?? 0);
  const up = { text: takeNumber(above) === above ? above + unit : above, at: tail.at + tail.text.indexOf(above) };
  const down = { text: below, at: tail.at + tail.text.length - below.length };
  return rectangle(readSize(down, subject, 'zero allowed'), readSize(up, subject, 'zero allowed'), subject, tail);
}

/** A half width or standard uncertainty [SI]: `1 %`, `50 ppm`, `0.06 mΩ`. */
export function readSize(piece: Piece, subject: Subject, zero?: 'zero allowed'): Decimal {
  const { text } = subject;
  const number = takeNumber(piece.text);
  if (number === null || /[(-]/.test(number.replace(/[eE]-/, ''))) return fail('quantity/bad-tolerance', text, piece);
  const rest = { text: piece.text.slice(number.length), at: piece.at + number.length };
  const second = anySign.exec(rest.text);
  if (second)
    fail('quantity/two-uncertainties', text, { text: rest.text.slice(second.index), at: rest.at + second.index });
  const size = scaleSize(readDigits(number.trim(), text, piece), rest, piece, subject);
  const double = toDouble(size);
  if (!(double < Infinity) || (double === 0 && !(zero && size.whole === 0n)))
    fail('quantity/bad-tolerance', text, piece);
  return size;
}

/** A share of the value where a percentage stands behind another unit; else a number in the unit written beside it. */
function scaleSize(number: Decimal, unitPiece: Piece, piece: Piece, subject: Subject): Decimal {
  const { kind, value, unit, unitText, text } = subject;
  const symbol = unitPiece.text.trim();
  if ((symbol === '%' || symbol === 'ppm') && symbol !== unitText) {
    if (kind === 'temperature') fail('quantity/percent-of-temperature', text, piece);
    if (kind === 'ratio' && unitText === '') fail('quantity/ambiguous-tolerance', text, piece);
    return times(magnitude(value), scale(number, readUnit(symbol, 'ratio')!, 'zero ignored'));
  }
  if (symbol === '') {
    if (unitText !== '') throw missingUnit(text, kind, piece);
    return scale(number, unit, 'zero ignored');
  }
  const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
  const own = readUnit(symbol, differenceKind) ?? readUnit(symbol, kind);
  if (!own) throw refuseUnit(symbol, piece.text, differenceKind, unitPiece);
  return scale(number, own, 'zero ignored');
}
