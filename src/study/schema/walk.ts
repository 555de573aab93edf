import { z } from 'zod';
import type { $ZodType } from 'zod/v4/core';
import { type Field, fields } from './leaf.ts';

/** A schema of any shape. */
export type Schema = $ZodType;

interface Definition {
  readonly type: string;
  readonly shape?: Record<string, Schema>;
  readonly valueType?: Schema;
  readonly element?: Schema;
  readonly items?: Schema[];
  readonly options?: Schema[];
  readonly innerType?: Schema;
  readonly in?: Schema;
  readonly values?: unknown[];
}

const definitionOf = (schema: Schema) => schema._zod.def as unknown as Definition;

/** The number's field that `schema` is, if it is one. */
export function fieldOf(schema: Schema): Field | undefined {
  const field = fields.get(schema);
  const { innerType } = definitionOf(schema);
  return field ?? (innerType && fieldOf(innerType));
}

/** What `schema` is for, in the words of its description; '' when it has none. */
export function aboutOf(schema: Schema): string {
  const { innerType } = definitionOf(schema);
  return fieldOf(schema)?.about ?? z.globalRegistry.get(schema)?.description ?? (innerType ? aboutOf(innerType) : '');
}

/** The schema without `optional` around it. */
function core(schema: Schema): Schema {
  const { type, innerType, in: input } = definitionOf(schema);
  if (innerType) return core(innerType);
  return type === 'pipe' && input ? core(input) : schema;
}

/** What a field may be, as a word for people. */
export function shapeOf(schema: Schema): string {
  const definition = definitionOf(core(schema));
  if (definition.type === 'object' || definition.type === 'record') return 'a map';
  if (definition.type === 'array' || definition.type === 'tuple') return 'a list';
  if (definition.type === 'union') return [...new Set(definition.options!.map(shapeOf))].join(' or ');
  return definition.type === 'number' ? 'a number' : 'text';
}

/** The schemas of a map's fields, or undefined where the keys are free or there are none. */
export function shapeFields(schema: Schema): Readonly<Record<string, Schema>> | undefined {
  return definitionOf(core(schema)).shape;
}

/** The schema of each value of a map with free keys. */
export function valueSchema(schema: Schema): Schema | undefined {
  return definitionOf(core(schema)).valueType;
}

/** The choices a literal leaves; empty for anything else. */
export function literalsOf(schema: Schema): string[] {
  return (definitionOf(core(schema)).values ?? []).map(String);
}

/** The options of a union; empty for anything else. */
export function optionsOf(schema: Schema): readonly Schema[] {
  return definitionOf(core(schema)).options ?? [];
}

/** For a union of maps with one key each: the keys, one for each option. */
export function alternativeKeys(schema: Schema): string[] | undefined {
  const keys = optionsOf(schema).map((option) => Object.keys(shapeFields(option) ?? {}));
  return keys.length > 0 && keys.every((list) => list.length === 1) ? keys.flat() : undefined;
}

/** The option of a union that `value` was most likely meant to be. */
export function optionFor(schema: Schema, value: unknown): Schema | undefined {
  const options = optionsOf(schema);
  if (isMap(value)) {
    const maps = options.filter((option) => shapeFields(option));
    const agreement = (option: Schema) => {
      const shape = shapeFields(option)!;
      const told = ['kind', 'by'].filter((key) => Object.hasOwn(shape, key));
      if (told.length > 0 && !told.every((key) => literalsOf(shape[key]).includes(String(value[key])))) return -1;
      return Object.keys(value).filter((key) => Object.hasOwn(shape, key)).length;
    };
    const best = maps.reduce<Schema | undefined>((a, b) => (a && agreement(a) >= agreement(b) ? a : b), undefined);
    return best && agreement(best) >= 0 ? best : undefined;
  }
  if (Array.isArray(value)) return options.find((option) => shapeOf(option) === 'a list');
  return options.find((option) => shapeOf(option) === 'text');
}

/** The schema of what lies under `key` in `value`, which `schema` describes. */
export function childSchema(schema: Schema, key: string | number, value: unknown): Schema | undefined {
  const inner = core(schema);
  const { type, shape, valueType, element, items } = definitionOf(inner);
  if (type === 'union') {
    const option = optionFor(inner, value);
    return option && childSchema(option, key, value);
  }
  if (shape) return Object.hasOwn(shape, key) ? shape[key] : undefined;
  return valueType ?? element ?? items?.[Number(key)];
}

export function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Calls `visit` for every number's field that `value` has or could have, with the schema's word on it. */
export function visitFields(
  schema: Schema,
  value: unknown,
  visit: (path: readonly (string | number)[], field: Field, value: unknown) => void,
  path: readonly (string | number)[] = [],
): void {
  const field = fieldOf(schema);
  if (field) {
    visit(path, field, value);
    return;
  }
  if (value === undefined) return;
  const inner = core(schema);
  const { type, shape } = definitionOf(inner);
  if (type === 'union') {
    const option = optionFor(inner, value);
    if (option) visitFields(option, value, visit, path);
    return;
  }
  const keys = shape
    ? Object.keys(shape)
    : Array.isArray(value)
      ? value.keys()
      : isMap(value)
        ? Object.keys(value)
        : [];
  for (const key of keys) {
    const child = childSchema(inner, key, value);
    if (child) visitFields(child, (value as Record<string, unknown>)[key], visit, [...path, key]);
  }
}
