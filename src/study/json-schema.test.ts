import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { jsonSchema } from './json-schema.ts';

const file = 'docs/study.schema.json';

test('the JSON Schema in docs is the schema that reads studies; UPDATE=1 writes it', () => {
  const text = `${JSON.stringify(jsonSchema(), null, 1)}\n`;
  if (process.env.UPDATE === '1') writeFileSync(file, text);
  expect(readFileSync(file, 'utf8')).toBe(text);
});
