import { scaleDigits, shiftDecimal } from './decimal.ts';
import type { KindName } from './kind.ts';
import { parseUnit, readUnit } from './unit.ts';
import type { Unit } from './unit-table.ts';

/** The unit a value is shown in: it must fit the kind; an empty one is a bare number. A difference may be asked for on a scale: °C is then K. */
export function unitFor(unit: string, kind: KindName): Unit {
  const scale = kind === 'temperature-difference' ? readUnit(unit, 'temperature') : null;
  const found = scale ? { ...scale, zero: 0 } : unit.trim() === '' ? parseUnit('1') : readUnit(unit, kind);
  if (!found || (unit.trim() === '' && kind !== 'ratio' && kind !== 'count'))
    throw new Error(`"${unit}" is no unit of ${kind}`);
  return found;
}

/** A value in a unit, from SI. */
export function toUnit(value: number, unit: string, kind: KindName): number {
  const { ten, factor, zero } = unitFor(unit, kind);
  if (zero === 0) return shiftDecimal(value, -ten) / factor;
  // In decimals: 298.15 K are 25 °C, not 24.99999999999997 °C.
  if (factor === 1) return scaleDigits(String(value), { ...unitFor('K', 'temperature'), zero: -zero });
  return value / factor - zero / factor;
}

/** A value in SI, from a unit. */
export function fromUnit(value: number, unit: string, kind: KindName): number {
  return Number.isFinite(value) ? scaleDigits(String(value), unitFor(unit, kind)) : value;
}
