import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import type { PlateBalance } from '../steps/plate-balance.ts';
import { runCommand } from './command.ts';
import { runPlate } from './plate.ts';

const scratch = mkdtempSync(join(tmpdir(), 'uprate-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const cooler = 'examples/cooler';
const steps = async (options = {}) =>
  ((await runPlate(cooler, { samples: 2000, ...options })).json as { steps: readonly PlateBalance[] }).steps;

describe('uprate plate', () => {
  test('screws pull what die, pads and stops carry, at every step', async () => {
    for (const { pull, screws, dies, pads, stops } of await steps()) {
      const sum = (parts: readonly { readonly force: { readonly value: number } }[]) =>
        parts.reduce((total, { force }) => total + force.value, 0);
      expect(sum(screws)).toBeCloseTo(pull!.value, 9);
      expect(sum(dies) + sum(pads) + sum(stops)).toBeCloseTo(pull!.value, 7);
      expect([...dies, ...pads].reduce((total, { carries }) => total + carries, 0)).toBeCloseTo(1, 9);
    }
  });

  test('thicker pads carry more, the die less, and it may lose contact', async () => {
    const [before, thick] = await steps();
    expect(thick.changed).toContain('plate.pads.memory.thickness');
    expect(thick.dies[0].force.value).toBeLessThan(0.5 * before.dies[0].force.value);
    expect(before.dies[0].noContact!.probability).toBeLessThan(0.01);
    expect(thick.dies[0].noContact!.probability).toBeGreaterThan(0.05);
    // The pads' share of their curve alone tilts the plate by more than the layer gives way: hardly a draw lies flat.
    expect(thick.dies[0].partContact!.probability).toBeGreaterThan(0.9);
    expect(before.dies[0].partContact!.probability).toBeLessThan(0.9);
    expect(thick.pads.map(({ state }) => state)).toEqual(['strong', 'strong']);
  });

  test('under a die that is touched everywhere the pressure at its centre is the mean, and grows towards where the force acts', async () => {
    const [{ dies }] = await steps({ step: 'right-pads', samples: 0 });
    const { pressure, meanPressure, highestPressure, lowestPressure, contact, centre, field } = dies[0];
    expect(contact.value).toBe(1);
    expect(pressure.centre / meanPressure.value).toBeCloseTo(1, 9);
    const toEdge = (Math.abs(pressure.alongX) * field.width + Math.abs(pressure.alongY) * field.depth) / 2;
    expect(toEdge / ((highestPressure.value - lowestPressure.value) / 2)).toBeCloseTo(1, 9);
    expect(Math.sign(pressure.alongY)).toBe(Math.sign(centre.y - field.y));
    expect(Math.abs(centre.y - field.y)).toBeGreaterThan(1e-5);
  });

  test.each([
    ['0.6 mm ± 1 %', 'no-contact', 'no contact'],
    ['1.05 mm ± 1 %', 'loose', 'loose: under 20 %'],
    ['1.4 mm ± 1 %', 'usual', ''],
    ['1.8 mm ± 1 %', 'strong', 'strong: over 45 %'],
    ['3 mm ± 1 %', 'beyond-curve', 'beyond the last point of its curve'],
  ])('a pad of %s is %s', async (thickness, state, word) => {
    const path = join(scratch, 'pads.yaml');
    const text = readFileSync(`${cooler}/study.yaml`, 'utf8').replace(
      'thickness: 1.5 mm ± 8 %              # of',
      `thickness: ${thickness} # of`,
    );
    writeFileSync(path, text);
    const outcome = await runPlate(path, { step: 'as-delivered', samples: 0 });
    expect((outcome.json as { steps: readonly PlateBalance[] }).steps[0].pads[0].state).toBe(state);
    expect(outcome.text).toContain(word);
  });

  test('the same seed gives the same figures; without draws there are no chances', async () => {
    expect(await steps({ seed: 7 })).toEqual(await steps({ seed: 7 }));
    const [first] = await steps({ samples: 0 });
    expect(first.dies[0].noContact).toBeNull();
    expect(first.dies[0].force.u).toBeGreaterThan(1);
  });

  test('says who carries how much, what is open, and the cautions', async () => {
    const { text, exit } = await runPlate(cooler, { step: 'as-delivered', samples: 2000 });
    expect(text).toMatch(/die processor +Processor's die +\S+ N ± \S+ N +\d+ %/);
    expect(text).toContain('fill in plate.dies.processor.pressure-limit');
    expect(text).toContain('Never press a bare die unevenly');
    expect(exit).toBe(0);
  });

  test('draws the step that was named', async () => {
    const svg = join(scratch, 'plate.svg');
    await runPlate(cooler, { step: 'thick-pads', svg, samples: 0 });
    const drawn = readFileSync(svg, 'utf8');
    expect(drawn).toMatch(/^<svg xmlns=/);
    expect(drawn).toContain('Thicker pads, as they come from a drawer: the plate from above');
    for (const key of ['D1', 'P1', 'P2', 'S1', 'S4']) expect(drawn).toContain(`>${key}<`);
  });

  test('a plate that finds no rest is told as that, without numbers and without a picture', async () => {
    const broken = 'test/broken-studies/plate-tips-over.yaml';
    const { text, exit, json } = await runPlate(broken, { samples: 0 });
    expect(exit).toBe(1);
    expect(text).toContain('it tips over, falls through, or is free to turn');
    expect((json as { steps: PlateBalance[] }).steps[0]).toMatchObject({ ending: 'unsupported', pull: null, dies: [] });
    await expect(runPlate(broken, { svg: join(scratch, 'none.svg'), samples: 0 })).rejects.toThrow('plate-unsupported');
  });

  test('a study without a plate, or a step that isn’t there, is wrong usage', async () => {
    const streams = { out: () => {}, err: () => {}, debug: false };
    expect(await runCommand(['plate', 'examples/mini-pc'], streams)).toBe(2);
    expect(await runCommand(['plate', cooler, '--step', 'thik-pads'], streams)).toBe(2);
    expect(sayFault({ code: 'command/no-plate', severity: 'refusal', data: { study: 'x' } }).remedy).toContain(
      'docs/cooling.md',
    );
  });
});
