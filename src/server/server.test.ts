import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from './server.ts';

let root: string;
let study: string;
let server: RunningServer;

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'served-'));
  mkdirSync(join(root, 'web', 'assets'), { recursive: true });
  mkdirSync(join(root, 'board'));
  writeFileSync(join(root, 'web', 'index.html'), '<!doctype html><title>Ladder</title>');
  writeFileSync(join(root, 'web', 'assets', 'page.js'), 'export {};');
  writeFileSync(join(root, 'web', 'notes.txt'), 'not for the page');
  writeFileSync(join(root, 'secret.txt'), 'outside');
  study = join(root, 'board', 'study.yaml');
  writeFileSync(study, 'title: One <b>\n');
  server = await startServer({ path: study, file: 'board/study.yaml', webRoot: join(root, 'web') });
});

afterEach(async () => {
  await server.close();
  rmSync(root, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

/** A request as written, without the tidying of paths and headers that `fetch` does. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  const { hostname, port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const asked = request({ hostname, port, path, method, headers }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (part) => {
        body += part;
      });
      answer.on('end', () => resolve({ status: answer.statusCode!, headers: answer.headers, body }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

const token = () => new URL(server.url).searchParams.get('token')!;
const cookie = () => `uprate-${new URL(server.url).port}=${token()}`;

describe('the token', () => {
  test('in the address becomes a cookie no script and no other site can use, and leaves the address', async () => {
    const answer = await ask(`/?token=${token()}`);
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    const [set] = answer.headers['set-cookie'] as string[];
    expect(set).toContain(cookie());
    expect(set).toMatch(/HttpOnly/i);
    expect(set).toMatch(/SameSite=Strict/i);
  });

  test.each(['/', '/api/study', '/api/events', '/assets/page.js', '/?token=guessed'])(
    'is wanted for %s',
    async (path) => {
      const answer = await ask(path);
      expect(answer.status).toBe(401);
      expect(answer.headers['set-cookie']).toBeUndefined();
    },
  );

  test('of another session is refused', async () => {
    const { status } = await ask('/', { cookie: cookie().replace(/.$/, (last) => (last === 'A' ? 'B' : 'A')) });
    expect(status).toBe(401);
  });

  test('is new with every start', async () => {
    const other = await startServer({ path: study, file: 'study.yaml', webRoot: join(root, 'web') });
    expect(new URL(other.url).searchParams.get('token')).not.toBe(token());
    await other.close();
  });
});

describe('a request', () => {
  test.each(['board.example', '127.0.0.1', '127.0.0.1:1', 'localhost.board.example'])(
    'for the host "%s" is refused even with the token',
    async (host) => {
      const answer = await ask('/api/study', { host, cookie: cookie() });
      expect(answer.status).toBe(403);
      expect(JSON.parse(answer.body).error.code).toBe('server/wrong-host');
    },
  );

  test.each(['http://board.example', 'null', 'https://127.0.0.1'])('from a page of %s is refused', async (origin) => {
    const answer = await ask('/api/study', { origin, cookie: cookie() });
    expect(answer.status).toBe(403);
    expect(JSON.parse(answer.body).error.code).toBe('server/wrong-origin');
  });

  test('from its own page is answered', async () => {
    const { port } = new URL(server.url);
    const answer = await ask('/api/study', {
      host: `localhost:${port}`,
      origin: `http://localhost:${port}`,
      cookie: cookie(),
    });
    expect(answer.status).toBe(200);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('to %s is refused', async (method) => {
    expect((await ask('/api/study', { cookie: cookie() }, method)).status).toBe(405);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '//secret.txt',
    '/notes.txt',
  ])('for %s finds nothing', async (path) => {
    const answer = await ask(path, { cookie: cookie() });
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('outside');
  });
});

test('every answer carries the policy, refusals too', async () => {
  for (const answer of [
    await ask('/', { cookie: cookie() }),
    await ask('/'),
    await ask('/none', { cookie: cookie() }),
  ]) {
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['referrer-policy']).toBe('no-referrer');
  }
});

test('the study comes as its own text with a version that follows its content', async () => {
  const first = JSON.parse((await ask('/api/study', { cookie: cookie() })).body);
  expect(first).toMatchObject({ file: 'board/study.yaml', text: 'title: One <b>\n' });
  writeFileSync(study, 'title: Two\n');
  const second = JSON.parse((await ask('/api/study', { cookie: cookie() })).body);
  expect(second.version).not.toBe(first.version);
});

test('a study that is gone is said so, with what to do', async () => {
  rmSync(study);
  const answer = await ask('/api/study', { cookie: cookie() });
  expect(answer.status).toBe(404);
  expect(JSON.parse(answer.body).error).toMatchObject({
    code: 'server/study-gone',
    remedy: expect.stringContaining('put the file back'),
  });
});

/** Reads events until one is called `name`. */
async function nextEvent(reader: ReadableStreamDefaultReader<string>, name: string): Promise<string> {
  let text = '';
  for (;;) {
    const { value, done } = await reader.read();
    if (done) throw new Error(`the stream ended after: ${text}`);
    text += value;
    const found = new RegExp(`event: ${name}\\ndata: (.*)\\n`).exec(text);
    if (found) return found[1]!;
  }
}

test('a change is told once its content differs, however it was written', async () => {
  const events = await fetch(new URL('/api/events', server.url), { headers: { cookie: cookie() } });
  const reader = events.body!.pipeThrough(new TextDecoderStream()).getReader();
  await nextEvent(reader, 'ready');

  writeFileSync(study, 'title: Two\n');
  const written = JSON.parse(await nextEvent(reader, 'changed'));
  expect(written.version).toMatch(/^[0-9a-f]{64}$/);

  // As editors do: a new file renamed over the old one. The same content written again before it must not be told.
  writeFileSync(study, 'title: Two\n');
  writeFileSync(join(root, 'board', 'study.yaml~'), 'title: Three\n');
  renameSync(join(root, 'board', 'study.yaml~'), study);
  const renamed = JSON.parse(await nextEvent(reader, 'changed'));
  expect(renamed.version).not.toBe(written.version);
  expect(renamed.version).toBe(JSON.parse((await ask('/api/study', { cookie: cookie() })).body).version);

  rmSync(study);
  expect(JSON.parse(await nextEvent(reader, 'changed')).version).toBeNull();
  await reader.cancel();
});

test('a page that was never built is refused with what to do', async () => {
  await expect(startServer({ path: study, file: 'study.yaml', webRoot: join(root, 'board') })).rejects.toThrow(
    /page’s files/,
  );
});
