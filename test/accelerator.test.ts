import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runFit } from '../src/cli/fit.ts';
import { runPlan } from '../src/cli/plan.ts';
import { energyOf } from '../src/runs/energy.ts';
import { importLog } from '../src/runs/import.ts';
import { readChannels, readRun } from '../src/runs/read-run.ts';
import type { PredictedWindow } from '../src/steps/learn.ts';

const example = 'examples/accelerator';
const folder = mkdtempSync(join(tmpdir(), 'uprate-accelerator-'));
cpSync(example, folder, { recursive: true });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface FitResult {
  readonly inputs: readonly { path: string; after: { value: number; u: number }; determined: string }[];
}

const learnt = async () => (await runFit(folder, {})).json as FitResult;

describe('the two recordings', () => {
  // Rows and energies: counted and integrated with numpy from the same files, beside the board's own counter of energy.
  test.each([
    ['step', 14750, 122171.74, 122170.133],
    ['stair', 10800, 100424.2, 100593.629],
  ])(
    '%s: every row is there, and the integral of instantaneous power meets the energy counter within 0.3 %%',
    async (id, rows, integral, counter) => {
      const original = `accelerator-${id}-telemetry.csv.gz`;
      await importLog(folder, join(example, 'runs', id, original), { id: `${id}-again` });
      const run = await readRun(folder, `${id}-again`);
      expect(run.rows).toBe(rows);
      const [energy] = energyOf(run, await readChannels(folder, run));
      expect(energy.channel).toBe('power_instant_W');
      expect(energy.energy).toBeCloseTo(integral, 0);
      expect(energy.counter).toBeCloseTo(counter, 2);
      expect(Math.abs(energy.closure!)).toBeLessThan(0.003);
      expect(run.sha256).toBe((await readRun(folder, id)).sha256);
    },
  );
});

describe('learnt from step alone', () => {
  test('resistances and coolant are what the two steady states say', async () => {
    const { inputs } = await learnt();
    const [die, memory, coolant] = inputs;
    // By hand, from the files with numpy: die 69.0 °C at 697 W and 38.0 °C at 121 W. The study takes 100 of every 122 W above 7 W as the die's.
    const dieWatts = (watts: number) => ((watts - 7) / 115) * 100;
    const byHand = (69.0 - 38.0) / (dieWatts(697) - dieWatts(121));
    expect(die.path).toBe('heat.links.die-coolant.through.0.resistance');
    expect(Math.abs(die.after.value - byHand)).toBeLessThan(2 * die.after.u);
    expect(Math.abs(coolant.after.value - 273.15 - (38.0 - byHand * dieWatts(121)))).toBeLessThan(2 * coolant.after.u);
    for (const { determined } of [die, memory, coolant]) expect(determined).toBe('yes');
  });

  test('stair: the die of every level is predicted within 1.5 K of its last ten seconds', async () => {
    const { windows } = (await runPlan(folder, { against: 'stair' })).json as { windows: PredictedWindow[] };
    const die = windows.filter(({ instrument }) => instrument === 'die');
    const levels = die.filter(({ window }) => window.startsWith('load'));
    expect(levels).toHaveLength(5);
    // Means of the board's own averaged power in each level, from the file with numpy.
    const counted = [242, 355, 513, 654, 698];
    for (const [i, watts] of counted.entries()) expect(Math.abs(levels[i].power.value - watts)).toBeLessThan(6);
    for (const { difference, size } of die) {
      expect(Math.abs(difference.value)).toBeLessThan(1.5);
      expect(Math.abs(size)).toBeLessThan(3);
    }
    // 40 s are two time constants: no level had settled (in the file, ten-second means of the last one still rise by 0.2 K in 4 s), and each says so.
    expect(levels.map(({ settled }) => settled)).toEqual([false, false, false, false, false]);
    for (const { why } of levels) expect(why).toMatch(/still|too short/);
  });

  test('written into the study, every comment stays, and a second fit finds the same', async () => {
    const before = readFileSync(join(folder, 'study.yaml'), 'utf8');
    const first = await learnt();
    await runFit(folder, { write: true });
    const after = readFileSync(join(folder, 'study.yaml'), 'utf8');
    const comments = (text: string) => text.match(/#.*$/gm);
    expect(comments(after)).toEqual(comments(before));
    expect(after.split('\n')).toHaveLength(before.split('\n').length);
    const second = await learnt();
    // What was stated before is the prior again: the data don't count twice.
    second.inputs.forEach(({ after: { value, u } }, i) => {
      expect(Math.abs(value - first.inputs[i].after.value)).toBeLessThan(1e-3 * u);
      expect(u / first.inputs[i].after.u).toBeCloseTo(1, 3);
    });
  });
});
