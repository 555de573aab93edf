import { toUnit } from './convert.ts';
import { type KindName, kinds } from './kind.ts';
import { readQuantity } from './read.ts';
import type { Spread } from './spread.ts';

/**
 * Text for a file that reads back to the very same value and spread: in the unit asked for where its factor allows that, else in the SI unit.
 * A log-normal spread is written as a percentage, or where that would round as the sigma itself.
 * Throws when the value isn't finite, or when an asymmetric rectangle can't be written without rounding.
 */
export function writeForFile(value: number, spread: Spread | null, unit: string, kind: KindName): string {
  const si = kinds[kind].siUnit === '1' ? '' : kinds[kind].siUnit;
  for (const candidate of [unit.trim(), si])
    for (const text of fileTexts(value, spread, candidate, kind)) {
      const back = readQuantity(text, kind);
      if (back.ok && back.quantity.value === value && sameSpread(back.quantity.spread, spread)) return text;
    }
  throw new Error(`${kind} ${value} with ${JSON.stringify(spread)} can't be written without rounding`);
}

function* fileTexts(value: number, spread: Spread | null, unit: string, kind: KindName): Generator<string> {
  const own = join(toUnit(value, unit, kind), unit);
  const difference = (size: number): string => {
    if (kind !== 'temperature') return join(toUnit(size, unit, kind), unit);
    return join(size, 'K');
  };
  switch (spread?.shape) {
    case undefined:
      yield own;
      return;
    case 'normal':
      yield `${own} ± ${difference(spread.u)} (k=1)`;
      return;
    case 'log-normal':
      for (const digits of [2, 4]) {
        const percent = 100 * Math.sqrt(Math.expm1(spread.sigma ** 2));
        yield `${own} ~ ${Number(percent.toPrecision(digits))} %`;
      }
      yield `${own} (sigma=${spread.sigma})`;
      return;
    case 'rectangular': {
      const { low, high } = spread;
      const [up, down] = [high - value, value - low];
      yield `${own} ± ${Number(((100 * up) / Math.abs(value)).toPrecision(6))} %`;
      yield `${own} ± ${difference(Number(up.toPrecision(12)))}`;
      yield `${own} ± ${difference(up)}`;
      yield `${toUnit(low, unit, kind)}..${join(toUnit(high, unit, kind), unit)}`;
      for (const plus of neighbours(up))
        for (const minus of neighbours(down)) yield `${own} +${difference(plus)} -${difference(minus)}`;
    }
  }
}

function join(number: number, unit: string): string {
  return unit === '' ? String(number) : `${number} ${unit}`;
}

/** A difference of two doubles may be rounded; the sum then needs the double beside it. */
function neighbours(size: number): readonly number[] {
  const step = Math.abs(size) * Number.EPSILON;
  return [size, size + step, size - step];
}

function sameSpread(a: Spread | null, b: Spread | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.shape === 'normal') return b.shape === 'normal' && a.u === b.u;
  if (a.shape === 'log-normal') return b.shape === 'log-normal' && a.sigma === b.sigma;
  return b.shape === 'rectangular' && a.low === b.low && a.high === b.high;
}
