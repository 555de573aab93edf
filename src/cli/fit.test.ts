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
  expect(text).toMatch(/step load-1: die +-?\d\.\d{3} K +-?\d\.\d+ +[01]\.\d\d$/m);
  for (const { unit } of (json as { residuals: { unit: string }[] }).residuals) expect(unit).toBe('K');
});

test('a run that learning names and the study lacks is told by its field', async () => {
  writeFileSync(path, readFileSync(path, 'utf8').replace('from: [step]', 'from: [stepp]'));
  await expect(runFit(folder, {})).rejects.toThrow('learning.from names "stepp"');
});

test('chi-square is told with what the observations and the stated values give', async () => {
  const { text, json } = await runFit(folder, {});
  expect(text).toMatch(
    /^chi-square \d\.\d\d with 4 degrees of freedom \(probability 0\.\d\d\): \d\.\d\d from the observations, \d\.\d\d from the stated values$/m,
  );
  const { chiSquare, chiSquareParts, misfit } = json as FitResult;
  expect(chiSquareParts.observations + chiSquareParts.stated).toBeCloseTo(chiSquare, 12);
  expect(misfit).toBeNull();
});

test('a misfit is told with the single changes that would explain it', async () => {
  const text = readFileSync(path, 'utf8').replace('ambient: 30 degC ± 8 K', 'ambient: 10 degC ± 1 K');
  writeFileSync(path, text);
  const { text: told, json } = await runFit(folder, {});
  const [first] = (json as FitResult).misfit!.explanations;
  expect(first).toMatchObject({ kind: 'stated', id: 'heat.ambient' });
  expect(told).toContain('one change would explain the misfit best: a wrong stated value, heat.ambient');
  expect(told).toMatch(/^ {2}its stated value is wrong +heat\.ambient +\d+\.\d +0\.\d{3}$/m);
});

test('robust: each reading with what it counts, and no probability of chi-square', async () => {
  const { text } = await runFit(folder, { robust: true });
  expect(text).toMatch(/in uncertainties +leverage +counts$/m);
  expect(text).not.toContain('(probability');
});

test('a sample of the posterior: the fitted values lie in its intervals, and the same seed gives the same', async () => {
  const options = { posterior: 20_000, seed: 7 };
  const { text, json } = await runFit(folder, options);
  expect(text).toMatch(/^20000 draws from the posterior \(seed 7\), worth \d+ independent ones/m);
  const { posterior, inputs } = json as FitResult;
  // Memory power and memory resistance lie on a thin ridge: neighbouring states of the chain resemble each other.
  expect(posterior!.effective).toBeGreaterThan(20);
  expect(text.includes('too few')).toBe(posterior!.effective < 100);
  for (const { path: id, low, high } of posterior!.inputs) {
    const { after } = inputs.find((each) => each.path === id)!;
    expect(low.value).toBeLessThan(after.value);
    expect(high.value).toBeGreaterThan(after.value);
  }
  expect((await runFit(folder, options)).text).toBe(text);
});

test('a number along which the posterior bends is named with its two sides', async () => {
  // Hardly anything is known about the memory's share of the power: only its product with the resistance is measured.
  writeFileSync(path, readFileSync(path, 'utf8').replace('power: 22 W ~ 15 %', 'power: 22 W ~ 60 %'));
  const { text, json } = await runFit(folder, {});
  const memory = 'heat.links.memory-coolant.through.0.resistance';
  expect((json as FitResult).bent.map((each) => each.path)).toContain(memory);
  expect(text).toMatch(/the uncertainty of .*heat\.links\.memory-coolant.* isn't the same on both sides/);
  expect(text).toMatch(
    /^ {2}heat\.links\.memory-coolant\.through\.0\.resistance +(no end|[\d.]+ K\/W) +(no end|[\d.]+ K\/W)$/m,
  );
});

test('a run recorded at another step is told by the study; a step that is none is refused', async () => {
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, text.replace('  from: [step]', '  from: [step]\n  at: {step: as-delivered}'));
  expect((await runFit(folder, {})).text).toContain('learnt from run step');
  writeFileSync(path, text.replace('  from: [step]', '  from: [step]\n  at: {step: as-delivred}'));
  await expect(runFit(folder, {})).rejects.toThrow('as-delivred');
});

interface FitResult {
  readonly bent: readonly { readonly path: string }[];
  readonly chiSquare: number;
  readonly chiSquareParts: { readonly observations: number; readonly stated: number };
  readonly misfit: { readonly explanations: readonly { readonly kind: string; readonly id: string }[] } | null;
  readonly inputs: readonly { readonly path: string; readonly after: { readonly value: number } }[];
  readonly posterior: {
    readonly effective: number;
    readonly inputs: readonly { path: string; low: { value: number }; high: { value: number } }[];
  } | null;
}
