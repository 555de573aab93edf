import { describe, expect, test } from 'vitest';
import { Refusal, refuse } from '../fault/fault.ts';
import { answer } from './door.ts';
import type { Outcome } from './envelope.ts';

const heading = { uprate: '1.2.3', verb: 'plan', study: 'mini-pc' };

async function answered(work: () => Promise<Outcome>, { asJson = false, debug = false } = {}) {
  let out = '';
  let err = '';
  const streams = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    debug,
  };
  const exit = await answer(heading, asJson, streams, work);
  return { exit, out, err };
}

const throws = (error: unknown) => async (): Promise<Outcome> => {
  throw error;
};

describe('with --json there is one document on stdout and nothing on stderr', () => {
  test('a result stands in an envelope that says who answered to what', async () => {
    const work = async (): Promise<Outcome> => ({
      text: 'words',
      json: { power: 54.5, unit: 'W' },
      exit: 0,
      notes: ['a note'],
    });
    const { exit, out, err } = await answered(work, { asJson: true });
    expect(exit).toBe(0);
    expect(err).toBe('');
    expect(JSON.parse(out)).toEqual({
      uprate: '1.2.3',
      verb: 'plan',
      study: 'mini-pc',
      result: { power: 54.5, unit: 'W' },
      notes: ['a note'],
    });
  });

  test('a refusal has no result, and each fault with its code, data, place and words', async () => {
    const place = { file: 'study.yaml', line: 3, column: 9, length: 1, text: '  value: 5' };
    const data = { text: '5', expectedKind: 'a resistance', example: '5 mΩ' };
    const work = throws(new Refusal(refuse('quantity/missing-unit', data, place)));
    const { exit, out, err } = await answered(work, { asJson: true });
    expect(exit).toBe(1);
    expect(err).toBe('');
    expect(JSON.parse(out)).toEqual({
      ...heading,
      result: null,
      notes: [],
      faults: [
        {
          code: 'quantity/missing-unit',
          severity: 'refusal',
          data,
          place,
          found: expect.stringContaining('"5"'),
          expected: expect.stringContaining('a resistance'),
          remedy: expect.any(String),
        },
      ],
    });
  });

  test('a typed array becomes a list', async () => {
    const { out } = await answered(async () => ({ text: '', json: Float64Array.of(1, 2.5), exit: 0 }), {
      asJson: true,
    });
    expect(JSON.parse(out).result).toEqual([1, 2.5]);
  });

  test('a number that is none never leaves as a silent null', async () => {
    const { exit, out } = await answered(async () => ({ text: '', json: { margin: Number.NaN }, exit: 0 }), {
      asJson: true,
    });
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ result: null, faults: [{ code: 'command/unexpected' }] });
  });
});

describe('without --json', () => {
  test('the text goes to stdout with one line end, notes to stderr', async () => {
    const result = await answered(async () => ({ text: 'two steps', json: null, exit: 1, notes: ['rounded'] }));
    expect(result).toEqual({ exit: 1, out: 'two steps\n', err: 'note: rounded\n' });
  });

  test('a refusal is words on stderr only', async () => {
    const { exit, out, err } = await answered(throws(new Refusal(refuse('command/no-space'))));
    expect([exit, out]).toEqual([1, '']);
    expect(err).toContain('the disk is full');
  });

  test.each([
    ['ENOENT', { path: 'nowhere/study.yaml' }, 'nowhere/study.yaml'],
    ['EACCES', { path: 'locked' }, 'permission is denied'],
    ['EADDRINUSE', { port: 8200 }, 'port 8200 is taken'],
  ])('what the system refuses (%s) is said in words a person can act on', async (code, more, said) => {
    const { exit, err } = await answered(throws(Object.assign(new Error(`${code}: raw`), { code, ...more })));
    expect(exit).toBe(1);
    expect(err).toContain(said);
    expect(err).not.toContain('raw');
  });

  test('an unexpected exception is one sentence, its stack only when asked for', async () => {
    const work = throws(new TypeError('nothing there'));
    const plain = await answered(work);
    expect(plain.exit).toBe(1);
    expect(plain.err).toContain('nothing there');
    expect(plain.err).not.toContain('door.test.ts');
    expect((await answered(work, { debug: true })).err).toContain('door.test.ts');
  });
});
