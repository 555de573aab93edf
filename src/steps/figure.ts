import { type KindName, kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import type { Figure } from './step-plan.ts';

/** A number for people and programs alike. `unit` is the one to show; the value stays SI. */
export function figure(value: number, u: number | null, kind: KindName, unit: string): Figure {
  // What is held exactly shows an uncertainty that is only the solver's rounding.
  const known = u !== null && Number.isFinite(u) && u > 1e-9 * Math.abs(value) ? u : null;
  const written = Number.isFinite(value) ? writeValue(value, known, unit, kind) : 'no solution';
  // Zeros behind the point say how sure a number is; without an uncertainty they would say too much.
  const text = known === null ? written.replace(/(\.\d*?)0+(?=\s|$)/, '$1').replace(/\.(?=\s|$)/, '') : written;
  return { value, unit: kinds[kind].siUnit, u: known, text };
}
