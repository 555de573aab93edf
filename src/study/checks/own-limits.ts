import { type Fault, refuse } from '../../fault/fault.ts';
import { keysAt } from '../outline.ts';
import { rawAt } from '../raw.ts';
import type { CheckInput } from './check.ts';

/** A limit of one's own has one side: with two, one would be forgotten. */
export function checkOwnLimits({ raw, place }: CheckInput): Fault[] {
  return keysAt(raw, ['limits']).flatMap((limit) => {
    const path = ['limits', limit];
    if (!rawAt(raw, [...path, 'under']) || !rawAt(raw, [...path, 'over'])) return [];
    return [refuse('study/under-and-over', { limit }, place([...path, 'over'], 'key'))];
  });
}
