import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Refusal } from '../fault/fault.ts';
import { recordings } from '../runs/recordings.test-data.ts';
import { runImport } from './import.ts';
import { runShow } from './show.ts';

const study = mkdtempSync(join(tmpdir(), 'uprate-'));
beforeAll(async () => {
  cpSync('examples/accelerator/study.yaml', join(study, 'study.yaml'));
  await runImport(study, [recordings.step], { id: 'step' });
});
afterAll(() => rmSync(study, { recursive: true }));

test('a run: its channels, its energy beside the counter, its windows', async () => {
  const { text, json, exit } = await runShow(study, 'step');
  expect(exit).toBe(0);
  // By numpy: 122171.74 J; the counter's difference is 122170.13 J.
  expect(text).toMatch(
    /power_instant_W: 122\.1\d+ kJ ± 0\.\d+ kJ; energy_J counts 122\.1\d+ kJ ± 0\.\d+ kJ; difference 0\.00\d* %/,
  );
  expect(text).toMatch(/load-1: load, 697 W, from 37\.\d s to 181\.\d s/);
  expect(text).toMatch(/die_temp_C +69\.02 °C ± 0\.29 K +500 \(\d+\) +settled +within 0\.\d+ K of its end value/);
  expect(text).not.toMatch(/NaN|undefined|null|\[object/);
  const { windows, energy } = json as {
    windows: { id: string; values: { channel: string; unit: string }[] }[];
    energy: [];
  };
  expect(windows.map(({ id }) => id)).toEqual(['idle-1', 'idle-2', 'load-1', 'idle-3']);
  expect(windows[2].values.find(({ channel }) => channel === 'die_temp_C')).toMatchObject({ unit: 'K', settled: true });
  expect(energy).toHaveLength(2);
  expect(JSON.stringify(json)).not.toContain('NaN');
});

test('tables stay aligned and no line ends in a space', async () => {
  const { text } = await runShow(study, 'step');
  expect(text).not.toMatch(/ $/m);
  const channels = text
    .split('\n')
    .filter((line) => /^ {2}\w+_(W|C|MHz) +\S+ +(power|temperature|frequency) /.test(line));
  expect(new Set(channels.map((line) => line.length)).size).toBe(1);
});

test('without a name, the list of runs', async () => {
  const { text } = await runShow(study, undefined);
  expect(text).toMatch(/^run +start \(UTC\)/);
  expect(text).toMatch(/^step +2026-11-25T04:42:08\.146Z +295\.0 s +14750 +10 +accelerator-step/m);
});

test('a run that isn’t there is named, with the nearest one', async () => {
  const refused = await runShow(study, 'stop').catch((error) => error);
  expect(refused).toBeInstanceOf(Refusal);
  expect(refused.faults[0]).toMatchObject({
    code: 'run/no-such-run',
    data: { id: 'stop', known: ['step'], near: 'step' },
  });
});

test('a run without power has channels and says why it has no windows', async () => {
  const log = join(study, 'cold.csv');
  writeFileSync(log, 'time_s,die_C,note\n0,40,a\n1,41,b\n');
  await runImport(study, [log], {});
  const { text } = await runShow(study, 'cold');
  expect(text).toContain('energy: no channel of power');
  expect(text).toContain('no channel of power: no windows can be told apart');
});

test('a run of one row has power, and too little of it', async () => {
  const log = join(study, 'one.csv');
  writeFileSync(log, 'time_s,power_W\n0,5\n');
  expect((await runImport(study, [log], {})).text).toContain('stored as run "one": 1 row over 0.0 s');
  const { text } = await runShow(study, 'one');
  expect(text).toContain('energy: too few readings of power');
  expect(text).not.toContain('no channel of power');
});
