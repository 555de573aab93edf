import { z } from 'zod';
import { refuse } from '../../fault/fault.ts';

/** Text that has to look a certain way; the fault says how. */
function text(holds: (text: string) => boolean, code: 'study/not-a-time' | 'study/photo-outside', about: string) {
  return z
    .string()
    .superRefine((written, context) => {
      if (holds(written)) return;
      const fault = refuse(code, { text: written });
      context.addIssue({ code: 'custom', params: { fault, offset: 0, length: Math.max(1, written.length) } });
    })
    .describe(about);
}

const record = {
  why: z.string().optional().describe('for whoever reads this later'),
  where: z.string().optional().describe('the place on the board, such as "R2, beside the coil at the jack"'),
  photo: text(isInside, 'study/photo-outside', 'picture of the place, by its path in the study’s folder').optional(),
  undo: z.string().optional().describe('how to take it back, where that isn’t plain'),
  done: text(isTime, 'study/not-a-time', 'when it was done: a date, or a time in UTC').optional(),
};

/** One change to the board, on the state of the step before. */
export const change = z.union([
  z.strictObject({
    at: z.string().describe('path of a field'),
    becomes: z.unknown().describe('its new content'),
    ...record,
  }),
  z.strictObject({ at: z.string().describe('path of a field'), removed: z.literal(true), ...record }),
]);

/** A path that stays in the folder it starts from, written the same way on every machine. */
function isInside(path: string): boolean {
  return /^[^/\\:]+(\/[^/\\:]+)*$/.test(path) && !path.split('/').some((part) => part === '..' || part === '.');
}

/** `2026-03-05`, or `2026-03-05T14:10Z` with or without seconds. */
function isTime(written: string): boolean {
  const found = /^(\d{4}-\d{2}-\d{2})(T\d{2}:\d{2}(:\d{2})?Z)?$/.exec(written);
  if (!found) return false;
  const time = new Date(found[2] ? written : `${written}T00:00Z`);
  // The 31st of February would become a day in March.
  return !Number.isNaN(time.getTime()) && time.toISOString().startsWith(found[1]);
}
