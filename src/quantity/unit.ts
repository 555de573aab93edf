import { type Dimension, type KindName, kinds } from './kind.ts';
import { plain, prefixable, prefixes, type Unit, unit } from './unit-table.ts';

type Exponents = [number, number, number, number, number];

const exponentDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** No unit is longer; keeps a hostile text's brackets from nesting without end. */
const longest = 80;

/** Reads a unit's text; null when it isn't one. Products with `·`, `*` or a space, quotients with `/`, brackets, powers as ², 2, ^2 or ^-1. */
export function parseUnit(text: string): Unit | null {
  if (text.length > longest) return null;
  const reader = new UnitReader(
    text
      .trim()
      .replace(/μ/g, 'µ')
      .replace(/\u2126/g, 'Ω'),
  );
  const result = reader.product();
  return result && reader.atEnd() ? result : null;
}

/**
 * Reads a unit for a kind; null when it isn't one of that kind. Where the strict reading doesn't fit, what data sheets mean is tried: everything
 * behind the first stroke divides (W/m·K, g/A·h), and mK behind a stroke is metre kelvin (W/mK). A bare C is a temperature in °C.
 */
export function readUnit(text: string, kind: KindName): Unit | null {
  const written = text.trim();
  if (kind === 'temperature' && (written === 'C' || written === 'F')) return parseUnit(`deg${written}`);
  const [, top, bottom] = /^([^/]+)\/([^/()]+)$/.exec(written) ?? [];
  const readings = bottom ? [written, `${top}/(${bottom})`, `${top}/(${bottom.replace('mK', 'm·K')})`] : [written];
  for (const reading of readings) {
    const unit = parseUnit(reading);
    if (unit && fits(unit, kind)) return unit;
  }
  return null;
}

function fits(unit: Unit, kind: KindName): boolean {
  if (!sameDimension(unit.dimension, kinds[kind].dimension)) return false;
  if (kind === 'temperature-difference') return unit.zero === 0;
  if (kind === 'count') return unit.ten === 0 && unit.factor === 1 && !unit.angle;
  return unit.angle === (kind === 'angle');
}

class UnitReader {
  #at = 0;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  atEnd(): boolean {
    return this.#at === this.#text.length;
  }

  product(): Unit | null {
    let result = this.#power();
    while (result && !this.atEnd() && this.#text[this.#at] !== ')') {
      // Behind a power a new unit may follow at once: mm²K.
      const joined = /[\d⁰¹²³⁴⁵⁶⁷⁸⁹]/.test(this.#text[this.#at - 1]) ? /^/ : /^\s+/;
      const rest = this.#text.slice(this.#at);
      const sign = /^\s*([·*⋅/])\s*|^\s+/.exec(rest) ?? joined.exec(rest);
      if (!sign) return null;
      this.#at += sign[0].length;
      const next = this.#power();
      if (!next) return null;
      result = combine(result, next, sign[1] === '/' ? -1 : 1);
    }
    return result;
  }

  #power(): Unit | null {
    const base = this.#base();
    if (!base) return null;
    const rest = this.#text.slice(this.#at);
    const high = /^(⁻?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/.exec(rest);
    const low = /^\^?(-?)([1-9])(?!\d)/.exec(rest);
    const found = high ?? low;
    if (!found) return base;
    this.#at += found[0].length;
    const size = high ? Number([...high[2]].map((digit) => exponentDigits.indexOf(digit)).join('')) : Number(found[2]);
    return raise(base, found[1] ? -size : size);
  }

  #base(): Unit | null {
    if (this.#text[this.#at] === '(') {
      this.#at++;
      const inner = this.product();
      if (!inner || this.#text[this.#at] !== ')') return null;
      this.#at++;
      return inner;
    }
    const word = /^(?:[A-Za-zΩµ°℃%]+|1(?=[/]|$))/.exec(this.#text.slice(this.#at))?.[0];
    const found = word ? atom(word) : null;
    if (found) this.#at += word!.length;
    return found;
  }
}

function atom(word: string): Unit | null {
  if (Object.hasOwn(plain, word)) return plain[word];
  if (Object.hasOwn(prefixable, word)) return prefixable[word];
  const [prefix] = word;
  const stem = word.slice(prefix.length);
  if (!Object.hasOwn(prefixes, prefix) || !Object.hasOwn(prefixable, stem)) return null;
  const base = prefixable[stem];
  return { ...base, ten: base.ten + prefixes[prefix] };
}

function combine(a: Unit, b: Unit, sign: 1 | -1): Unit {
  const dimension = a.dimension.map((exponent, i) => exponent + sign * b.dimension[i]) as Exponents;
  // In a product °C means a difference: 5 mV/°C is 5 mV/K.
  return unit(dimension, a.ten + sign * b.ten, sign === 1 ? a.factor * b.factor : a.factor / b.factor);
}

function raise(base: Unit, power: number): Unit {
  const dimension = base.dimension.map((exponent) => exponent * power) as Exponents;
  return unit(dimension, base.ten * power, base.factor ** power);
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => exponent === b[i]);
}

/** A unit as it is shown: ohm as Ω, u as µ, degC as °C, powers raised. */
export function prettyUnit(text: string): string {
  return text
    .replace(/(?:ohm|Ohm)\b/g, 'Ω')
    .replace(/\bu(?=[A-Za-zΩ])/g, 'µ')
    .replace(/deg([CF])\b/g, '°$1')
    .replace(/\*/g, '·')
    .replace(
      /(?<=[A-Za-zΩµ°)])\^?(-?)([1-9])/g,
      (_, minus, digit) => (minus ? '⁻' : '') + exponentDigits[Number(digit)],
    );
}
