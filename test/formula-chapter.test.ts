import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogue } from '../src/physics/catalogue.ts';
import { writeFormulaChapter } from './formula-chapter.ts';

const page = new URL('../docs/formulas.md', import.meta.url);

test('docs/formulas.md shows the catalogue as it is (UPDATE=1 writes it anew)', () => {
  const text = writeFormulaChapter(catalogue);
  if (process.env.UPDATE === '1') writeFileSync(page, text);
  expect(readFileSync(page, 'utf8')).toBe(text);
});
