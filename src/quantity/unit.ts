import { type Dimension, type KindName, kinds } from './kind.ts';

/**
 * A unit, as what one of it is in SI: factor · 10^ten, and for temperatures on a scale of their own the SI value of its zero.
 * Powers of ten are kept apart, so that "5 mΩ" is read as the double nearest to 0.005, not as 5 times a rounded thousandth.
 */
export interface Unit {
  readonly dimension: Dimension;
  readonly ten: number;
  readonly factor: number;
  /** SI value of the scale's zero; 0 but for °C and °F. */
  readonly zero: number;
  /** True for units of angle, which have no dimension and still aren't ratios. */
  readonly angle: boolean;
}

type Exponents = [number, number, number, number, number];

function unit(dimension: Dimension, ten = 0, factor = 1, zero = 0, angle = false): Unit {
  return { dimension, ten, factor, zero, angle };
}

const one: Dimension = [0, 0, 0, 0, 0];
const resistance: Dimension = [1, 2, -3, -2, 0];
const length: Dimension = [0, 1, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0];
const pressure: Dimension = [1, -1, -2, 0, 0];
const temperature: Dimension = [0, 0, 0, 0, 1];

/** Units that take a prefix. */
const prefixable: Readonly<Record<string, Unit>> = {
  m: unit(length),
  g: unit([1, 0, 0, 0, 0], -3),
  s: unit(time),
  A: unit([0, 0, 0, 1, 0]),
  K: unit(temperature),
  V: unit([1, 2, -3, -1, 0]),
  W: unit([1, 2, -3, 0, 0]),
  Ω: unit(resistance),
  ohm: unit(resistance),
  Ohm: unit(resistance),
  F: unit([-1, -2, 4, 2, 0]),
  H: unit([1, 2, -2, -2, 0]),
  C: unit([0, 0, 1, 1, 0]),
  J: unit([1, 2, -2, 0, 0]),
  Hz: unit([0, 0, -1, 0, 0]),
  N: unit([1, 1, -2, 0, 0]),
  Pa: unit(pressure),
  bar: unit(pressure, 5),
  L: unit([0, 3, 0, 0, 0], -3),
  l: unit([0, 3, 0, 0, 0], -3),
  Wh: unit([1, 2, -2, 0, 0], 2, 36),
  Ah: unit([0, 0, 1, 1, 0], 2, 36),
  rad: unit(one, 0, 1, 0, true),
};

/**
 * Units without prefixes. Factors: NIST Special Publication 811 (2008), appendix B.8; a foot is 0.3048 m exactly, a pound 0.45359237 kg exactly,
 * standard gravity 9.80665 m/s² exactly.
 */
const plain: Readonly<Record<string, Unit>> = {
  '1': unit(one),
  '%': unit(one, -2),
  ppm: unit(one, -6),
  degC: unit(temperature, 0, 1, 273.15),
  '°C': unit(temperature, 0, 1, 273.15),
  '℃': unit(temperature, 0, 1, 273.15),
  degF: unit(temperature, 0, 5 / 9, (459.67 * 5) / 9),
  '°F': unit(temperature, 0, 5 / 9, (459.67 * 5) / 9),
  min: unit(time, 1, 6),
  h: unit(time, 2, 36),
  d: unit(time, 2, 864),
  in: unit(length, -4, 254),
  ft: unit(length, -4, 3048),
  mil: unit(length, -7, 254),
  lbf: unit([1, 1, -2, 0, 0], -13, 44482216152605),
  psi: unit(pressure, 0, 6894.757293168361),
  CFM: unit([0, 3, -1, 0, 0], 0, 0.028316846592 / 60),
  cfm: unit([0, 3, -1, 0, 0], 0, 0.028316846592 / 60),
  deg: unit(one, 0, Math.PI / 180, 0, true),
  '°': unit(one, 0, Math.PI / 180, 0, true),
};

const prefixes: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  µ: -6,
  m: -3,
  c: -2,
  d: -1,
  k: 3,
  M: 6,
  G: 9,
};

const exponentDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Every unit's symbol, for suggestions. */
export const unitSymbols: readonly string[] = [
  ...Object.keys(plain),
  ...Object.keys(prefixable),
  ...[
    'mΩ',
    'mohm',
    'mV',
    'mA',
    'mW',
    'kW',
    'kHz',
    'MHz',
    'nH',
    'uH',
    'uF',
    'nC',
    'ns',
    'us',
    'ms',
    'mm',
    'um',
    'kPa',
    'K/W',
    'ppm/K',
    'W/(m·K)',
    'mm²',
  ],
];

/** Reads a unit's text; null when it isn't one. Products with `·`, `*` or a space, quotients with `/`, brackets, powers as ², 2, ^2 or ^-1. */
export function parseUnit(text: string): Unit | null {
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
    .replace(/\^?(-?)([2-9])/g, (_, minus, digit) => (minus ? '⁻' : '') + exponentDigits[Number(digit)]);
}
