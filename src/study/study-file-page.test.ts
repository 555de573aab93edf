import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { change } from './schema/change.ts';
import { correlation, sharedNumber } from './schema/common-causes.ts';
import { gate } from './schema/gate.ts';
import { heatElement, heatPath } from './schema/heat.ts';
import { limiter } from './schema/limiters.ts';
import { part } from './schema/parts.ts';
import { plate } from './schema/plate.ts';
import {
  aboutOf,
  fieldOf,
  literalsOf,
  optionsOf,
  type Schema,
  shapeFields,
  shapeOf,
  valueSchema,
} from './schema/walk.ts';

const page = 'docs/study-file.md';
const [begin, end] = [
  '<!-- fields: made from src/study/schema by study-file-page.test.ts -->\n',
  '<!-- end of fields -->',
];

test('the tables of fields on the page are those that the schema reads; UPDATE=1 writes them', () => {
  const text = readFileSync(page, 'utf8');
  const [before, rest] = text.split(begin);
  const made = `${before}${begin}\n${fieldTables()}\n${end}${rest.split(end)[1]}`;
  if (process.env.UPDATE === '1') writeFileSync(page, made);
  expect(readFileSync(page, 'utf8')).toBe(made);
});

function fieldTables(): string {
  const heat = shapeFields(heatPath)!;
  const [power, temperature] = optionsOf(limiter);
  const onPlate = shapeFields(plate)!;
  const [factor, offset] = optionsOf(sharedNumber);
  const [replacing] = optionsOf(change);
  const sections: [string, Schema][] = [
    ...optionsOf(part).map((kind): [string, Schema] => [`Part: ${literalsOf(shapeFields(kind)!.kind)[0]}`, kind]),
    ['Limiter on power', power],
    ['Limiter on temperature', temperature],
    ['Heat node', valueSchema(heat.nodes)!],
    ['Heat link', valueSchema(heat.links)!],
    ['Stream of air', valueSchema(heat.streams)!],
    ['Screw of the plate', valueSchema(onPlate.screws)!],
    ['Pad of the plate', valueSchema(onPlate.pads)!],
    ['Die of the plate', valueSchema(onPlate.dies)!],
    ['Stop of the plate', valueSchema(onPlate.stops)!],
    ['Shared number that multiplies', factor],
    ['Shared number that adds', offset],
    ['Correlation', correlation],
    ['Rules of the gate', gate],
    ['Change of a step', replacing],
  ];
  const elements = optionsOf(heatElement).flatMap((element) => rowsOf(element, ''));
  return [
    ...sections.map(([title, schema]) => table(title, rowsOf(schema, ''), introduction(schema))),
    table('Elements of a heat link', elements, 'Each entry of `through` is one of these; several are in series'),
  ].join('\n');
}

function introduction(schema: Schema): string {
  const kind = shapeFields(schema)?.kind;
  const about = kind ? aboutOf(kind) : '';
  return about && about[0].toUpperCase() + about.slice(1);
}

function table(title: string, rows: readonly string[], about: string): string {
  return `### ${title}\n\n${about && `${about}.\n\n`}| field | what | written as |\n|---|---|---|\n${rows.join('\n')}\n`;
}

/** A row for each field, those of inner maps with their path. */
function rowsOf(schema: Schema, path: string): string[] {
  return Object.entries(shapeFields(schema) ?? {}).flatMap(([key, field]) => {
    if (['title', 'source', 'note'].includes(key)) return [];
    const name = `${path}${key}`;
    const optional = field._zod.optin === 'optional' ? '?' : '';
    const row = `| \`${name}\`${optional} | ${aboutOf(field)} | ${writtenAs(field)} |`;
    if (fieldOf(field)) return [row];
    const inner = shapeFields(field) ? [field] : optionsOf(field).filter((option) => shapeFields(option));
    const own =
      key === 'through'
        ? []
        : [field, entryOf(field)].flatMap((each) => (each && each !== field && shapeFields(each) ? [each] : []));
    const nested = [
      ...inner.map((each) => rowsOf(each, `${name}.`)),
      ...own.map((each) => rowsOf(each, `${name}.0.`)),
    ].flat();
    return aboutOf(field) === '' && nested.length > 0 ? nested : [row, ...nested];
  });
}

function entryOf(schema: Schema): Schema | undefined {
  const definition = schema._zod.def as unknown as { element?: Schema; innerType?: Schema };
  return definition.element ?? (definition.innerType && entryOf(definition.innerType));
}

function writtenAs(schema: Schema): string {
  const field = fieldOf(schema);
  if (field?.role === 'count') return 'a whole number';
  if (field)
    return `${field.kind?.replaceAll('-', ' ') ?? 'a number of any kind'}${field.role === 'rating' ? ', `open` or `none`' : ''}`;
  const choices = literalsOf(schema);
  return choices.length > 0 ? choices.map((choice) => `\`${choice}\``).join(', ') : shapeOf(schema);
}
