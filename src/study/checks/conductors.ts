import { type Fault, refuse } from '../../fault/fault.ts';
import { rawAt } from '../raw.ts';
import type { CheckInput } from './check.ts';

/** A conductor says its resistance or its wire, not both and not neither. */
export function checkConductors({ raw, outline, place }: CheckInput): Fault[] {
  return outline.parts.flatMap((part) => {
    if (part.kind !== 'conductor') return [];
    const resistance = rawAt(raw, [...part.path, 'resistance']);
    const wire = rawAt(raw, [...part.path, 'wire']);
    if (resistance && wire)
      return [refuse('study/resistance-and-wire', { name: part.name }, place([...part.path, 'wire'], 'key'))];
    if (!resistance && !wire) return [refuse('study/no-resistance', { name: part.name }, place(part.path, 'key'))];
    return [];
  });
}
