import { type Fault, refuse } from '../../fault/fault.ts';
import { keysAt, textAt } from '../outline.ts';
import type { CheckInput } from './check.ts';

/** A limiter that regulates needs a load that gives way. */
export function checkFollowers({ raw, outline, place }: CheckInput): Fault[] {
  const followers = outline.parts.some(
    (part) => part.kind === 'load' && textAt(raw, [...part.path, 'follows']) === 'processor',
  );
  const unclear = outline.parts.some((part) => part.kind === '');
  if (followers || unclear) return [];
  const limiters = keysAt(raw, ['limiters']);
  const regulating = limiters.find((name) => textAt(raw, ['limiters', name, 'acts']) === 'regulate');
  return regulating === undefined
    ? []
    : [refuse('study/no-follower', { limiter: regulating }, place(['limiters', regulating, 'acts']))];
}
