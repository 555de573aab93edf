import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from './server.ts';

let root: string;
let study: string;
let server: RunningServer;

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'edited-'));
  mkdirSync(join(root, 'web'));
  writeFileSync(join(root, 'web', 'index.html'), '<!doctype html>');
  study = join(root, 'study.yaml');
  copyFileSync('test/boards/small.yaml', study);
  server = await startServer({ path: study, file: 'study.yaml', webRoot: join(root, 'web') });
});

afterEach(async () => {
  await server.close();
  rmSync(root, { recursive: true });
});

/** Asks as the page does: with its cookie and its origin. */
async function ask(path: string, body?: unknown, headers: Record<string, string> = {}) {
  const url = new URL(server.url);
  const cookie = `uprate-${url.port}=${url.searchParams.get('token')}`;
  const method = body === undefined ? 'GET' : 'POST';
  const answer = await fetch(`${url.origin}${path}`, {
    method,
    headers: { cookie, origin: url.origin, 'content-type': 'application/json', ...headers },
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  return { status: answer.status, body: await answer.json() };
}

const seen = async () => (await ask('/api/study')).body as { text: string; version: string };
const edit = { path: 'heat.ambient', value: '31 degC ± 1 K', source: 'measured' };

describe('an edit from the page', () => {
  test('changes the field in place, keeps the rest, and is taken back by undo', async () => {
    const { text, version } = await seen();
    const edited = await ask('/api/edits', { version, edits: [edit] });
    expect(edited.status).toBe(200);
    const after = readFileSync(study, 'utf8');
    expect(after).toContain('31 degC ± 1 K');
    expect(after.split('\n')).toHaveLength(text.split('\n').length);
    const undone = await ask('/api/undo', { version: edited.body.version });
    expect(undone.body).toEqual({ version, undoable: 0 });
    expect(readFileSync(study, 'utf8')).toBe(text);
    expect(readdirSync(root).sort()).toEqual(['study.yaml', 'web']);
  });

  test('decided on a text that has changed meanwhile writes nothing', async () => {
    const { text, version } = await seen();
    writeFileSync(study, `${text}# by hand\n`);
    const answer = await ask('/api/edits', { version, edits: [edit] });
    expect(answer.status).toBe(409);
    expect(answer.body.error.code).toBe('server/changed-meanwhile');
    expect(readFileSync(study, 'utf8')).toBe(`${text}# by hand\n`);
  });

  test('is not taken back over a change by hand', async () => {
    const { version } = await seen();
    await ask('/api/edits', { version, edits: [edit] });
    const byHand = `${readFileSync(study, 'utf8')}# by hand\n`;
    writeFileSync(study, byHand);
    const answer = await ask('/api/undo', { version: (await seen()).version });
    expect(answer.body.error.code).toBe('server/nothing-to-undo');
    expect(readFileSync(study, 'utf8')).toBe(byHand);
  });

  test.each([
    ['a value of another dimension', { ...edit, value: '5 mohm' }, 422, 'quantity/wrong-dimension'],
    ['a field that isn’t there', { ...edit, path: 'parts.nobody.voltage' }, 422, 'study/no-such-field'],
  ])('%s is refused and writes nothing', async (_, wrong, status, code) => {
    const { text, version } = await seen();
    const answer = await ask('/api/edits', { version, edits: [wrong] });
    expect([answer.status, answer.body.error.code]).toEqual([status, code]);
    expect(readFileSync(study, 'utf8')).toBe(text);
  });

  test.each([[{}], [{ version: 'x', edits: [] }], [{ version: 'x', edits: [{ path: 1 }] }], ['words']])(
    'a request without a change (%j) is refused',
    async (body) => {
      expect((await ask('/api/edits', body)).status).toBe(400);
    },
  );

  test('without the page’s origin is refused: another site’s form sends none that fits', async () => {
    const { version } = await seen();
    const answer = await ask('/api/edits', { version, edits: [edit] }, { origin: 'http://elsewhere.example' });
    expect(answer.status).toBe(403);
  });
});
