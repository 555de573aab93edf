import { z } from 'zod';
import { refuse } from '../../fault/fault.ts';
import { count, definition } from './leaf.ts';

/** How much risk a step may carry, and what has to be known before it. */
export const gate = z.strictObject({
  'per-limit': definition('ratio', 'largest probability of exceeding one limit; 1 % when left out', 'share').optional(),
  together: definition('ratio', 'largest probability of exceeding any limit; 5 % when left out', 'share').optional(),
  unwatched: definition(
    'ratio',
    'largest probability of exceeding the limit of a temperature that no instrument watches; 0.1 % when left out',
    'share',
  ).optional(),
  loads: count('different loads at which the baseline has to be steady; 2 when left out').optional(),
  'calibration-days': count('longest age of a calibration in days; 365 when left out').optional(),
});

/** A day as it is written in a study: 2026-03-01. */
export const day = z.string().superRefine((text, context) => {
  if (isDay(text)) return;
  context.addIssue({
    code: 'custom',
    params: { fault: refuse('gate/no-day', { text }), offset: 0, length: text.length },
  });
});

/** Whether a text is a day of the calendar, year first. */
export function isDay(text: string): boolean {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // A parser may take the 30th of February for the 2nd of March.
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}
