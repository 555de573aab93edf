import type { Dimension } from './kind.ts';

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

export function unit(dimension: Dimension, ten = 0, factor = 1, zero = 0, angle = false): Unit {
  return { dimension, ten, factor, zero, angle };
}

const one: Dimension = [0, 0, 0, 0, 0];
const resistance: Dimension = [1, 2, -3, -2, 0];
const length: Dimension = [0, 1, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0];
const pressure: Dimension = [1, -1, -2, 0, 0];
const temperature: Dimension = [0, 0, 0, 0, 1];

/** Units that take a prefix. */
export const prefixable: Readonly<Record<string, Unit>> = {
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
 * standard gravity 9.80665 m/s² exactly; an electronvolt 1.602176634e-19 J exactly (CODATA 2018).
 */
export const plain: Readonly<Record<string, Unit>> = {
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
  rpm: unit([0, 0, -1, 0, 0], 0, 1 / 60),
  lb: unit([1, 0, 0, 0, 0], -8, 45359237),
  in: unit(length, -4, 254),
  ft: unit(length, -4, 3048),
  mil: unit(length, -7, 254),
  eV: unit([1, 2, -2, 0, 0], -28, 1602176634),
  lbf: unit([1, 1, -2, 0, 0], -13, 44482216152605),
  psi: unit(pressure, 0, 6894.757293168361),
  CFM: unit([0, 3, -1, 0, 0], 0, 0.028316846592 / 60),
  cfm: unit([0, 3, -1, 0, 0], 0, 0.028316846592 / 60),
  deg: unit(one, 0, Math.PI / 180, 0, true),
  '°': unit(one, 0, Math.PI / 180, 0, true),
};

export const prefixes: Readonly<Record<string, number>> = {
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

const compounds =
  'K/W W/K mW/K W/(m·K) K·mm²/W W/(m²·K) J/K J/(kg·K) J/kg ppm/K %/K 1/K mV/K mm² cm² mm³ cm³ m³ g/cm³ kg/m³ m/s N/m N/mm N·m lbf·in m³/s L/min g/s A/dm² g/(A·h)';

/** Every unit's symbol, for suggestions. */
export const unitSymbols: readonly string[] = [
  ...Object.keys(plain),
  ...Object.keys(prefixable),
  ...Object.keys(prefixes).flatMap((prefix) => Object.keys(prefixable).map((symbol) => prefix + symbol)),
  ...compounds.split(' '),
];
