import type { ThermocoupleType } from './thermocouple-type.ts';

/** Least tolerance [°C], share of the Celsius temperature, and the range it holds in [°C]. */
type Tolerance = readonly [least: number, share: number, from: number, to: number];

const tolerances: Readonly<Record<ThermocoupleType['letter'], Readonly<Record<1 | 2, Tolerance>>>> = {
  K: { 1: [1.5, 0.004, -40, 1000], 2: [2.5, 0.0075, -40, 1200] },
  T: { 1: [0.5, 0.004, -40, 350], 2: [1, 0.0075, -40, 350] },
  J: { 1: [1.5, 0.004, -40, 750], 2: [2.5, 0.0075, -40, 750] },
  E: { 1: [1.5, 0.004, -40, 800], 2: [2.5, 0.0075, -40, 900] },
  N: { 1: [1.5, 0.004, -40, 1000], 2: [2.5, 0.0075, -40, 1200] },
};

/**
 * Tolerance of new thermocouple wire, as ± [K]; null outside the range of its class.
 *
 * a = max(a0, s·|t|)
 *
 * a0   least tolerance of type and class [K]
 * s    share of the Celsius temperature [1]
 * t    temperature, T − 273.15 K [°C]
 * Valid for wire as delivered, reference junction apart: classes 1 and 2 from −40 °C to the end of the class.
 * Source: IEC 60584-2:1982, table 1 (IEC 60584-1:2013 has the same).
 */
export function thermocoupleTolerance(type: ThermocoupleType, grade: 1 | 2, temperature: number): number | null {
  const celsius = temperature - 273.15;
  const [least, share, from, to] = tolerances[type.letter][grade];
  if (!(celsius >= from - 1e-9 && celsius <= to + 1e-9)) return null;
  return Math.max(least, share * Math.abs(celsius));
}
