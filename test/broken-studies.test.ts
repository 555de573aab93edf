import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runCheck } from '../src/cli/check.ts';

const folder = 'test/broken-studies';
const studies = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));

afterAll(() => rmSync(scratch, { recursive: true }));

/** Each broken study has its message beside it, written down after reading it as somebody who wants to mend the file. */
test.each(studies)('%s is refused with the words that stand beside it', async (file) => {
  const { text, exit, json } = await runCheck(`${folder}/${file}`);
  expect(`${text}\n`).toBe(readFileSync(`${folder}/${file.replace('.yaml', '.txt')}`, 'utf8'));
  expect(exit).toBe(1);
  for (const said of [text, JSON.stringify(json)]) expect(said).not.toMatch(/NaN|undefined|\[object|\n\s+at /);
});

test('each message belongs to a study', () => {
  const messages = readdirSync(folder).filter((file) => file.endsWith('.txt'));
  expect(messages.map((file) => file.replace('.txt', '.yaml'))).toEqual(studies);
});

async function refusal(path: string): Promise<string> {
  const { text, exit } = await runCheck(path);
  expect(exit).toBe(1);
  return text.replaceAll(scratch, '');
}

test('a line of 200 MB is refused by its size, unread', async () => {
  const path = join(scratch, 'log.yaml');
  writeFileSync(path, 'uprate: 1');
  truncateSync(path, 200_000_000);
  expect(await refusal(path)).toBe(`/log.yaml:1:1: this file holds 200 MB
  1 | (log.yaml)
    | ^
  expected: a study of at most 5 MB
  do: name the study file; recordings belong into runs/

/log.yaml: 1 fault`);
});

test('a long line in a small file is refused', async () => {
  const path = join(scratch, 'line.yaml');
  writeFileSync(path, `uprate: 1\nabout: ${'12.5,'.repeat(5000)}\n`);
  expect(await refusal(path)).toBe(`/line.yaml:2:1: this line is longer than 10000 characters
  2 | about: ${'12.5,'.repeat(18)}12.
    | ^
  expected: a study written by a person, a field a line
  do: name the study file; recordings belong into runs/

/line.yaml: 1 fault`);
});

test('a folder without a study, or nothing at all, is wrong usage', async () => {
  await expect(runCheck(join(scratch, 'nowhere'))).rejects.toThrow('there is no file or folder');
  mkdirSync(join(scratch, 'photos'));
  await expect(runCheck(join(scratch, 'photos'))).rejects.toThrow('holds no study.yaml');
});

test('more faults than anyone reads at once are counted', async () => {
  const path = join(scratch, 'many.yaml');
  writeFileSync(path, `uprate: 1\n${Array.from({ length: 80 }, (_, i) => `field-${i}: 1\n`).join('')}`);
  expect(await refusal(path)).toContain('and 36 more faults, not shown');
});
