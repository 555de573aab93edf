import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommand } from './command.ts';
import { runProcedure } from './procedure.ts';
import { runUndo } from './undo.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'procedure-'));
  cpSync('test/boards/small.yaml', join(folder, 'study.yaml'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const at = (time: string) => new Date(time);
const now = at('2026-03-05T14:10:07.900Z');
const run = (options: object = {}) => runProcedure(folder, { step: 'stacked', now, ...options });
const record = () => readFileSync(join(folder, 'procedures', 'stacked.yaml'), 'utf8');
const edit = (from: string, to: string) => {
  const path = join(folder, 'study.yaml');
  const text = readFileSync(path, 'utf8');
  expect(text).toContain(from);
  writeFileSync(path, text.replace(from, to));
};

interface Json {
  items: { id: string; number: number; state: string; at?: string }[];
  noLonger: { id: string }[];
}

describe('ticks', () => {
  test('are stored with the time in UTC, by number or by name, and shown', async () => {
    const { text, json } = await run({ tick: ['1', 'unplug'] });
    expect(record()).toContain('at: 2026-03-05T14:10:07Z');
    expect(text).toMatch(/^\[x\] {2}1 {2}Ask the gate/m);
    expect(text).toContain('2 of 17 items done');
    const done = (json as Json).items.filter(({ state }) => state === 'done');
    expect(done).toMatchObject([
      { id: 'ask-the-gate', at: '2026-03-05T14:10:07Z' },
      { id: 'unplug', at: '2026-03-05T14:10:07Z' },
    ]);
  });

  test('add up over days, and can be taken back', async () => {
    await run({ tick: ['back-up'] });
    await run({ tick: ['battery'], now: at('2026-03-06T08:00:00Z') });
    await run({ untick: ['back-up'], now: at('2026-03-06T08:01:00Z') });
    expect(record()).toContain('battery:\n    at: 2026-03-06T08:00:00Z');
    expect(record()).not.toContain('back-up');
  });

  test('without one, nothing is written', async () => {
    await run();
    expect(existsSync(join(folder, 'procedures'))).toBe(false);
  });

  test('of an unknown item are refused before anything is written', async () => {
    await expect(run({ tick: ['1', 'unplugg'] })).rejects.toThrow('no item "unplugg"');
    await expect(run({ tick: ['18'] })).rejects.toThrow('no item "18"');
    await expect(run({ untick: ['0'] })).rejects.toThrow('no item "0"');
    expect(existsSync(join(folder, 'procedures'))).toBe(false);
  });

  test('no longer hold for what a change of the study has changed, and that is said', async () => {
    await run({ tick: ['unplug', 'change-1', 'measure-core-sense'] });
    edit('resistance: 22 mohm ± 1 %', 'resistance: 18 mohm ± 1 %');
    const { text, json } = await run();
    expect(text).toMatch(
      /has changed since it was ticked: 7 change-1, 10 measure-core-sense\. What was ticked there counts as not done/,
    );
    expect(text).toMatch(/^\[\?\] {2}7 {2}Solder a resistor of 18 mΩ/m);
    expect(text).toContain('when it said: Solder a resistor of 22 mΩ');
    const state = (id: string) => (json as Json).items.find((item) => item.id === id)!.state;
    expect(['unplug', 'change-1', 'measure-core-sense', 'back-up'].map(state)).toEqual([
      'done',
      'changed',
      'changed',
      'open',
    ]);
    // Done again, it holds again.
    const again = await run({ tick: ['change-1', 'measure-core-sense'] });
    expect(again.text).not.toContain('has changed since');
  });

  test('of an item that is gone are told, and kept', async () => {
    await run({ tick: ['change-1', 'measure-core-sense'] });
    edit(
      `      - at: parts.core-sense.fitted.1
        becomes:
          resistance: 22 mohm ± 1 %
          rated-power: 0.5 W
          source: invented`,
      '      - { at: limiters.package-limit.allowed, becomes: 32 W }',
    );
    const { text, json } = await run({ tick: ['back-up'] });
    expect(text).toMatch(/Ticked 2026-03-05T14:10:07Z and no longer in the procedure: measure-core-sense: Measure/);
    expect((json as Json).noLonger.map(({ id }) => id)).toEqual(['measure-core-sense']);
    expect(record()).toContain('measure-core-sense');
  });

  test.each([
    ['text that is no record', 'hello', 'something is wrong at the top'],
    ['a record of another step', 'step: other\nticks: {}\n', 'it belongs to step "other"'],
    ['a time that is none', 'step: stacked\nticks: { unplug: { at: today, said: x } }\n', 'ticks.unplug.at'],
    ['broken YAML', 'step: [', 'bracket'],
  ])('%s is refused and left alone', async (_, text, said) => {
    mkdirSync(join(folder, 'procedures'));
    writeFileSync(join(folder, 'procedures', 'stacked.yaml'), text);
    await expect(run({ tick: ['1'] })).rejects.toThrow(said);
    expect(record()).toBe(text);
  });
});

describe('printed', () => {
  test('as one page that loads and runs nothing', async () => {
    await run({ tick: ['unplug'], print: join(folder, 'list.html') });
    const page = readFileSync(join(folder, 'list.html'), 'utf8');
    expect(page).not.toMatch(/<script|src=|href=|url\(|@import/);
    expect(page.match(/class="box"/g)).toHaveLength(17);
    expect(page.match(/✓/g)).toHaveLength(1);
    expect(page).toContain('done 2026-03-05T14:10:07Z');
  });

  test('as Markdown with boxes', async () => {
    await run({ tick: ['unplug'], print: join(folder, 'list.md') });
    const page = readFileSync(join(folder, 'list.md'), 'utf8');
    expect(page.match(/^- \[ \] /gm)).toHaveLength(16);
    expect(page.match(/^- \[x\] \*\*4\.\*\* Shut the machine down/gm)).toHaveLength(1);
  });

  test('words of the study stay words', async () => {
    edit('title: Small board, invented', 'title: "<img src=x onerror=alert(1)> [a](b) & \\"c\\""');
    await run({ print: join(folder, 'list.html') });
    expect(readFileSync(join(folder, 'list.html'), 'utf8')).not.toContain('<img');
    await run({ print: join(folder, 'list.md') });
    expect(readFileSync(join(folder, 'list.md'), 'utf8')).toContain('\\<img src=x onerror=alert(1)\\> \\[a\\](b)');
  });

  test('over an older print, never over anything else', async () => {
    const path = join(folder, 'list.html');
    await run({ print: path });
    await run({ tick: ['unplug'], print: path });
    expect(readFileSync(path, 'utf8')).toContain('✓');
    writeFileSync(path, '<p>my own notes</p>');
    await expect(run({ print: path })).rejects.toThrow('not a printed procedure');
    expect(readFileSync(path, 'utf8')).toBe('<p>my own notes</p>');
    await expect(run({ print: join(folder, 'list.pdf') })).rejects.toThrow('neither HTML nor Markdown');
  });
});

test('a picture that is named and not there is told', async () => {
  edit(
    '      - at: parts.core-sense.fitted.1\n',
    '      - at: parts.core-sense.fitted.1\n        photo: photos/r2.jpg\n        where: beside the jack\n',
  );
  const { text, notes } = await run();
  expect(notes).toEqual(['change-1: there is no picture "photos/r2.jpg" in the study\'s folder']);
  expect(text).toMatch(/Where: beside the jack\.\n +Picture: photos\/r2\.jpg\./);
  mkdirSync(join(folder, 'photos'));
  writeFileSync(join(folder, 'photos', 'r2.jpg'), '');
  expect((await run()).notes).toEqual([]);
});

test('a small load and the last digit shown can be given; nonsense is refused', async () => {
  const { text } = await run({ lowLoad: '6 W', resolution: '1 W' });
  expect(text).toContain('At 6 W true');
  await expect(run({ lowLoad: '6 V' })).rejects.toThrow('no power for a small load');
  await expect(run({ resolution: '-1 W' })).rejects.toThrow('no last digit of a reading');
});

describe('on the command line', () => {
  async function command(...argv: string[]) {
    let out = '';
    let err = '';
    const streams = { out: (text: string) => (out += text), err: (text: string) => (err += text), debug: false };
    const exit = await runCommand(argv, streams as never);
    return { exit, out, err };
  }

  test.each([
    ['a step is asked for', ['procedure', '.'], /required option '--step/],
    ['an unknown step names the nearest', ['procedure', '--step', 'stackd'], /no step "stackd"[\s\S]*stacked/],
    ['the first step has nothing to do', ['procedure', '--step', 'as-delivered'], /first step[\s\S]*nothing to do/],
    [
      'an unknown item names the nearest',
      ['procedure', '--step', 'stacked', '--tick', 'unplgu'],
      /did you mean "unplug"/,
    ],
    ['the first step has no way back', ['undo', '--step', 'as-delivered'], /no way back/],
    [
      'the way back leads down',
      ['undo', '--step', 'stacked', '--to', 'stacked'],
      /doesn't come before[\s\S]*as-delivered/,
    ],
  ])('%s', async (_, [verb, ...rest], said) => {
    const { exit, out, err } = await command(verb, ...(rest[0] === '.' ? [folder] : [folder, ...rest]));
    expect([exit, out]).toEqual([2, '']);
    expect(err).toMatch(said);
  });

  test('several ticks in one go, and one JSON document', async () => {
    const { exit, out } = await command('procedure', folder, '--step', 'stacked', '--tick', '1', 'unplug', '--json');
    expect(exit).toBe(0);
    const { result } = JSON.parse(out) as { result: Json };
    expect(result.items.filter(({ state }) => state === 'done').map(({ id }) => id)).toEqual([
      'ask-the-gate',
      'unplug',
    ]);
    expect(out).not.toMatch(/NaN|undefined/);
  });

  test.each(['procedure', 'undo'])('%s --help shows examples', async (verb) => {
    const { out } = await command(verb, '--help');
    expect(out.split(`  $ uprate ${verb}`).length).toBeGreaterThan(3);
  });
});

test('the way back in words: what, then what to measure, then what the firmware reads', async () => {
  const { text, json } = await runUndo(folder, { step: 'stacked' });
  expect(text).toMatch(/back from stacked to as-delivered, 1 change to take back/);
  expect(text).toMatch(
    /! Capacitors[\s\S]* 1 {2}Take off the resistor of 22 mΩ ± 1 %[\s\S]*Then measure[\s\S]*What the firmware reads/,
  );
  // 5.00125 mΩ and its joint of 0.1 mΩ; 5.10125/5.
  expect(text).toMatch(/expected 5\.10\d mΩ ± /);
  expect((json as { readings: { ratio: { value: number } }[] }).readings[0].ratio.value).toBeCloseTo(1.02025, 4);
});
