import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { type ImportOptions, importLog, runId } from './import.ts';
import { listRuns, readChannels, readRun } from './read-run.ts';
import { recordings } from './recordings.test-data.ts';
import type { Run } from './run.ts';

const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** Imports a log written here, and reads back what was stored. */
async function stored(text: string | Buffer, options: ImportOptions = {}, name = 'log.csv') {
  const study = mkdtempSync(join(scratch, 'study-'));
  const file = join(study, name);
  writeFileSync(file, text);
  const run = (await importLog(study, file, { id: 'run', ...options }))!;
  const { time, channels } = await readChannels(study, run);
  const values = Object.fromEntries([...channels].map(([channel, each]) => [channel, [...each]]));
  return { study, run, time: [...time], values };
}

describe('the recordings of a real board', () => {
  // Rows, length and the counter's difference: taken from the file with zcat, wc, head and tail.
  test.each([
    ['step', 14750, 294.98, 122170.133],
    ['stair', 10800, 215.98, 100593.629],
  ] as const)('%s is stored whole', async (id, rows, duration, counted) => {
    const study = mkdtempSync(join(scratch, 'study-'));
    const run = (await importLog(study, recordings[id], { id }))!;
    expect([run.rows, run.channels.length, run.notes]).toEqual([rows, 10, []]);
    expect(run.duration).toBeCloseTo(duration, 2);
    const counter = run.channels.find(({ kind }) => kind === 'energy')!;
    expect(counter.last! - counter.first!).toBeCloseTo(counted, 3);
    expect(run.channels.map(({ missing }) => missing)).toEqual(new Array(10).fill(0));
    const kept = readFileSync(join(study, 'runs', id, run.original));
    expect(kept.equals(readFileSync(recordings[id]))).toBe(true);
    expect(run.sha256).toBe(createHash('sha256').update(kept).digest('hex'));
    expect(readdirSync(join(study, 'runs', id)).sort()).toEqual([run.original, 'run.yaml', 'samples.parquet'].sort());
    expect(await readRun(study, id)).toEqual(run);
    expect(await listRuns(study)).toEqual([run]);
  });
});

describe('how a log may be written', () => {
  const expected = { time: [0, 0.5], values: { power_W: [5.25, 6.5] } };
  test.each<[string, string | Buffer, string?]>([
    ['comma', 'time_s,power_W\n0,5.25\n0.5,6.5\n'],
    ['semicolon and decimal comma', 'time_s;power_W\n0,0;5,25\n0,5;6,5\n'],
    ['tab', 'time_s\tpower_W\n0\t5.25\n0.5\t6.5\n', 'log.tsv'],
    ['bar, in a .txt', 'time_s|power_W\n0|5.25\n0.5|6.5\n', 'log.txt'],
    ['byte order mark and carriage returns', '\uFEFFtime_s,power_W\r\n0,5.25\r\n0.5,6.5\r\n'],
    ['mark before a comment', '\uFEFF# logger 1\ntime_s,power_W\n0,5.25\n0.5,6.5\n'],
    ['comments and empty lines in front', '# logger 1\n\ntime_s,power_W\n0,5.25\n\n0.5,6.5\n'],
    ['quoted fields', '"time_s","power_W"\n"0","5.25"\n"0.5","6.5"\n'],
    ['packed', gzipSync('time_s,power_W\n0,5.25\n0.5,6.5\n'), 'log.csv.gz'],
    ['no line end after the last line', 'time_s,power_W\n0,5.25\n0.5,6.5'],
    ['a name that is a pattern', 'time_s,power_W\n0,5.25\n0.5,6.5\n', "a*[1]?'b.csv"],
    ['the name of a file of the run', 'time_s,power_W\n0,5.25\n0.5,6.5\n', 'run.yaml'],
    ['time behind', 'power_W,time_s\n5.25,0\n6.5,0.5\n'],
  ])('%s', async (_, text, name) => {
    const { time, values } = await stored(text, {}, name);
    expect({ time, values }).toEqual(expected);
  });

  test.each<[string, string, string | null, number]>([
    ['time_unix_s', '1795582023.25,1795582023.75', '2026-11-25T04:47:03.250Z', 1795582023.25],
    ['timestamp', '1795582023250,1795582023750', '2026-11-25T04:47:03.250Z', 1795582023.25],
    ['time [ms]', '1500,2000', null, 1.5],
    ['time', '2026-11-25T04:47:03.25Z,2026-11-25 04:47:03.750Z', '2026-11-25T04:47:03.250Z', 1795582023.25],
    ['Date', '2026-11-25T05:47:03.25+01:00,2026-11-25T06:47:03.75+02:00', '2026-11-25T04:47:03.250Z', 1795582023.25],
    ['elapsed_s', '25,25.5', null, 25],
    ['elapsed_h', '0,0.000138888888888889', null, 0],
  ])('time as %s %s', async (heading, times, start, origin) => {
    const rows = times.split(',').map((time, i) => `${time},${i}\n`);
    const { run, time } = await stored(`${heading},power_W\n${rows.join('')}`);
    expect(run.start).toBe(start);
    expect(run.origin).toBeCloseTo(origin, 6);
    expect(time[0]).toBe(0);
    expect(time[1]).toBeCloseTo(0.5, 6);
  });

  test('times without a zone are taken as UTC, and it is said', async () => {
    const { run } = await stored('time,power_W\n2026-11-25 04:47:03,5\n2026-11-25 04:47:04,5\n');
    expect(run.start).toBe('2026-11-25T04:47:03.000Z');
    expect(run.notes).toEqual(['the times state no zone and are taken as UTC']);
  });
});

describe('channels', () => {
  test('units come from the headings; values are read in SI', async () => {
    const { run, values } = await stored(
      'time_s,power_mW,Temp [°C],V (mV),fan_pct,clock_MHz,energy_Wh,rpm\n0,5,25,900,50,1980,1,1200\n1,5,25,900,50,1980,1,1200\n',
    );
    expect(run.channels.map(({ unit, kind }) => [unit, kind])).toEqual([
      ['mW', 'power'],
      ['degC', 'temperature'],
      ['mV', 'voltage'],
      ['%', 'ratio'],
      ['MHz', 'frequency'],
      ['Wh', 'energy'],
      ['', null],
    ]);
    expect(Object.values(values).map(([value]) => value)).toEqual([0.005, 298.15, 0.9, 0.5, 1.98e9, 3600, 1200]);
  });

  test('a unit that is given goes before the heading; an empty one takes it away', async () => {
    const { run } = await stored('time_s,draw,phase_A\n0,5,1\n1,6,1\n', { units: { draw: 'W', phase_A: '' } });
    expect(run.channels.map(({ name, unit, kind }) => [name, unit, kind])).toEqual([
      ['draw', 'W', 'power'],
      ['phase_A', '', null],
    ]);
  });

  test('missing readings are counted, and are no numbers', async () => {
    const { run, values } = await stored('time_s,power_W,gone_W\n0,,NA\n1,7,-\n2,5,\n3,NaN,\n');
    const [power, gone] = run.channels;
    expect(power).toMatchObject({ count: 2, missing: 2, first: 7, last: 5, least: 5, greatest: 7 });
    expect(gone).toMatchObject({ count: 0, missing: 4, first: null, last: null, least: null, greatest: null });
    expect(run.notes).toEqual(['channel gone_W has no reading at all']);
    expect(values.power_W).toEqual([Number.NaN, 7, 5, Number.NaN]);
  });

  test('words stay words', async () => {
    const { run, values } = await stored('elapsed_s,phase,kernel\n0,0,idle\n1,1,"bf16, large"\n');
    expect(run.channels.map(({ name, type, count }) => [name, type, count])).toEqual([
      ['phase', 'number', 2],
      ['kernel', 'text', 2],
    ]);
    expect(Object.keys(values)).toEqual(['phase']);
  });

  test('a column of numbers can be taken as words', async () => {
    const { run } = await stored('time_s,code\n0,1\n1,1\n2,none\n', { text: ['code'] });
    expect(run.channels[0]).toMatchObject({ type: 'text', count: 3 });
  });
});

describe('the last line', () => {
  test('is left out when it was cut off and that is allowed', async () => {
    const { study, run, values } = await stored('time_s,power_W\n0,5\n1,6\n2', { allowCut: true });
    expect(values.power_W).toEqual([5, 6]);
    expect(run.notes).toEqual(['line 4, the last one, was cut off and is left out']);
    expect(readdirSync(join(study, 'runs/run')).sort()).toEqual(['log.csv', 'run.yaml', 'samples.parquet']);
    expect(readFileSync(join(study, 'runs/run/log.csv'), 'utf8')).toBe('time_s,power_W\n0,5\n1,6\n2');
  });

  test('is kept when nothing shows to be missing, and it is said', async () => {
    const { run } = await stored('time_s,power_W\n0,5\n1,6');
    expect(run.rows).toBe(2);
    expect(run.notes).toEqual(['line 3, the last one, has no line end: digits of its last field may be missing']);
  });
});

test('what was found is shown before anything is stored, and nothing is stored when that is declined', async () => {
  const study = mkdtempSync(join(scratch, 'study-'));
  const file = join(scratch, 'shown.csv');
  writeFileSync(file, 'time_s;power_W\n0;5\n');
  let shown: unknown;
  const run: Run | null = await importLog(study, file, {
    accept: (detection) => {
      shown = detection;
      expect(readdirSync(study)).toEqual([]);
      return false;
    },
  });
  expect(run).toBeNull();
  expect(shown).toMatchObject({ delimiter: ';', decimal: '.', time: 0, timeFormat: 'elapsed seconds' });
  expect(readdirSync(study)).toEqual([]);
});

test('a log much larger than its sample: every row arrives, in order', async () => {
  const lines = Array.from({ length: 200_000 }, (_, i) => `${i / 50},${i % 977}`);
  const { run, time, values } = await stored(gzipSync(`time_s,power_W\n${lines.join('\n')}\n`), {}, 'long.csv.gz');
  expect(run.rows).toBe(200_000);
  expect(time.every((each, i) => Math.abs(each - i / 50) < 1e-9)).toBe(true);
  expect(values.power_W.every((each, i) => each === i % 977)).toBe(true);
});

test.each([
  ['Board Step.csv.gz', 'board-step'],
  ['2026-11-25 power.log', 'power'],
  ['42.txt', 'run'],
])('"%s" becomes the run "%s"', (file, id) => {
  expect(runId(file)).toBe(id);
});

test('an interrupted import leaves nothing behind', async () => {
  const study = mkdtempSync(join(scratch, 'study-'));
  const log = join(study, 'log.csv');
  writeFileSync(log, 'time_s,power_W\n0,5\n1,6\n');
  const left = vi.spyOn(process, 'exit').mockImplementation((code) => {
    throw new Error(`left with ${code}: ${readdirSync(study)}`);
  });
  const progress = (said: string) => {
    if (!said.startsWith('storing')) return;
    expect(existsSync(join(study, 'runs'))).toBe(true);
    process.emit('SIGINT', 'SIGINT');
  };
  await expect(importLog(study, log, { progress })).rejects.toThrow('left with 130: log.csv');
  left.mockRestore();
  expect(process.listenerCount('SIGINT')).toBe(0);
});

test('what else lies in runs/ is no run, and hides none', async () => {
  const { study, run } = await stored('time_s,power_W\n0,5\n1,6\n');
  mkdirSync(join(study, 'runs', 'photos'));
  writeFileSync(join(study, 'runs', 'README'), 'notes');
  expect(await listRuns(study)).toEqual([run]);
  await expect(readRun(study, 'photos')).rejects.toThrow('no run "photos"');
});

test('a column with a unit that is read as words is told', async () => {
  const log = 't;power_W;state\n0;1.234,5;on\n1;1.234,6;on\n';
  const told = 'column power_W states a unit and yet holds no numbers that can be read: it is taken as words';
  expect((await stored(log)).run.notes).toEqual([told]);
  expect((await stored(log, { text: ['power_W'] })).run.notes).toEqual([]);
});
