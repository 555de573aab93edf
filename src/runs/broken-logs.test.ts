import {
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { afterAll, expect, test } from 'vitest';
import { Refusal, writeFault } from '../fault/fault.ts';
import { type ImportOptions, importLog } from './import.ts';
import { longestLine } from './scan.ts';

const folder = 'test/broken-logs';
const logs = readdirSync(folder).filter((file) => !/^\.|\.txt$/.test(file));
const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));

afterAll(() => rmSync(scratch, { recursive: true }));

/** The words of a refused import; nothing at all may have been written. */
async function refusal(file: string, options: ImportOptions = {}): Promise<string> {
  const study = mkdtempSync(join(scratch, 'study-'));
  const error = await importLog(study, file, options).catch((caught) => caught);
  expect(error).toBeInstanceOf(Refusal);
  expect(readdirSync(study)).toEqual([]);
  return (error as Refusal).faults.map(writeFault).join('\n\n').replaceAll(scratch, '');
}

/** Each broken log has its message beside it, written down after reading it as somebody who wants to mend the file. */
test.each(logs)('%s is refused with the words that stand beside it, and leaves nothing', async (file) => {
  const said = await refusal(`${folder}/${file}`);
  expect(`${said}\n`).toBe(readFileSync(`${folder}/${file}.txt`, 'utf8'));
  expect(said).not.toMatch(/NaN|undefined|\[object|\n\s+at /);
});

test('each message belongs to a log', () => {
  const messages = readdirSync(folder).filter((file) => file.endsWith('.txt'));
  expect(messages.map((file) => file.slice(0, -4))).toEqual(logs);
});

/** A log whose third line is 200 MB long. */
const endlessLine = () =>
  Readable.from([Buffer.from('time_s,power_W\n0,5\n'), ...new Array(200).fill(Buffer.alloc(1_000_000, '7'))]);

const tooLong = (file: string) => `${file}:3:1: this line is longer than ${longestLine} bytes
  3 | ${'7'.repeat(120)}
    | ^
  expected: a table of readings, one row a line
  do: check that this is a log, and that its line ends have survived`;

test.each(['line.csv', 'line.csv.gz'])('a line of 200 MB in %s is refused after its first megabyte', async (file) => {
  const path = join(scratch, file);
  const packing = file.endsWith('.gz') ? createGzip({ level: 1 }) : new PassThrough();
  await pipeline(endlessLine(), packing, createWriteStream(path));
  let read = 0;
  const progress = (text: string) => {
    read = Number(/(\d+) MB/.exec(text)![1]);
  };
  expect(await refusal(path, { progress })).toBe(tooLong(file));
  expect(read).toBeLessThan(2);
  rmSync(path);
});

const good = join(scratch, 'good.csv');
writeFileSync(good, 'time_s,power_W,note\n0,5,cold\n1,6,warm\n');

test('a file that isn’t there', async () => {
  expect(await refusal(join(scratch, 'nowhere.csv'))).toBe(`there is no log "/nowhere.csv"
  expected: a file that exists
  do: check the spelling, and the folder the command is given in`);
});

test('a folder in place of a log', async () => {
  mkdirSync(join(scratch, 'logs'));
  expect(await refusal(join(scratch, 'logs'))).toBe(`"logs" is a folder or a device
  expected: a log file
  do: name a file`);
});

test('a run that exists stays as it is', async () => {
  const study = mkdtempSync(join(scratch, 'study-'));
  await importLog(study, good);
  const before = readFileSync(join(study, 'runs/good/run.yaml'), 'utf8');
  const error = await importLog(study, good).catch((caught) => caught);
  expect(error.faults.map(writeFault)).toEqual([
    `the study has a run "good" already; nothing was changed
  expected: a new name
  do: give another one with --id, or remove the folder of that run`,
  ]);
  expect(readFileSync(join(study, 'runs/good/run.yaml'), 'utf8')).toBe(before);
  expect(readdirSync(join(study, 'runs'))).toEqual(['good']);
  expect(existsSync(join(study, 'runs/good/raw.parquet'))).toBe(false);
});

test.each<[string, ImportOptions, string]>([
  [
    'a name that leads out of the folder',
    { id: '../x' },
    `"../x" can't be the name of a run
  expected: lower-case letters, digits and hyphens, beginning with a letter
  do: give another one with --id`,
  ],
  [
    'a time column that isn’t there',
    { time: 'zeit' },
    `good.csv:1:1: there is no column "zeit"
  1 | time_s,power_W,note
    | ^^^^^^^^^^^^^^^^^^^
  expected: one of: time_s, power_W, note
  do: give one of these headings with --time`,
  ],
  [
    'a time column of words',
    { time: 'note' },
    `good.csv:2:5: "cold" in column "note" is no time that can be read here
  2 | 0,5,cold
    |     ^^^^
  expected: seconds since the start or since 1970, or date and time of day as in 2026-01-31T14:05:09.25Z
  do: rewrite the column so, or give the heading of another one with --time`,
  ],
  [
    'a unit that is none',
    { units: { power_W: 'horse' } },
    `"horse", given for column "power_W", is no unit of a recorded quantity
  expected: a unit such as W, V, mA, degC, s, MHz, J or %, or nothing for a column without one
  do: give another one with --unit`,
  ],
  [
    'a delimiter that is none',
    { delimiter: 'x' },
    `"x" is no delimiter that can be used
  expected: one of: , ; | or a tab
  do: give one of these with --delimiter`,
  ],
])('%s', async (_, options, said) => {
  expect(await refusal(good, options)).toBe(said);
});
