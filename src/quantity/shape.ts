import { nearest } from '../fault/nearest.ts';
import { minus, plus, toDouble } from './decimal.ts';
import { fail, misread, type Piece } from './misread.ts';
import { readEnds } from './range.ts';
import type { Spread } from './spread.ts';
import { factorOf, readSize, type Subject } from './tolerance.ts';

/** What stands in brackets at the end: `(k=2)`, `(95 %)`, `(k=2, 9 dof)`, `(10 readings)`, `(triangular)`, `(flat ± 1 K)`, `(limits ± 0.2 K)`, `(without ± 5 %)`. */
export interface Shape {
  readonly piece: Piece;
  /** The coverage factor, or the probability of a normal interval: `k=2`, `95 %`. */
  readonly coverage?: Piece;
  readonly degreesOfFreedom?: number;
  readonly form?: 'rectangular' | 'triangular' | 'u-shaped';
  readonly band?: { readonly word: 'flat' | 'limits' | 'without'; readonly size: Piece };
}

const brackets = /\(\s*((?:[^()]|\([^()]*\))*)\)\s*$/;
const number = String.raw`(\d+(?:\.\d+)?(?:e[+-]?\d+)?)`;
const coverageFactor = /^k\s*=\s*(\d+(?:\.\d+)?)$/;
const probability = /^(\d+(?:\.\d+)?)\s*%$/;
const freedom = new RegExp(String.raw`^${number}\s*(?:dof|degrees? of freedom)$`, 'i');
const readings = /^(\d+)\s*readings$/i;
const bandWord = /^(flat|limits|without)(?![a-z])\s*(.*)$/i;
const forms: Readonly<Record<string, NonNullable<Shape['form']>>> = {
  rectangular: 'rectangular',
  triangular: 'triangular',
  'u-shaped': 'u-shaped',
};
const words = [...Object.keys(forms), '95 %', 'flat', 'limits', 'without', 'readings', 'dof'];

/** Cuts the brackets off that say the shape. Brackets of a unit or of digits stay: behind an uncertainty, a space before them makes them a shape. */
export function cutShape(text: string): { readonly rest: string; readonly shape: Shape | null } {
  const found = brackets.exec(text);
  const inside = found?.[1].trim() ?? '';
  if (!found || /^sigma\s*=|^\d*$/.test(inside)) return { rest: text, shape: null };
  const rest = text.slice(0, found.index);
  const piece = { text: text.slice(found.index), at: found.index };
  const shape = readWords(inside, { text: found[1], at: found.index + found[0].indexOf(found[1]) }, text, piece);
  if (shape) return { rest, shape };
  if (!/\s$/.test(rest) || !/±|\+-|\+\/-|~|\.\.|\+\s*[\d.]|\d\(\d+\)/.test(rest)) return { rest: text, shape: null };
  throw misread('quantity/unknown-shape', { text: text.trim(), word: inside, near: nearest(inside, words) }, piece);
}

/** null: not one of the words that say a shape. */
function readWords(inside: string, place: Piece, text: string, piece: Piece): Shape | null {
  let shape: Shape = { piece };
  let at = place.at;
  for (const part of place.text.split(',')) {
    const word = part.trim();
    const here = { text: part, at };
    at += part.length + 1;
    const next = readWord(word, here, text);
    if (!next) return null;
    if (Object.keys(next).some((key) => key in shape)) fail('quantity/bad-shape', text, piece);
    shape = { ...shape, ...next };
  }
  return inside === '' ? null : shape;
}

function readWord(word: string, here: Piece, text: string): Omit<Shape, 'piece'> | null {
  if (coverageFactor.test(word)) return { coverage: here };
  if (probability.test(word)) return factorOf({ text: word, at: here.at }) ? { coverage: here } : null;
  const degrees = freedom.exec(word)?.[1] ?? readings.exec(word)?.[1];
  if (degrees !== undefined) {
    const degreesOfFreedom = readings.test(word) ? Number(degrees) - 1 : Number(degrees);
    if (!(degreesOfFreedom > 0 && degreesOfFreedom < Number.POSITIVE_INFINITY)) fail('quantity/bad-shape', text, here);
    return { degreesOfFreedom };
  }
  const form = forms[word.toLowerCase()];
  if (form) return { form };
  const [, name, size] = bandWord.exec(word) ?? [];
  if (name === undefined) return null;
  const band = name.toLowerCase() as NonNullable<Shape['band']>['word'];
  return { band: { word: band, size: { text: size, at: here.at + here.text.lastIndexOf(size) } } };
}

/** The spread that stands before the brackets, in the shape they say; what doesn't go together is refused. */
export function shaped(spread: Spread | null, shape: Shape | null, subject: Subject): Spread | null {
  if (!shape) return spread;
  const { degreesOfFreedom, form, band, piece } = shape;
  const refuse = (): never => fail('quantity/bad-shape', subject.text, piece);
  if (degreesOfFreedom !== undefined) {
    // A probability asks for a factor that depends on the degrees of freedom: the certificate names it.
    const byProbability = shape.coverage?.text.includes('%');
    if (spread?.shape !== 'normal' || form || band || byProbability) return refuse();
    return { shape: 't', u: spread.u, degreesOfFreedom };
  }
  if (!form && !band) return shape.coverage !== undefined && spread?.shape === 'normal' ? spread : refuse();
  if (spread?.shape !== 'rectangular' || (form && band)) return refuse();
  if (form) return { ...spread, shape: form };
  return banded(spread, band!, subject);
}

/** A rectangle with sloping sides, with ends that aren't known exactly, or with a hole. */
function banded(
  { low, high }: Spread & { shape: 'rectangular' },
  { word, size }: NonNullable<Shape['band']>,
  subject: Subject,
): Spread {
  const { text, value, kind } = subject;
  if (word === 'without' && size.text.includes('..'))
    return withHole(low, high, readEnds(size, kind, text), size, text);
  const sign = /^\s*(?:±|\+-|\+\/-)/.exec(size.text)?.[0];
  if (sign === undefined) return fail('quantity/bad-shape', text, size);
  const by = readSize({ text: size.text.slice(sign.length), at: size.at + sign.length }, subject);
  if (word === 'without')
    return withHole(low, high, { low: toDouble(minus(value, by)), high: toDouble(plus(value, by)) }, size, text);
  const width = toDouble(by);
  const half = (high - low) / 2;
  if (!(word === 'flat' ? width < half : width <= half)) return fail('quantity/shape-too-wide', text, size);
  return word === 'flat'
    ? { shape: 'trapezoidal', low, high, flat: width }
    : { shape: 'curvilinear', low, high, by: width };
}

function withHole(low: number, high: number, hole: { low: number; high: number }, size: Piece, text: string): Spread {
  if (!(low < hole.low && hole.low < hole.high && hole.high < high)) return fail('quantity/shape-too-wide', text, size);
  return { shape: 'sorted', low, high, holeLow: hole.low, holeHigh: hole.high };
}
