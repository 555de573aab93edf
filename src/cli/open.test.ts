import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { runOpen } from './open.ts';

let folder: string;
let errors: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'opened-'));
  errors = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    errors += text;
    return true;
  });
});

afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

test('a study with faults is served as well: its faults are printed, its address opens, and Ctrl-C ends it', async () => {
  const study = join(folder, 'study.yaml');
  writeFileSync(study, 'uprate: 1\ntitle: 7\n');
  const { text, json, exit, notes } = await runOpen(folder, { host: '127.0.0.1', port: 0, browser: false });
  expect(errors).toContain(`${study}:2:`);
  const address = /^Ladder of ".*": (http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43})$/.exec(text)![1]!;
  expect(json).toEqual({ title: study, url: address });
  expect({ exit, notes }).toEqual({ exit: 0, notes: ['Ctrl-C ends it'] });
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);

  process.emit('SIGINT');
  await expect(fetch(address)).rejects.toThrow();
});

test('nothing but the outcome is printed: with --json that is one document', async () => {
  writeFileSync(join(folder, 'study.yaml'), 'uprate: 1\ntitle: 7\n');
  const out = vi.spyOn(process.stdout, 'write');
  await runOpen(folder, { host: '127.0.0.1', port: 0, browser: false });
  expect(out).not.toHaveBeenCalled();
  process.emit('SIGINT');
});
