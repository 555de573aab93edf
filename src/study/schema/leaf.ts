import { z } from 'zod';
import { refuse } from '../../fault/fault.ts';
import type { KindName } from '../../quantity/kind.ts';
import { kinds } from '../../quantity/kind.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { readQuantity } from '../../quantity/read.ts';
import { readAnyKind } from '../../quantity/read-any-kind.ts';

/** Which values a quantity may take [SI]: most of a board's numbers can't be negative, some can't be zero. */
export const ranges = {
  any: { holds: () => true, says: 'any' },
  'not-negative': { holds: (value: number) => value >= 0, says: 'zero or more' },
  positive: { holds: (value: number) => value > 0, says: 'more than zero' },
  share: { holds: (value: number) => value > 0 && value <= 1, says: 'more than zero, at most 1 (100 %)' },
  'one-or-more': { holds: (value: number) => value >= 1, says: '1 or more' },
} as const;

export type Range = keyof typeof ranges;

/** What a number's field is, for those who walk the schema: the reader of faults, the remarks, the page on the file's format. */
export interface Field {
  /** `definition`: exact by its nature, such as what a limiter allows or where a line begins; no uncertainty is asked for. */
  readonly role: 'quantity' | 'definition' | 'rating' | 'count';
  readonly about: string;
  readonly kind?: KindName;
  readonly range?: Range;
  readonly least?: number;
}

/** The field behind a schema, for every number of the study. */
export const fields = z.registry<Field>();

const written = z.union([z.string(), z.number()]);

/**
 * A number with unit and uncertainty, as text (`5 mohm ± 1 %`) or as `{ value, source }`.
 * Faults travel in the issue's `params`, so that the reader can add file, line and caret.
 */
export function quantity(kind: KindName, about: string, range: Range = 'positive') {
  return readable(kind, about, range).register(fields, { role: 'quantity', about, kind, range });
}

/** A quantity of whatever kind its unit says; a difference where it is in kelvins. */
export function anyQuantity(about: string) {
  return readable(null, about, 'any').register(fields, { role: 'quantity', about, range: 'any' });
}

/** A quantity that is exact by its nature: what firmware allows, where a derating begins, a reference temperature. */
export function definition(kind: KindName, about: string, range: Range = 'positive') {
  return readable(kind, about, range).register(fields, { role: 'definition', about, kind });
}

function readable(kind: KindName | null, about: string, range: Range) {
  return z
    .union([
      written,
      z.strictObject({
        value: written,
        source: z.string().optional().describe('where the number comes from'),
        before: written
          .optional()
          .describe('what was stated before a fit; the next fit starts from it, so that nothing counts twice'),
      }),
    ])
    .transform((raw, context): Quantity => {
      const { value, source, before } =
        typeof raw === 'object' ? raw : { value: raw, source: undefined, before: undefined };
      const text = String(value);
      const read = kind ? readQuantity(text, kind) : (readAnyKind(text) ?? unknownUnit(text));
      if (!read.ok) {
        context.addIssue({ code: 'custom', params: { fault: read.fault, offset: read.offset, length: read.length } });
        return z.NEVER;
      }
      const { holds, says } = ranges[range];
      if (!holds(read.quantity.value)) {
        const { title } = kinds[read.quantity.kind];
        const fault = refuse('study/out-of-range', { text, kind: title, expected: says });
        context.addIssue({ code: 'custom', params: { fault, offset: 0, length: text.length } });
        return z.NEVER;
      }
      const stated = before === undefined ? null : readQuantity(String(before), read.quantity.kind);
      if (stated && !stated.ok) {
        context.addIssue({
          code: 'custom',
          path: ['before'],
          params: { fault: stated.fault, offset: stated.offset, length: stated.length },
        });
        return z.NEVER;
      }
      return {
        ...read.quantity,
        ...(source !== undefined && { source }),
        ...(stated && { before: { value: stated.quantity.value, spread: stated.quantity.spread } }),
      };
    })
    .describe(`${about} [${kind ?? 'any kind'}]`);
}

function unknownUnit(text: string) {
  return { ok: false, fault: refuse('quantity/no-such-unit', { text }), offset: 0, length: text.length } as const;
}

/**
 * A rating: a quantity, or `open` (not known: an open limit, the same as leaving it out), or `none` (does not apply, by the person's word).
 */
export function rating(kind: KindName, about: string) {
  return z
    .union([z.literal(['open', 'none']), quantity(kind, about)])
    .optional()
    .describe(`${about} [${kind}, open or none]`)
    .register(fields, { role: 'rating', about, kind });
}

/** A rating as read. `undefined` and `open` both mean: no data. */
export type Rating = Quantity | 'open' | 'none' | undefined;

/** A whole number of things, at least `least`. */
export function count(about: string, least = 1) {
  return z.int().min(least).max(1000).describe(`${about} [count]`).register(fields, { role: 'count', about, least });
}

/** A name that other fields refer to. */
export const name = z.string().regex(/^[a-z][a-z0-9-]*$/, 'lower-case letters, digits and hyphens');
