import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Study } from '../study/study.ts';

/** The step of that name; refuses one that the study doesn't have. */
export function namedStep(study: Study, wanted: string): string {
  const known = study.steps.map(({ id }) => id);
  if (known.includes(wanted)) return wanted;
  throw new Refusal(refuse('command/no-such-step', { step: wanted, known, nearest: nearest(wanted, known) }));
}
