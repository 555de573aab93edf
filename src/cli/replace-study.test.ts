import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { replaceStudy } from './replace-study.ts';

let folder: string;
let path: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'replaced-'));
  path = join(folder, 'study.yaml');
  writeFileSync(path, '\ufefftitle: ä\r\n', { mode: 0o640 });
});
afterEach(() => rmSync(folder, { recursive: true }));

test('the file has the new text and its old rights, and nothing else is left', async () => {
  await replaceStudy(path, '\ufefftitle: ä\r\n', '\ufefftitle: ö\r\n');
  expect(readFileSync(path, 'utf8')).toBe('\ufefftitle: ö\r\n');
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder)).toEqual(['study.yaml']);
});

test('a file that has been changed meanwhile is left as it is', async () => {
  writeFileSync(path, 'title: mine\n');
  await expect(replaceStudy(path, '\ufefftitle: ä\r\n', 'title: fit\n')).rejects.toThrow('changed since it was read');
  expect(readFileSync(path, 'utf8')).toBe('title: mine\n');
  expect(readdirSync(folder)).toEqual(['study.yaml']);
});

test('a link stays a link', async () => {
  const link = join(folder, 'link.yaml');
  symlinkSync(path, link);
  await replaceStudy(link, '\ufefftitle: ä\r\n', 'title: new\n');
  expect(readFileSync(path, 'utf8')).toBe('title: new\n');
  expect(readdirSync(folder).sort()).toEqual(['link.yaml', 'study.yaml']);
});
