import { type Decimal, decimalOf, over, plus, readDecimal, times, toDouble } from './decimal.ts';
import type { KindName } from './kind.ts';
import { fail, type Piece, takeNumber } from './misread.ts';
import { readValue, unitOf } from './range.ts';
import type { Spread } from './spread.ts';

/** Of several values: their mean in SI, and what was written. */
export interface Choice {
  readonly value: number;
  readonly unit: string;
  readonly spread: Spread & { readonly shape: 'choice' };
}

const separator = /\s*(?:,\s*or\s|,|\sor\s)\s*/g;
const probability = /\(\s*(\d+(?:\.\d+)?)\s*%\s*\)\s*$/;

/** Whether a text names several values: `10 mΩ or 12 mΩ`, `one of 10, 12 or 15 mΩ`. */
export function isChoice(text: string): boolean {
  return /^\s*one of\b/.test(text) || /\sor\s+[+-]?[\d.]/.test(text);
}

/** Reads values of which one is true: equally likely, or each with its probability: `10 mΩ (70 %) or 12 mΩ (30 %)`. A unit may stand once, behind the last. */
export function readChoice(text: string, kind: KindName): Choice {
  const items = itemsOf(text).map((piece) => {
    const share = probability.exec(piece.text);
    const rest = share ? piece.text.slice(0, share.index) : piece.text;
    const digits = takeNumber(rest);
    if (digits === null || digits.includes('(')) return fail('quantity/bad-choice', text, piece);
    const unit = { text: rest.slice(digits.length), at: piece.at + digits.length };
    if (/±|\+-|\+\/-|~|\.\.|\(\s*(?:k|sigma)\s*=/.test(unit.text)) return fail('quantity/bad-choice', text, piece);
    return { piece, digits: { text: digits, at: piece.at }, unit, share: share ? readDecimal(share[1])! : null };
  });
  const last = items[items.length - 1].unit;
  const whole: Piece = { text, at: 0 };
  // A bare 0.9 before 80 % could be a share or a percentage.
  const alike = items.every(({ unit }) => unit.text.trim() === last.text.trim());
  if (kind === 'ratio' && !alike) fail('quantity/bad-choice', text, whole);
  const exact = items.map(({ digits, unit }) => {
    const place = unit.text.trim() === '' ? last : unit;
    return readValue(digits, unitOf(text, place, kind), kind, text);
  });
  const values = exact.map(toDouble);
  if (values.length < 2 || new Set(values).size < values.length) fail('quantity/bad-choice', text, whole);
  const shares = items.map(({ share }) => share);
  const told = shares.filter((share): share is Decimal => share !== null && share.whole !== 0n);
  if (told.length > 0 && told.length < shares.length) fail('quantity/bad-choice', text, whole);
  const total = told.reduce(plus, decimalOf(0));
  if (told.length > 0 && toDouble(total) !== 100) fail('quantity/bad-choice', text, whole);
  const weights = told.length > 0 ? told : exact.map(() => decimalOf(1));
  const sum = weights.reduce(plus, decimalOf(0));
  const mean = over(
    exact.reduce((all, value, k) => plus(all, times(value, weights[k])), decimalOf(0)),
    sum,
  );
  const probabilities = weights.map((weight) => toDouble(over(weight, sum)));
  return { value: toDouble(mean), unit: last.text.trim(), spread: { shape: 'choice', values, probabilities } };
}

function itemsOf(text: string): Piece[] {
  const start = /^\s*one of\b/.exec(text)?.[0].length ?? 0;
  const items: Piece[] = [];
  let from = start;
  for (const found of text.slice(start).matchAll(separator)) {
    items.push({ text: text.slice(from, start + found.index), at: from });
    from = start + found.index + found[0].length;
  }
  return [...items, { text: text.slice(from), at: from }];
}
