import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { runCommand } from './command.ts';

let folder = '';
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'uprate-record-')), 'study');
  cpSync('examples/mini-pc', folder, { recursive: true });
});
afterEach(() => rmSync(join(folder, '..'), { recursive: true }));

async function command(...argv: string[]) {
  let [out, err] = ['', ''];
  const exit = await runCommand(argv, { out: (text) => (out += text), err: (text) => (err += text), debug: false });
  return { out, err, exit };
}

const short = ['--hold', '60 s'];

test('a rehearsal becomes a run that says what it is, and the same seed plays the same', async () => {
  const first = await command('record', folder, '--source', 'rehearsal', '--seed', '5', '--id', 'one', ...short);
  expect(first).toMatchObject({ exit: 0, err: '' });
  expect(first.out).toContain('stored as run "one": 180 rows, 5 channels');
  await command('record', folder, '--source', 'rehearsal', '--seed', '5', '--id', 'two', ...short);
  const original = (id: string) => readFileSync(join(folder, 'runs', id, 'rehearsal-as-delivered.csv'), 'utf8');
  expect(original('two')).toBe(original('one'));
  expect(original('one').split('\n')[0]).toBe(
    'time_s,machine_power_W,processor_power_W,die_temp_C,stages_temp_C,case_temp_C',
  );
  const shown = await command('show', folder, 'one');
  expect(shown.out).toContain('nothing in it was measured');
});

test('another step of the same board takes more power', async () => {
  const power = async (step: string) => {
    await command('record', folder, '--source', 'rehearsal', '--step', step, '--load', '100 %', '--id', step, ...short);
    const { out } = await command('show', folder, step, '--json');
    const channels = JSON.parse(out).result.run.channels as { name: string; greatest: number }[];
    return channels.find(({ name }) => name === 'processor_power_W')!.greatest;
  };
  const [before, after] = [await power('as-delivered'), await power('stacked-12')];
  expect(after / before).toBeGreaterThan(1.3);
  expect(after / before).toBeLessThan(1.55);
});

test.each([
  [['--source', 'wire'], 2, 'there is no source "wire"'],
  [['--source', 'rehearsal', '--step', 'stacked-21'], 2, 'did you mean "stacked-22"?'],
  [['--source', 'rehearsal', '--hold', '1 s'], 2, '10 s to 24 h'],
  [['--source', 'rehearsal', '--hold', '5 W'], 2, '5 W'],
  [['--source', 'rehearsal', '--load', '10 %, 150 %'], 2, '"150 %" is no share'],
  [['--source', 'rehearsal', '--id', 'No Name'], 2, 'No Name'],
])('refuses %j and stores nothing', async (given, exit, said) => {
  const answer = await command('record', folder, ...given);
  expect(answer.exit).toBe(exit);
  expect(answer.out).toBe('');
  expect(answer.err).toContain(said);
  expect(existsSync(join(folder, 'runs'))).toBe(false);
});
