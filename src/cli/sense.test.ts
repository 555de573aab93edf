import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { solveAtLimit } from '../sense/working-point.ts';
import { readStudy } from '../study/read.ts';
import { runSense, type SenseCommandOptions } from './sense.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sense-'));
  cpSync('examples/mini-pc/study.yaml', join(folder, 'study.yaml'));
});
afterEach(() => rmSync(folder, { recursive: true }));

interface Figure {
  readonly value: number;
  readonly u: number | null;
}

interface Said {
  readonly present: Figure;
  readonly options: readonly {
    readonly points: number;
    readonly steps: readonly {
      readonly real: Figure;
      readonly error: number;
      readonly work: { readonly soldered: number; readonly removed: number };
      readonly failures: readonly { readonly direction: string; readonly passed: readonly string[] }[];
    }[];
  }[];
}

const limiter = 'package-limit';
const sense = (options: Partial<SenseCommandOptions>) => runSense(folder, { limiter, ...options });
const study = () => readFileSync(join(folder, 'study.yaml'), 'utf8');

/** The YAML steps of the option told in full. */
function stepsIn(text: string): string[] {
  return [...text.matchAll(/^ {2}- id: sense-[\s\S]*?(?=\n\n|$(?![\s\S]))/gm)].map(([step]) => step);
}

/** What the study says a limiter really allows at a step that was pasted in behind the first one. */
function pasted(steps: readonly string[]): number[] {
  const text = study().replace(/\n {2}- id: stacked-22[\s\S]*$/, `\n${steps.join('\n')}\n`);
  const reading = readStudy(text, 'pasted.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.study.steps.slice(1).map((step) => solveAtLimit(step, limiter).of(`limiters.${limiter}.real`));
}

test('one target: options in a table, the first one in full, its changes ready to be pasted', async () => {
  const { text, json } = await sense({ target: ['65W'], top: 4 });
  const { options, present } = json as Said;
  expect(options).toHaveLength(4);
  // 54 W as read, with 0.08 mΩ of joints on 5 mΩ and warm resistors: a little less than 54 W · 5/5.08.
  expect(present.value).toBeGreaterThan(52.9);
  expect(present.value).toBeLessThan((54 * 5) / 5.08);
  for (const { steps } of options) expect(Math.abs(steps[0].real.value / 65 - 1 - steps[0].error)).toBeLessThan(1e-12);
  expect([...options].sort((a, b) => a.points - b.points)).toEqual(options);
  expect(text).toMatch(/^ {2}1 {4}65 W {2}core-sense \+ 18 mΩ .*falls to 53\.03 W {2}rises to/m);
  expect(text).toContain('low-load check: at 8 W true it must read 6.69 W ± 0.86 W');
  expect(text).toContain('in logs, multiply what package-limit reads by 1.19');
  expect(text).toContain('Never short a sense resistor outright');
  expect(text).not.toMatch(/NaN|undefined|\[object|Infinity/);
  const [real] = pasted(stepsIn(text));
  expect(Math.abs(real / options[0].steps[0].real.value - 1)).toBeLessThan(1e-9);
});

test('a ladder of three: each step adds to the one before, and pasted together they are what was said', async () => {
  const { text, json } = await sense({ target: ['62 W', '72 W', '80 W'], top: 2 });
  const [{ steps }] = (json as Said).options;
  expect(steps.map(({ work }) => work.removed)).toEqual([0, 0, 0]);
  const written = stepsIn(text);
  expect(written).toHaveLength(3);
  pasted(written).forEach((real, t) => {
    expect(Math.abs(real / steps[t].real.value - 1)).toBeLessThan(1e-9);
  });
});

test.each([
  [
    'replaced, and a derating',
    { target: ['40W'], kinds: 'replace' },
    'This is below what is allowed now: a derating, not a raise.',
  ],
  ['replaced again at each step', { target: ['60W', '66W'], kinds: 'replace' }, 'cut off'],
])('%s: pasted, it is what was said', async (_, options, says) => {
  const { text, json } = await sense({ top: 1, ...options });
  const [{ steps }] = (json as Said).options;
  expect(text).toContain(says);
  pasted(stepsIn(text)).forEach((real, t) => {
    expect(Math.abs(real / steps[t].real.value - 1)).toBeLessThan(1e-9);
  });
});

test('a divider, where the study knows the filter: pasted, it is what was said', async () => {
  const text = study().replace(
    '    title: Sense resistor of the core\n',
    '    title: Sense resistor of the core\n    divider: { series: 20 ohm ± 1 %, parallel: 1250 ohm ± 5 %, input: 20 kohm ± 30 % }\n',
  );
  writeFileSync(join(folder, 'study.yaml'), text);
  const said = await sense({ target: ['65W'], kinds: 'divider', top: 3 });
  expect(said.text).toMatch(/core-sense \/ [\d.]+ Ω 1 %, 0603/);
  const [{ steps }] = (said.json as Said).options;
  const [real] = pasted(stepsIn(said.text));
  expect(Math.abs(real / steps[0].real.value - 1)).toBeLessThan(1e-6);
  expect(Math.abs(steps[0].error)).toBeLessThan(0.01);
});

test('a point that two limiters read changes both', async () => {
  const { text } = await runSense(folder, { limiter: 'controller-trip', target: ['105W'], top: 1 });
  expect(text).not.toContain('reads the same points');
  writeFileSync(
    join(folder, 'study.yaml'),
    study().replace(
      '    reads:\n      - sense: system-sense',
      '    reads:\n      - sense: core-sense\n        assumed: 5 mohm\n      - sense: system-sense',
    ),
  );
  const both = await sense({ target: ['65W'], kinds: 'stack', top: 1 });
  expect(both.text).toMatch(
    /Embedded controller's total power \(controller-trip\) reads the same points: .* instead of .* of 112 W allowed; it trips at/,
  );
});

test('by hand: told in full, and a plain short refused with the reason', async () => {
  const { text } = await sense({ hand: ['core-sense + 22 mohm', 'graphics-sense = 4 mohm'] });
  expect(text).toContain('── as put in by hand');
  expect(text).toMatch(/graphics-sense {2}4 mohm by hand .* open +open$/m);
  await expect(sense({ hand: ['core-sense + 0 ohm'] })).rejects.toThrow(
    'is a plain short: the reading falls to zero and nothing limits any more',
  );
  await expect(sense({ hand: ['core-sense + 0.2 mohm'] })).rejects.toThrow(
    'core-sense would show only 6 % of what it should: nearly a short',
  );
  await expect(sense({ hand: ['core-sense with 5 mohm'] })).rejects.toThrow('it is no sense point, sign and value');
  await expect(sense({ hand: ['system-sense + 5 mohm'] })).rejects.toThrow('it reads core-sense, graphics-sense');
});

describe('a stock of one’s own', () => {
  const stock = (values: string) =>
    `stock: 1\nresistors:\n  - { values: [${values}], tolerance: 1 %, temperature-coefficient: 75 ppm/K, rated-power: 1 W }\n`;

  test('beside the study it is taken without being named', async () => {
    writeFileSync(join(folder, 'stock.yaml'), stock('22 mohm, 33 mohm'));
    const { text } = await sense({ target: ['62W'], top: 1 });
    expect(text).toContain('core-sense + 22 mΩ');
    expect(text).toContain('8 fits of core-sense, 8 fits of graphics-sense');
  });

  test('named, it must be there; a short in it is refused where it stands', async () => {
    await expect(sense({ target: ['62W'], stock: join(folder, 'nowhere.yaml') })).rejects.toThrow('there is no file');
    writeFileSync(join(folder, 'mine.yaml'), stock('22 mohm, 0 ohm'));
    await expect(sense({ target: ['62W'], stock: join(folder, 'mine.yaml') })).rejects.toThrow('is a plain short');
  });
});

test.each([
  ['an unknown limiter', { limiter: 'pakage-limit', target: ['65W'] }, '"pakage-limit" is no limiter'],
  ['a limiter of temperatures', { limiter: 'die-limit', target: ['65W'] }, '"die-limit" is no limiter'],
  ['an unknown step', { target: ['65W'], step: 'stacked-21' }, 'stacked-2'],
  ['no target', {}, 'none is given'],
  ['no power', { target: ['5 mm'] }, 'is a length'],
  ['nothing', { target: ['0 W'] }, 'it is not more than zero'],
  ['beyond the supply', { target: ['5 kW'] }, 'all supplies together give 120 W at most'],
  [
    'beyond its rating with the rest of the machine',
    { target: ['110 W'] },
    'is beyond the supply: External adapter 19.5 V, 120 W: rated power',
  ],
  ['below idle', { target: ['1 W'] }, 'whatever the processor does'],
  ['another kind', { target: ['65 W'], kinds: 'stack,wish' }, '"wish" is no kind of option'],
  ['dividers without a filter', { target: ['65 W'], kinds: 'divider' }, 'dividers were asked for'],
])('%s is refused with the reason', async (_, options, says) => {
  await expect(sense(options)).rejects.toThrow(says);
});

test('written behind the last step: the study reads, its comments stand, and the new step is what was said', async () => {
  const before = study();
  const { json, notes } = await sense({ step: 'stacked-9', target: ['88 W'], top: 1, write: true });
  const after = study();
  expect(after.startsWith(before.trimEnd())).toBe(true);
  expect(notes).toEqual(['written behind step stacked-9: `uprate plan` computes the new steps']);
  const reading = readStudy(after, 'study.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const last = reading.study.steps.at(-1)!;
  expect(last.id).toBe('sense-88w');
  const real = solveAtLimit(last, limiter).of(`limiters.${limiter}.real`);
  expect(Math.abs(real / (json as Said).options[0].steps[0].real.value - 1)).toBeLessThan(1e-9);
  // Once more would be a step of the same name.
  await expect(sense({ step: 'sense-88w', target: ['88 W'], top: 1, write: true })).rejects.toThrow('sense-88w');
  expect(study()).toBe(after);
});

test('not behind another step than the last, nor into a list in brackets', async () => {
  const before = study();
  await expect(sense({ target: ['65W'], top: 1, write: true })).rejects.toThrow(
    '"stacked-9" is the last step of the ladder',
  );
  expect(study()).toBe(before);
  writeFileSync(join(folder, 'study.yaml'), before.replace(/\nsteps:\n[\s\S]*$/, '\nsteps: [{ id: as-delivered }]\n'));
  await expect(sense({ target: ['65W'], top: 1, write: true })).rejects.toThrow('stand in brackets');
});
