import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { StepAdvice, TriedMeasurement } from '../steps/advise.ts';
import { runAdvise } from './advise.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'advised-'));
  cpSync('examples/mini-pc', folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const append = (text: string) => {
  const path = join(folder, 'study.yaml');
  writeFileSync(path, `${readFileSync(path, 'utf8')}\n${text}`);
};

test('answers in one sentence with numbers, for the margin that binds at the second step', async () => {
  const { text } = await runAdvise(folder, {});
  expect(text).toMatch(
    /^Read "Case, thermocouple" at step as-delivered \(as it is, to ±1 K\): the margin of "Case, top side" at step stacked-22 is then known to ±\d\.\d K instead of ±\d\.\d K; if the reading bears out the best values, the probability of exceeding falls from about \d.* % to .* %\.$/m,
  );
  // A second measurement would take off little of what is left, and the same thermocouple isn't read twice.
  expect(text).not.toContain('Two together');
});

test('two measurements together where the second one adds something', async () => {
  const { text } = await runAdvise(folder, { limit: 'limiters.controller-trip' });
  expect(text).toMatch(/^Two together: .+, then .+: ±\d.+ W instead of ±\d.+ W, .+ h; borne out, about .+ %\.$/m);
});

test('another step and another limit; all measurements on request', async () => {
  const options = { step: 'stacked-9', limit: 'heat.nodes.drive.limit' };
  const { text, json } = await runAdvise(folder, options);
  expect(text).toContain('heat.nodes.drive.limit) at step stacked-9');
  expect(text).toContain('glue a thermocouple to "Drive" and read it at step stacked-12');
  const { considered } = json as StepAdvice;
  expect(considered).toBeGreaterThan(60);
  expect(text).toContain(`${considered} measurements were looked at; --all shows them`);
  const all = await runAdvise(folder, { ...options, all: true });
  expect(all.text.split('\n').length).toBeGreaterThan(considered);
});

test('the first measurement does on drawn boards what was advised (seed 3)', async () => {
  const { text, json } = await runAdvise(folder, { step: 'stacked-12', try: 20, seed: 3 });
  expect(text).toMatch(/^The first one tried on 20 drawn boards \(seed 3\): the margin was really off by /m);
  const { tried, measurements } = json as StepAdvice & { tried: TriedMeasurement };
  // 20 boards know a root mean square to 16 %.
  expect(Math.abs(tried.errorAfter.value / measurements[0].uAfter.value - 1)).toBeLessThan(0.45);
  expect(Math.abs(tried.errorBefore.value / measurements[0].uNow.value - 1)).toBeLessThan(0.45);
  expect(Math.abs(tried.uAfter.value / measurements[0].uAfter.value - 1)).toBeLessThan(0.2);
});

test('a study says what it can measure, and what it can not', async () => {
  append(`advice:
  measurements:
    - of: parts.core-sense.fitted.0.joint
      by: microscope
      uncertainty: 5 %
      effort: 6 min
    - of: heat.nodes.case.temperature
      by: thermal camera
      uncertainty: 0.5 K
      effort: 30 min
  never: [heat.nodes.board.temperature]
`);
  const { measurements } = (await runAdvise(folder, {})).json as StepAdvice;
  const of = (id: string) => measurements.filter((each) => each.id === id);
  expect(of('parts.core-sense.fitted.0.joint')).toMatchObject([{ by: 'microscope', source: 'study', hours: 0.1 }]);
  // 5 % of 0.08 mΩ.
  expect(of('parts.core-sense.fitted.0.joint')[0].attains).toMatchObject({ value: 4e-6, unit: 'Ω' });
  expect(of('heat.nodes.case.temperature')).toMatchObject([{ by: 'thermal camera', attains: { value: 0.5 } }]);
  // The study's own word stands for the instrument that shows the same.
  expect(of('instruments.case')).toEqual([]);
  expect(of('heat.nodes.board.temperature')).toEqual([]);
});

test.each([
  ['measurements: [{ of: heat.ambeint, by: eye, uncertainty: 1 K, effort: 1 h }]', 'heat.ambeint'],
  ['never: [parts.adaptor.voltage]', 'parts.adaptor.voltage'],
  ['measurements: [{ of: heat.ambient, by: eye, uncertainty: 0 K, effort: 1 h }]', 'uncertainty "0 K"'],
])('%s is refused by its name', async (entry, named) => {
  append(`advice:\n  ${entry}\n`);
  await expect(runAdvise(folder, {})).rejects.toThrow(named);
});

test('an unknown step and an unknown limit are told with the nearest', async () => {
  await expect(runAdvise(folder, { step: 'stacked-21' })).rejects.toThrow('stacked-2');
  await expect(runAdvise(folder, { limit: 'limits.skim' })).rejects.toThrow('limits.skim');
});

test('a step without a solution, and one without a known limit, have no advice and say why', async () => {
  const path = join(folder, 'study.yaml');
  const text = readFileSync(path, 'utf8');
  // The adapter's droop alone leaves nothing for the board.
  writeFileSync(path, text.replace('resistance: 25 mohm ± 30 %', 'resistance: 25 ohm ± 30 %'));
  await expect(runAdvise(folder, {})).rejects.toThrow('"stacked-22" has no operating point');
  cpSync('examples/accelerator', folder, { recursive: true });
  await expect(runAdvise(folder, {})).rejects.toThrow('there is no advice for step as-delivered');
});

test('from what the runs have taught, on request', async () => {
  cpSync('examples/accelerator', folder, { recursive: true });
  const path = join(folder, 'study.yaml');
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace('limit: open               # no data sheet', 'limit: 90 degC # no data sheet'),
  );
  const stated = await runAdvise(folder, {});
  const learnt = await runAdvise(folder, { learnt: true });
  expect(learnt.text).toMatch(/what is measured now is step as-delivered; learnt from step$/m);
  const [before, after] = [stated, learnt].map(({ json }) => (json as StepAdvice).margin.u!);
  expect(after).toBeLessThan(before / 4);
});
