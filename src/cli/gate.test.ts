import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { runCommand } from './command.ts';

// Recordings of hours are read again for every verdict.
vi.setConfig({ testTimeout: 180_000 });

// One virtual bench for all tests: a baseline, and the first step run at full load.
let folder = '';
let original = '';
let text = '';
const learning = `learning:
  from: [baseline, first-step]
  at: { first-step: stacked-22 }
  learn: [heat.links.case-ambient.through.0.film.coefficient]
  power-channel: processor-power
  limiter: package-limit
`;
const sensors = `  drive: { channel: drive_temp_C, shows: heat.nodes.drive.temperature, uncertainty: 1 K }
  network: { channel: network_temp_C, shows: heat.nodes.network.temperature, uncertainty: 1 K }
  memory: { channel: memory_temp_C, shows: heat.nodes.memory.temperature, uncertainty: 1 K }
`;

beforeAll(async () => {
  folder = join(mkdtempSync(join(tmpdir(), 'uprate-gate-')), 'study');
  cpSync('examples/mini-pc', folder, { recursive: true });
  original = readFileSync(join(folder, 'study.yaml'), 'utf8');
  text = `${original
    .replace(/limit: open .*/, 'limit: 105 degC')
    .replace(/rated-current: open .*/g, 'rated-current: 200 A')
    .replace('under: 48 degC', 'under: 55 degC')
    .replace('# The ladder:', `${sensors}\n# The ladder:`)}\n${learning}`;
  write(text);
  const rehearse = (id: string, ...more: string[]) =>
    command('record', folder, '--source', 'rehearsal', '--seed', '3', '--hold', '90 min', '--id', id, ...more);
  expect((await rehearse('baseline', '--load', '20 %,100 %')).exit).toBe(0);
  expect((await rehearse('first-step', '--load', '100 %', '--step', 'stacked-22')).exit).toBe(0);
}, 120_000);
afterAll(() => rmSync(join(folder, '..'), { recursive: true }));

const write = (study: string) => writeFileSync(join(folder, 'study.yaml'), study);

async function command(...argv: string[]) {
  let [out, err] = ['', ''];
  const exit = await runCommand(argv, { out: (said) => (out += said), err: (said) => (err += said), debug: false });
  return { out, err, exit };
}

/** The gate with few draws, on a study that is another than the recorded one where `study` says so. */
async function gate(step: string, study = text, ...more: string[]) {
  write(study);
  return command('gate', folder, step, '--samples', '2000', '--today', '2026-03-01', ...more);
}

test('go leaves with 0, from a baseline that was as predicted', async () => {
  const { out, err, exit } = await gate('stacked-22');
  expect(out).toMatch(/^GO to stacked-22: nothing speaks against it\. The board stands at as-delivered\.$/m);
  expect(out).toMatch(/^recorded below this step: 1 run \(baseline\); \d+ steady readings learnt from$/m);
  expect(out).toMatch(/^ {2}load, .+ {2}Power really taken at the two sense points {2}.+ W ± .+ {2}.+ W ± /m);
  expect(out).toMatch(/^ {2}any of them +never +0 % to 0\.19 %$/m);
  expect(err).toContain('nobody wrote down when machine-power,');
  expect(exit).toBe(0);
});

test('a limit that is too near holds, with the measurement that would change it', async () => {
  const { out, exit } = await gate('stacked-22', text.replace('under: 55 degC', 'under: 44 degC'));
  expect(out).toMatch(
    /Case, top side \(limits\.skin\) would be exceeded with a probability of \d.* %\n +wanted: at most 1 %\n +what would change it: /,
  );
  expect(exit).toBe(1);
});

test('hold with its numbers as data', async () => {
  const study = text
    .replace('rated-current: 200 A', 'rated-current: open')
    .replace('steps:\n', 'gate: { per-limit: 0.5 %, calibration-days: 100 }\nsteps:\n')
    .replace('shows: limiters.package-limit.real\n', '$&    calibrated: 2025-01-01\n');
  const { out, exit } = await gate('stacked-22', study, '--json');
  const { verb, result } = JSON.parse(out);
  expect([verb, result.verdict, result.step, result.standing, exit]).toEqual([
    'gate',
    'hold',
    'stacked-22',
    'as-delivered',
    1,
  ]);
  const codes = result.reasons.map(({ code }: { code: string }) => code);
  expect(codes.filter((code: string) => code === 'gate/calibration-unknown')).toHaveLength(7);
  expect(codes).toContain('gate/calibration-old');
  expect(codes).toContain('gate/open-limit');
  const skin = result.limits.find(({ id }: { id: string }) => id === 'limits.skin');
  expect(skin.margin).toMatchObject({ unit: 'K' });
  expect(skin).toMatchObject({ probability: 0, low: expect.any(Number), high: expect.any(Number) });
  // The machine's trip and the adapter's are held against peaks.
  const held = result.limits.map(({ id }: { id: string }) => id);
  for (const id of ['limiters.controller-trip', 'parts.adapter.over-current']) expect(held).toContain(id);
});

test('the next step wants its predecessor run as predicted, and the check at a small load', async () => {
  const held = await gate('stacked-12');
  expect(held.out).toContain('the check at a small load is not ticked for stacked-22');
  expect(held.out).toContain('predicted for stacked-22 from what was known before it, and measured there:');
  expect(held.out).toMatch(/^ {2}.+ W {2}Case, thermocouple +\d.+ °C ± .+ K {2}.+ °C ± /m);
  expect(held.out).not.toContain('has no go');
});

test('a step two above the baseline is held by the one between that has no go; a ticked check is no reason', async () => {
  const ticked = await command('procedure', folder, '--step', 'stacked-22', '--tick', 'low-load');
  expect(ticked.exit).toBe(0);
  const { out } = await gate('stacked-12', text.replace('limit: 105 degC ', 'limit: open '));
  expect(out).toMatch(/^1\. step stacked-22, on which stacked-12 stands, has no go: nobody knows the limit of/m);
  expect(out).not.toContain('small load is not ticked');
});

test('back where the board as it stands is beyond a limit', async () => {
  const { out, exit } = await gate('stacked-22', text.replace('under: 55 degC', 'under: 35 degC'));
  expect(out).toMatch(/^BACK from as-delivered, where the board stands: \d+ reasons against stacked-22\.$/m);
  expect(out).toMatch(/^1\. at as-delivered, where the board stands now, case has read \d\d\.\d+ °C$/m);
  expect(out).toMatch(/^2\. at as-delivered, where the board stands now, Case, top side \(limits\.skin\) is exceeded/m);
  expect(exit).toBe(1);
});

test('a study that says nothing about its recordings is told so; a run that it doesn’t name is not looked at', async () => {
  const silent = await gate('stacked-22', text.replace(learning, ''));
  expect(silent.out).toContain("the study has 2 runs, but doesn't say how recordings belong to its board");
  const other = learning.replace('baseline, first-step', 'first-step').replace('from: [first-step]', 'from: [lost]');
  const unnamed = await gate('stacked-22', text.replace(learning, other));
  expect(unnamed.out).toContain('nothing has been measured before step stacked-22');
  expect(unnamed.err).toContain('run baseline is not looked at');
  expect(unnamed.err).toContain('the study names lost, which is no run in its folder');
});

test('without a run it holds: nothing has been measured', async () => {
  const { out, exit } = await command('gate', 'examples/mini-pc', 'stacked-9', '--samples', '1000');
  expect(out).toMatch(/^HOLD before stacked-9: \d+ reasons\. The board stands at stacked-12\.$/m);
  expect(out).toMatch(/^1\. nothing has been measured before step stacked-9$/m);
  expect(exit).toBe(1);
});

test.each([
  [['examples/mini-pc', 'stacked-21'], 'did you mean "stacked-22"?'],
  [['examples/mini-pc', 'as-delivered'], 'one of: stacked-22, stacked-12, stacked-9'],
  [['examples/accelerator', 'as-delivered'], 'a study with a second step'],
  [['examples/mini-pc', 'stacked-22', '--today', '2026-02-30'], 'such as 2026-03-01'],
  [['examples/mini-pc', 'stacked-22', '--samples', '10'], '1000 to 1000000'],
])('refuses %j with 2', async (given, said) => {
  const { out, err, exit } = await command('gate', ...given);
  expect(exit).toBe(2);
  expect(err).toContain(said);
  expect(out).toBe('');
});
