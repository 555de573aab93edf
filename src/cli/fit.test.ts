import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { runFit } from './fit.ts';

let folder: string;
let path: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fitted-'));
  path = join(folder, 'study.yaml');
  cpSync('examples/accelerator', folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

test('what is written has the digits its uncertainty deserves, and a second fit writes the same again', async () => {
  await runFit(folder, { write: true });
  const once = readFileSync(path, 'utf8');
  const learnt = once.split('\n').filter((line) => line.includes('source: fit of run step'));
  expect(learnt).toHaveLength(3);
  for (const line of learnt)
    expect(line).toMatch(/value: [\d.]{4,7} \S+ (± 0\.\d+ K \(k=1\)|\(sigma=0\.\d{2,3}\)), before: /);
  await runFit(folder, { write: true });
  expect(readFileSync(path, 'utf8')).toBe(once);
});

test('every residual has its unit', async () => {
  const { text, json } = await runFit(folder, {});
  expect(text).toMatch(/step load-1: die +-?\d\.\d{3} K +-?\d/);
  for (const { unit } of (json as { residuals: { unit: string }[] }).residuals) expect(unit).toBe('K');
});

test('a run that learning names and the study lacks is told by its field', async () => {
  writeFileSync(path, readFileSync(path, 'utf8').replace('from: [step]', 'from: [stepp]'));
  await expect(runFit(folder, {})).rejects.toThrow('learning.from names "stepp"');
});
