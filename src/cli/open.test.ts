import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { runOpen } from './open.ts';

let folder: string;
let said: { out: string; err: string };

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'opened-'));
  said = { out: '', err: '' };
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    said.out += text;
    return true;
  });
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said.err += text;
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
  const ended = runOpen(folder, { host: '127.0.0.1', port: 0, browser: false });
  await vi.waitFor(() => expect(said.err).toContain('Ctrl-C'));
  expect(said.err).toContain(`${study}:2:`);
  const address = /^Ladder of ".*": (http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43})\n$/.exec(said.out)![1]!;
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);

  process.emit('SIGINT');
  const outcome = await ended;
  expect(outcome.exit).toBe(0);
  expect(JSON.stringify(outcome)).not.toContain('token');
  await expect(fetch(address)).rejects.toThrow();
});
