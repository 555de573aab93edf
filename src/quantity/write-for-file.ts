import { unitFor } from './convert.ts';
import {
  type Decimal,
  decimalOf,
  magnitude,
  minus,
  over,
  plus,
  readDecimal,
  scale,
  times,
  toDouble,
  unscale,
  writeDecimal,
} from './decimal.ts';
import { type KindName, kinds } from './kind.ts';
import { readQuantity } from './read.ts';
import type { Spread } from './spread.ts';

/** More digits than this say nothing to anybody; a double from very far away is then written in SI. */
const mostDigits = 40;

/**
 * Text for a file that reads back to the very same value and spread, with as few digits as that takes.
 * A log-normal spread is written as a percentage, or where that would round as the sigma itself.
 * Throws when value or spread can't be read from any text: not finite, no width, a rectangle beside its value, a temperature below absolute zero.
 */
export function writeForFile(value: number, spread: Spread | null, unit: string, kind: KindName): string {
  const figures = [value, ...Object.values(spread ?? {}).flat()].filter((each) => typeof each === 'number');
  if (figures.every(Number.isFinite)) {
    const si = kinds[kind].siUnit === '1' ? '' : kinds[kind].siUnit;
    for (const symbol of [unit.trim() === '1' ? '' : unit.trim(), si])
      for (const text of fileTexts(value, spread, symbol, kind)) {
        const back = readQuantity(text, kind);
        if (back.ok && back.quantity.value === value && sameSpread(back.quantity.spread, spread)) return text;
      }
  }
  throw new Error(`${kind} ${value} with ${JSON.stringify(spread)} can't be written`);
}

/** Texts to try, the plainest first; the last one of a spread is exact. */
function* fileTexts(value: number, spread: Spread | null, symbol: string, kind: KindName): Generator<string> {
  const unit = unitFor(symbol, kind);
  const inUnit = (number: number): string =>
    shortest(
      unscale(decimalOf(number), unit, 'zero counted'),
      (each) => toDouble(scale(each, unit, 'zero counted')),
      number,
    );
  const differenceSymbol = kind === 'temperature' ? 'K' : symbol;
  const differenceUnit = kind === 'temperature' ? unitFor('K', kind) : unit;
  const size = (target: Decimal, reads: (size: Decimal) => number, wanted: number): string => {
    const read = (each: Decimal): number => reads(scale(each, differenceUnit, 'zero ignored'));
    return join(shortest(unscale(target, differenceUnit, 'zero ignored'), read, wanted), differenceSymbol);
  };
  const digits = inUnit(value);
  const own = join(digits, symbol);
  const written = scale(readDecimal(digits)!, unit, 'zero counted');
  const upward = (part: Decimal) => toDouble(plus(written, part));
  const offsets = (low: number, high: number) => [minus(decimalOf(high), written), minus(written, decimalOf(low))];
  function* rectangle(low: number, high: number): Generator<string> {
    const [up, down] = offsets(low, high);
    if (written.whole !== 0n) yield `${own} ± ${writeDecimal(over(times(up, hundred), magnitude(written)), 6)} %`;
    const above = size(up, upward, high);
    yield `${own} ± ${above}`;
    yield `${inUnit(low)}..${join(inUnit(high), symbol)}`;
    yield `${own} +${above} -${size(down, (part) => toDouble(minus(written, part)), low)}`;
  }
  /** What stands in brackets behind the ends. */
  function shapeWords(spread: Extract<Spread, { readonly low: number }>): readonly string[] {
    const width = (wanted: number) => size(decimalOf(wanted), toDouble, wanted);
    switch (spread.shape) {
      case 'rectangular':
        return [''];
      case 'triangular':
        return [' (triangular)'];
      case 'u-shaped':
        return [' (U-shaped)'];
      case 'trapezoidal':
        return [` (flat ± ${width(spread.flat)})`];
      case 'curvilinear':
        return [` (limits ± ${width(spread.by)})`];
      case 'sorted': {
        const { holeLow, holeHigh } = spread;
        const ends = `${inUnit(holeLow)}..${join(inUnit(holeHigh), symbol)}`;
        const [up] = offsets(holeLow, holeHigh);
        return [` (without ± ${size(up, upward, holeHigh)})`, ` (without ${ends})`];
      }
    }
  }
  if (spread === null) {
    yield own;
    return;
  }
  switch (spread.shape) {
    case 'normal':
      yield `${own} ± ${size(decimalOf(spread.u), toDouble, spread.u)} (k=1)`;
      return;
    case 't':
      yield `${own} ± ${size(decimalOf(spread.u), toDouble, spread.u)} (k=1, ${spread.degreesOfFreedom} dof)`;
      return;
    case 'log-normal':
      for (const places of [2, 4])
        yield `${own} ~ ${Number((100 * Math.sqrt(Math.expm1(spread.sigma ** 2))).toPrecision(places))} %`;
      yield `${own} (sigma=${spread.sigma})`;
      return;
    case 'choice':
      yield spread.values.map((each) => join(inUnit(each), symbol)).join(' or ');
      yield spread.values
        .map((each, k) => `${join(inUnit(each), symbol)} (${percentage(spread.probabilities[k])} %)`)
        .join(' or ');
      return;
    default: {
      for (const words of shapeWords(spread)) for (const text of rectangle(spread.low, spread.high)) yield text + words;
    }
  }
}

const hundred = decimalOf(100);

/** A probability in per cent, with the digits that read back to it. */
function percentage(probability: number): string {
  return shortest(times(decimalOf(probability), hundred), (each) => toDouble(over(each, hundred)), probability);
}

/** The fewest digits near `target` that are read as `wanted`. */
function shortest(target: Decimal, reads: (written: Decimal) => number, wanted: number): string {
  if (reads(decimalOf(0)) === wanted) return '0';
  for (let digits = 1; digits < mostDigits; digits++) {
    const text = writeDecimal(target, digits);
    if (reads(readDecimal(text)!) === wanted) return text;
  }
  return writeDecimal(target, mostDigits);
}

function join(digits: string, symbol: string): string {
  return symbol === '' ? digits : `${digits} ${symbol}`;
}

function sameSpread(a: Spread | null, b: Spread | null): boolean {
  const figures = (spread: Spread | null) => JSON.stringify(Object.entries(spread ?? {}).sort());
  return figures(a) === figures(b);
}
