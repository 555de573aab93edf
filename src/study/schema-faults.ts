import type { $ZodIssue } from 'zod/v4/core';
import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Lines } from './lines.ts';
import { type Path, type Raw, rawAt, type Span, spanAt } from './raw.ts';
import type { Field } from './schema/leaf.ts';
import {
  aboutOf,
  alternativeKeys,
  childSchema,
  fieldOf,
  isMap,
  literalsOf,
  optionFor,
  optionsOf,
  type Schema,
  shapeFields,
  shapeOf,
  valueSchema,
} from './schema/walk.ts';

type Issue = $ZodIssue;

/** Turns what the schema has against `plain` into faults with their places. `raw` is what `plain` was made from. */
export function schemaFaults(
  issues: readonly Issue[],
  schema: Schema,
  plain: unknown,
  raw: Raw,
  lines: Lines,
): Fault[] {
  const place = (path: Path, part: 'key' | 'value' = 'value') => lines.place(spanAt(raw, path, part));
  return issues.flatMap((issue) => translate(issue, []));

  function translate(issue: Issue, base: Path): Fault[] {
    const path = [...base, ...(issue.path as Path)];
    const value = valueAt(plain, path);
    const here = schemaAt(schema, path, plain);
    const field = path.join('.');
    if (value === undefined && !rawAt(raw, path)) return [missing(path, here)];
    const number = here && fieldOf(here);
    if (number && issue.code !== 'unrecognized_keys') return numberFaults(issue, base, path, number);
    if (issue.code === 'custom') return [leafFault(issue, path)];
    if (issue.code === 'unrecognized_keys') {
      const keys = here ? knownKeys(here, value) : [];
      return issue.keys.map((key) =>
        refuse('study/unknown-key', { key, field, nearest: nearest(key, keys), keys }, place([...path, key], 'key')),
      );
    }
    if (issue.code === 'invalid_key') return [badName(String(path.at(-1)), place(path, 'key'))];
    if (issue.code === 'invalid_format') return [badName(String(value), place(path))];
    if (issue.code === 'invalid_value') return [notAChoice(field, value, issue.values.map(String), path)];
    if (issue.code === 'invalid_union') return unionFaults(issue, base, path, here, value);
    if (issue.code === 'too_small' && issue.origin === 'array') {
      return [
        refuse(
          'study/too-few',
          { field, least: Number(issue.minimum), found: (value as unknown[]).length },
          place(path),
        ),
      ];
    }
    if (issue.code === 'too_big' && issue.origin === 'array') {
      return [
        refuse(
          'study/too-many',
          { field, most: Number(issue.maximum), found: (value as unknown[]).length },
          place(path),
        ),
      ];
    }
    if ((issue.code === 'too_small' || issue.code === 'too_big') && issue.origin === 'number')
      return [refuse('study/beyond', { field, text: sayValue(value), about: here ? aboutOf(here) : '' }, place(path))];
    if (issue.code === 'too_small' && issue.origin === 'string')
      return [refuse('study/empty-text', { field }, place(path))];
    return [wrongShape(field, value, here, path)];
  }

  function missing(path: Path, here: Schema | undefined): Fault {
    const key = String(path.at(-1));
    const holder = path.slice(0, -1);
    const holderSchema = schemaAt(schema, holder, plain);
    const choices =
      holderSchema && optionsOf(holderSchema).length > 0
        ? discriminants(holderSchema, key)
        : here
          ? literalsOf(here)
          : [];
    const about = here ? aboutOf(here) : '';
    return refuse('study/missing-key', { key, field: holder.join('.'), about, choices }, place(holder, 'key'));
  }

  function unionFaults(
    issue: Issue & { code: 'invalid_union' },
    base: Path,
    path: Path,
    here: Schema | undefined,
    value: unknown,
  ): Fault[] {
    const field = path.join('.');
    if ('discriminator' in issue && issue.discriminator) {
      const holder = schemaAt(schema, path.slice(0, -1), plain);
      const choices = holder ? discriminants(holder, String(path.at(-1))) : [];
      return [notAChoice(field, value, choices, path)];
    }
    if (!here) return [wrongShape(field, value, here, path)];
    const keys = alternativeKeys(here);
    if (keys && isMap(value)) {
      const found = Object.keys(value);
      if (found.length !== 1 || !keys.includes(found[0])) {
        const unknown = found.find((key) => !keys.includes(key)) ?? '';
        return [
          refuse(
            'study/one-of',
            { field, found, keys, nearest: nearest(unknown, keys) },
            place([...path, unknown || found[1] || ''], 'key'),
          ),
        ];
      }
    }
    const option = optionFor(here, value);
    const chosen = option && issue.errors[optionsOf(here).indexOf(option)];
    if (!chosen || (!isMap(value) && !chosen.some((inner) => inner.code === 'invalid_format')))
      return [wrongShape(field, value, here, path)];
    return chosen.flatMap((inner) => translate(inner, [...base, ...(issue.path as Path)]));
  }

  function numberFaults(issue: Issue, base: Path, path: Path, number: Field): Fault[] {
    const field = path.join('.');
    const value = valueAt(plain, path);
    const all = flatten(issue, base);
    const custom = all.find(({ issue: inner }) => inner.code === 'custom');
    const text = isMap(value) ? value.value : value;
    const written = isMap(value) && 'value' in value ? [...path, 'value'] : path;
    if (number.role === 'count') {
      return [refuse('study/not-a-count', { field, text: sayValue(value), least: number.least ?? 1 }, place(path))];
    }
    if (custom && number.role === 'rating' && typeof text === 'string' && /^[a-z-]+$/i.test(text)) {
      return [refuse('study/rating-word', { field, text, nearest: nearest(text, ['open', 'none']) }, place(written))];
    }
    if (custom) return [leafFault(custom.issue, custom.path.at(-1) === 'before' ? custom.path : written)];
    if (isMap(value)) {
      const keys = ['value', 'source', 'before'];
      const unknown = Object.keys(value).filter((key) => !keys.includes(key));
      if (unknown.length > 0) {
        return unknown.map((key) =>
          refuse('study/unknown-key', { key, field, nearest: nearest(key, keys), keys }, place([...path, key], 'key')),
        );
      }
      if (!('value' in value)) {
        return [
          refuse('study/missing-key', { key: 'value', field, about: number.about, choices: [] }, place(path, 'key')),
        ];
      }
      if ('source' in value && typeof value.source !== 'string') {
        return [
          refuse(
            'study/wrong-shape',
            { field: `${field}.source`, found: sayShape(value.source), expected: 'text' },
            place([...path, 'source']),
          ),
        ];
      }
    }
    return [
      refuse(
        'study/not-a-quantity',
        { field, found: sayShape(text), about: number.about, kind: number.kind ?? '' },
        place(written),
      ),
    ];
  }

  /** A fault found in a number's own text. */
  function leafFault(issue: Issue, path: Path): Fault {
    const { fault, offset, length } = (issue as unknown as { params: { fault: Fault; offset: number; length: number } })
      .params;
    return { ...fault, place: lines.place(within(spanAt(raw, path), offset, length)) };
  }

  /** Offsets inside the value of a quoted scalar start behind its quote. */
  function within(span: Span, offset: number, length: number): Span {
    const quoted = /^["']/.test(lines.place(span).text.slice(lines.place(span).column - 1)) ? 1 : 0;
    const from = Math.min(span.from + quoted + offset, Math.max(span.from, span.to - 1));
    return { from, to: Math.max(from + 1, Math.min(from + length, span.to - quoted)) };
  }

  function notAChoice(field: string, value: unknown, choices: string[], path: Path): Fault {
    if (typeof value !== 'string')
      return refuse('study/wrong-choice', { field, text: sayValue(value), nearest: '', choices }, place(path));
    return refuse('study/wrong-choice', { field, text: value, nearest: nearest(value, choices), choices }, place(path));
  }

  function wrongShape(field: string, value: unknown, here: Schema | undefined, path: Path): Fault {
    const expected = here ? shapeOf(here) : 'something else';
    return refuse('study/wrong-shape', { field, found: sayShape(value), expected }, place(path));
  }
}

function badName(name: string, place: Fault['place']): Fault {
  return refuse('study/bad-name', { name }, place);
}

function flatten(issue: Issue, base: Path): { issue: Issue; path: Path }[] {
  const path = [...base, ...(issue.path as Path)];
  if (issue.code !== 'invalid_union') return [{ issue, path }];
  return issue.errors.flat().flatMap((inner) => flatten(inner, path));
}

function knownKeys(schema: Schema, value: unknown): string[] {
  const option = optionsOf(schema).length > 0 ? optionFor(schema, value) : schema;
  return Object.keys((option && shapeFields(option)) ?? {});
}

function discriminants(schema: Schema, key: string): string[] {
  return optionsOf(schema).flatMap((option) => {
    const shape = shapeFields(option);
    return shape && Object.hasOwn(shape, key) ? literalsOf(shape[key]) : [];
  });
}

function valueAt(plain: unknown, path: Path): unknown {
  let here = plain;
  for (const key of path)
    here = typeof here === 'object' && here !== null && Object.hasOwn(here, key) ? (here as never)[key] : undefined;
  return here;
}

/** The schema of what stands at `path` in `plain`. */
export function schemaAt(schema: Schema, path: Path, plain: unknown): Schema | undefined {
  let here: Schema | undefined = schema;
  let value = plain;
  for (const key of path) {
    here = here && (childSchema(here, key, value) ?? valueSchema(here));
    value = valueAt(value, [key]);
  }
  return here;
}

/** A scalar as a person wrote it, anything else by its shape. */
export function sayValue(value: unknown): string {
  return typeof value === 'object' ? sayShape(value) : String(value);
}

export function sayShape(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map';
  if (typeof value === 'number') return `the number ${value}`;
  if (typeof value === 'boolean') return `the word ${value}`;
  return `"${value}"`;
}
