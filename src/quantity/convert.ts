import { decimalOf, scale, toDouble, unscale } from './decimal.ts';
import type { KindName } from './kind.ts';
import { parseUnit, readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';

/** The unit a value is shown in: it must fit the kind; an empty one is a bare number. A difference may be asked for on a scale: °C is then K. */
export function unitFor(unit: string, kind: KindName): Unit {
  const onScale = kind === 'temperature-difference' ? readUnit(unit, 'temperature') : null;
  const found = onScale ? { ...onScale, zero: 0 } : unit.trim() === '' ? parseUnit('1') : readUnit(unit, kind);
  if (!found || (unit.trim() === '' && kind !== 'ratio' && kind !== 'count'))
    throw new Error(`"${unit}" is no unit of ${kind}`);
  return found;
}

/** A value in a unit, from SI, in decimals: 298.15 K are 25 °C, not 24.99999999999997 °C. */
export function toUnit(value: number, unit: string, kind: KindName): number {
  const found = unitFor(unit, kind);
  return Number.isFinite(value) ? toDouble(unscale(decimalOf(value), found, 'zero counted')) : value;
}

/** A value in SI, from a unit, in decimals: 5 mΩ are 0.005 Ω, not 0.005000000000000001 Ω. */
export function fromUnit(value: number, unit: string, kind: KindName): number {
  const found = unitFor(unit, kind);
  return Number.isFinite(value) ? toDouble(scale(decimalOf(value), found, 'zero counted')) : value;
}
