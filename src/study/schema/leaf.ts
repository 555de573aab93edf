import { z } from 'zod';
import type { KindName } from '../../quantity/kind.ts';
import { kinds } from '../../quantity/kind.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { readQuantity } from '../../quantity/read.ts';
import { refuse } from '../../fault/fault.ts';

/** Which values a quantity may take: most of a board's numbers can't be negative, some can't be zero. */
export type Sign = 'any' | 'not-negative' | 'positive';

const written = z.union([z.string(), z.number()]);

/**
 * A number with unit and uncertainty, as text (`5 mohm ± 1 %`) or as `{ value, source }`.
 * Faults travel in the issue's `params`, so that the reader can add file, line and caret.
 */
export function quantity(kind: KindName, about: string, sign: Sign = 'positive') {
  return z
    .union([
      written,
      z.strictObject({ value: written, source: z.string().optional().describe('where the number comes from') }),
    ])
    .transform((raw, context): Quantity => {
      const { value, source } = typeof raw === 'object' ? raw : { value: raw, source: undefined };
      const text = String(value);
      const read = readQuantity(text, kind);
      if (!read.ok) {
        context.addIssue({ code: 'custom', params: { fault: read.fault, offset: read.offset, length: read.length } });
        return z.NEVER;
      }
      const number = read.quantity.value;
      if (sign !== 'any' && (number < 0 || (sign === 'positive' && number === 0))) {
        const expected = sign === 'positive' ? 'more than zero' : 'zero or more';
        const fault = refuse('study/out-of-range', { text, kind: kinds[kind].title, expected });
        context.addIssue({ code: 'custom', params: { fault, offset: 0, length: text.length } });
        return z.NEVER;
      }
      return source === undefined ? read.quantity : { ...read.quantity, source };
    })
    .describe(`${about} [${kind}]`);
}

/**
 * A rating: a quantity, or `open` (not known: an open limit, the same as leaving it out), or `none` (does not apply, by the person's word).
 */
export function rating(kind: KindName, about: string) {
  return z.union([z.literal(['open', 'none']), quantity(kind, about)]).optional().describe(`${about} [${kind}, open or none]`);
}

/** A rating as read. `undefined` and `open` both mean: no data. */
export type Rating = Quantity | 'open' | 'none' | undefined;

/** A whole number of things, at least `least`. */
export function count(about: string, least = 1) {
  return z.int().min(least).max(1000).describe(`${about} [count]`);
}

/** A name that other fields refer to. */
export const name = z.string().regex(/^[a-z][a-z0-9-]*$/, 'lower-case letters, digits and hyphens');
