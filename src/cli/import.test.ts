import { cpSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { Refusal } from '../fault/fault.ts';
import { runImport } from './import.ts';

const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));
afterAll(() => rmSync(scratch, { recursive: true }));

let study: string;
let log: string;
beforeEach(() => {
  study = mkdtempSync(join(scratch, 'study-'));
  cpSync('examples/accelerator/study.yaml', join(study, 'study.yaml'));
  log = join(study, 'bench log.csv');
  writeFileSync(log, 'time_s;draw;die_C\n0,0;5,25;40\n0,5;6,5;41\n');
});

const faultsOf = async (work: Promise<unknown>) => {
  const error = await work.catch((caught) => caught);
  expect(error).toBeInstanceOf(Refusal);
  return (error as Refusal).faults;
};

test('what was found is shown, and what was stored', async () => {
  const { text, json, exit } = await runImport(study, [log], { unit: ['draw=W'] });
  expect(text).toBe(`${log}
  separated by semicolon, with decimal commas; give --delimiter, --time, --unit or --text to take it otherwise
  column  taken as               unit  kind
  time_s  time, elapsed seconds  s     time
  draw    number                 W     power
  die_C   number                 degC  temperature
stored as run "bench-log": 2 rows over 0.5 s
`);
  expect(json).toMatchObject({ runs: [{ id: 'bench-log', rows: 2 }] });
  expect(exit).toBe(0);
  expect(readdirSync(join(study, 'runs'))).toEqual(['bench-log']);
});

test('--dry stores nothing', async () => {
  const { text } = await runImport(study, [log], { dry: true });
  expect(text).toContain('nothing stored (--dry)');
  expect(existsSync(join(study, 'runs'))).toBe(false);
});

test('progress is told on the way', async () => {
  const told: string[] = [];
  await runImport(study, [log], { progress: (text) => told.push(text) });
  expect(told).toEqual(['reading bench log.csv: 0 MB', 'storing bench log.csv']);
});

test('one name for two logs is refused before either is read', async () => {
  const [fault] = await faultsOf(runImport(study, [log, 'nowhere.csv'], { id: 'x' }));
  expect(fault).toMatchObject({ code: 'run/one-id', data: { id: 'x', files: 2 } });
});

test.each([
  ['W', 'run/bad-unit-assignment'],
  ['draw=horse', 'run/bad-unit'],
  ['power=W', 'run/no-such-column'],
])('--unit %s is refused', async (unit, code) => {
  expect((await faultsOf(runImport(study, [log], { unit: [unit] })))[0].code).toBe(code);
  expect(existsSync(join(study, 'runs'))).toBe(false);
});

test('a folder that is no study is refused', async () => {
  expect((await faultsOf(runImport(join(study, 'nowhere'), [log], {})))[0].code).toBe('command/no-file');
});
