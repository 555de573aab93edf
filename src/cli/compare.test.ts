import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommand } from './command.ts';
import { runCompare } from './compare.ts';

/** What a command line writes to either stream, and what it leaves with. */
async function run(...argv: string[]) {
  let [out, err] = ['', ''];
  const streams = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    debug: false,
  };
  return { exit: await runCommand(argv, streams), out, err };
}

const before = '101.2,99.8,100.5,100.9,99.6';
const after = '104.1,105.0,103.6,104.8,104.4';

describe('two lists of numbers', () => {
  test('the verdict has the numbers of the comparison', async () => {
    const { exit, out } = await run('compare', '--before', before, '--after', after);
    expect(exit).toBe(0);
    // An independent program: difference 3.98, Welch p 1.117e-5, ratio 1.0396414 [1.0302918, 1.0490969].
    expect(out).toMatch(/after is higher than before by 3\.98 ± 0\.40 .*, 1\.0396 times; by chance: 1e-5\n/);
    expect(out).toMatch(/Fieller\) +1\.0396 +1\.0303 to 1\.0491/);
  });

  test('with --json all numbers stand, and the rank test and the pooled one beside', async () => {
    const { out } = await run('--json', 'compare', '--before', before, '--after', after, '--confidence', '90');
    const { result } = JSON.parse(out);
    const [{ difference, ranks, pooled }] = result.comparisons;
    expect(difference.degreesOfFreedom).toBeCloseTo(7.670941, 5);
    expect(pooled.degreesOfFreedom).toBe(8);
    expect(ranks.share).toBe(1);
    expect(result.confidence).toBe(0.9);
  });

  test('numbers below zero, pairs and a quantile', async () => {
    const { out } = await run(
      ...['compare', '--before', '1.9,.8,1.1,.1,-.1,4.4,5.5,1.6,4.6,3.4'],
      ...['--after', '-.7,-1.6,-.2,-1.2,-.1,3.4,3.7,.8,0,2', '--paired', '--quantile', '0.25', '--seed', '7'],
    );
    expect(out).toMatch(/pairs, 9\.0 degrees of freedom/);
    expect(out).toMatch(/25 % quantile \(definition 8, median-unbiased\)/);
    expect(out).toMatch(/seed 7/);
  });

  test('no difference is no proof of none: the interval is told', async () => {
    const { out } = await run('compare', '--before', '10,11,9,10.5', '--after', '10.2,10.9,9.4,10.1');
    expect(out).toMatch(/verdict: no difference is shown .* it may be anything of 95 %: -1\.\d+ to 1\.\d+/);
  });

  test('several are adjusted for each other', async () => {
    const { out } = await run('compare', '--before', before, '--after', after, '--after', '100.9,101.0,101.4,101.1');
    expect(out).toMatch(/after 2; .*among 2 comparisons \(Holm\)/);
  });

  test('a drift is told beside the verdict', async () => {
    const rising = Array.from({ length: 20 }, (_, i) => 100 + i + (i % 3)).join(',');
    const { out } = await run('compare', '--before', before, '--after', rising);
    expect(out).toMatch(/mind: the readings of after rise, by 17\.\d+ to 20\.\d+ from first to last/);
    expect(out).toMatch(/verdict: .*drift alone may make such a difference\n/);
  });

  test('a warm-up is told, with the mean without it', async () => {
    const falling = '10,7,5,4,3.2,3.0,2.8,3.1,2.9,3.0,3.1,2.9';
    const { out } = await run('compare', '--before', falling, '--after', '3.9,4.1,4.0,4.2');
    // MSER leaves out five: published mean 2.971429.
    expect(out).toMatch(
      /mind: the first 5 readings of before look like a warm-up \(MSER\); without them its mean is 2\.9714\n/,
    );
  });

  test('a first mean of zero has no ratio', async () => {
    const { exit, out } = await run('compare', '--before', '-1,0,1', '--after', '1,2,3');
    expect(exit).toBe(0);
    expect(out).not.toMatch(/ratio|Infinity|NaN/);
  });
});

describe('files', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'compare-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  const file = (name: string, text: string) => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  };

  test('one number a line, notes and empty lines left out', async () => {
    const one = file('one.txt', '# before\n101.2\n99.8\r\n\n100.5\n');
    const { json } = await runCompare([one, file('other.txt', '1e2\n+101\n')], {});
    expect(json).toMatchObject({ comparisons: [{ before: { n: 3 }, after: { n: 2, mean: 100.5 } }] });
  });

  test('what is no number is told with its line and column', async () => {
    const one = file('one.txt', '101.2\n  12,5 \n');
    const { exit, err } = await run('compare', one, file('other.txt', '1\n2\n'));
    expect(exit).toBe(1);
    expect(err).toMatch(/one\.txt:2:3: "12,5" is no number[\s\S]*decimal point for the comma/);
  });
});

describe('what is refused, with what to do', () => {
  test.each([
    ['one number only', ['--before', '1', '--after', '2,3'], 1, /before holds one number only/],
    ['no number', ['--before', ' ', '--after', '2,3'], 1, /before holds no number/],
    ['a word', ['--before', '1,x', '--after', '2,3'], 1, /--before:1:3: "x" is no number/],
    ['no pairs', ['--before', '1,2', '--after', '2,3,4', '--paired'], 1, /holds 2 numbers and after 3/],
    ['no scatter', ['--before', '1,1', '--after', '2,2'], 1, /neither before nor after scatters/],
    ['pairs that all differ alike', ['--before', '1,2', '--after', '2,3', '--paired'], 1, /same difference/],
    ['nothing', [], 2, /nothing to compare/],
    ['one list', ['--before', '1,2'], 2, /nothing to compare/],
    ['a file and a list', ['a.txt', '--before', '1,2', '--after', '1,2'], 2, /given together/],
    ['runs and a list', ['--study', '.', '--before', '1,2'], 2, /given together/],
    ['a missing file', ['nowhere.txt', 'either.txt'], 2, /no file or folder/],
    ['one run', ['--study', 'examples/accelerator', 'step'], 2, /1 run is named/],
    [
      'an unknown channel',
      ['--study', 'examples/accelerator', 'step', 'stair', '--channel', 'die_temp'],
      2,
      /die_temp_C/,
    ],
    ['a confidence of all', ['--confidence', '100'], 2, /'100' is invalid/],
    ['a definition that none is', ['--definition', '10'], 2, /'10' is invalid/],
  ])('%s', async (_, argv, exit, said) => {
    const found = await run('compare', ...argv);
    expect(found.exit).toBe(exit);
    expect(found.err).toMatch(said);
    expect(found.out).toBe('');
  });
});

test('two runs of a study, window by window, adjusted for their number', async () => {
  const { exit, out } = await run(
    ...['compare', '--study', 'examples/accelerator', 'step', 'stair', '--channel', 'die_temp_C'],
  );
  expect(exit).toBe(0);
  expect(out).toMatch(/idle-1: idle, [\d.]+ W and idle, [\d.]+ W +36\.\d+ °C ± .* K to .* K/);
  expect(out).toMatch(/Birge ratio/);
  expect(out).toMatch(/verdict: die_temp_C differs in .*load-1/);
});
