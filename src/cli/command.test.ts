import { describe, expect, test } from 'vitest';
import { runCommand } from './command.ts';

/** Runs a command line with both streams caught. */
async function run(...argv: string[]) {
  let out = '';
  let err = '';
  const exit = await runCommand(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    debug: false,
  });
  return { exit, out, err };
}

describe('wrong usage leaves with 2, says what was wrong on stderr and nothing on stdout', () => {
  test.each([
    ['a misspelt verb names the nearest one', ['chekc'], /unknown command 'chekc'[\s\S]*check/],
    [
      'an unknown option names the nearest one',
      ['plan', '--sampels', '5'],
      /unknown option '--sampels'[\s\S]*--samples/,
    ],
    ['a missing argument is named', ['import', 'mini-pc'], /missing required argument 'files'/],
    ['an argument too many is refused', ['check', 'a', 'b'], /too many arguments/],
    ['an option without its value is refused', ['plan', '--step'], /argument missing/],
    [
      'a number that is none is refused',
      ['plan', '--samples', 'many'],
      /'many' is invalid[\s\S]*whole number from 1000 to 1000000, or 0/,
    ],
    ['a negative number of samples is refused', ['plan', '--samples=-5'], /'-5' is invalid/],
    ['a number of draws that shows nothing is refused', ['plan', '--samples', '2'], /'2' is invalid/],
    ['a number of draws beyond the memory is refused', ['plan', '--samples', '1000000000'], /'1000000000' is invalid/],
    ['a seed of more than 32 bits is refused', ['plan', '--seed', '4294967296'], /'4294967296' is invalid/],
    ['a port that none is, is refused', ['open', '--port', '65536'], /'65536' is invalid/],
    ['a folder that is missing is wrong usage', ['check', 'nowhere'], /no file or folder "nowhere"/],
    ['a folder without a study is wrong usage', ['check', 'docs'], /holds no study.yaml/],
    ['a run that is missing is wrong usage', ['show', 'examples/accelerator', 'stiar'], /did you mean "stair"/],
    ['a run to plan against that is missing', ['plan', 'examples/accelerator', '--against', 'x'], /no run "x"/],
    ['a log that is missing is wrong usage', ['import', 'examples/mini-pc', 'no.csv'], /no log "no.csv"/],
    [
      "a limit's last name is enough to be told its whole",
      ['plan', 'examples/mini-pc', '--budget', 'skin', '--samples', '0'],
      /did you mean "limits.skin"/,
    ],
    ['a group without a budget is refused', ['plan', 'examples/mini-pc', '--by', 'part'], /--by[\s\S]*--budget/],
    ['a group that none is, is refused', ['plan', '--budget', 'limits.skin', '--by', 'colour'], /input, part, source/],
    [
      'whole distributions are told by input only',
      ['plan', 'examples/mini-pc', '--budget', 'limits.skin', '--global', '--by', 'source'],
      /leave out --by/,
    ],
    ['a misspelt formula names the nearest one', ['calc', 'paralel-resistance'], /"parallel-resistance"/],
    ['a formula without all its inputs is refused', ['calc', 'parallel-resistance', 'a=5 mΩ'], /also needs b/],
    ['no verb at all shows the verbs', [], /Commands:[\s\S]*check[\s\S]*plan[\s\S]*open/],
  ])('%s', async (_, argv, said) => {
    const { exit, out, err } = await run(...argv);
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(said);
  });
});

test('--version prints the version of the package and leaves with 0', async () => {
  const { default: manifest } = await import('../../package.json', { with: { type: 'json' } });
  expect(await run('--version')).toEqual({ exit: 0, out: `${manifest.version}\n`, err: '' });
});

test.each(['check', 'plan', 'calc', 'import', 'runs', 'show', 'fit', 'compare', 'open'])(
  '%s --help goes to stdout with its usage and at least two examples',
  async (verb) => {
    const { exit, out, err } = await run(verb, '--help');
    expect(exit).toBe(0);
    expect(err).toBe('');
    expect(out).toContain(`Usage: uprate ${verb}`);
    expect(out.split(`  $ uprate ${verb}`).length).toBeGreaterThan(2);
  },
);

describe('the examples of --help', () => {
  const verbs = ['check', 'plan', 'plate', 'cooling', 'calc', 'runs', 'show', 'fit', 'compare'];
  test.each(verbs)('those of %s that name an example of the project run', async (verb) => {
    const { out } = await run(verb, '--help');
    const examples = [...out.matchAll(/\$ uprate (.* examples\/.*)$/gm)].map(([, line]) => line.split(' '));
    if (verb !== 'calc') expect(examples.length).toBeGreaterThan(0);
    for (const argv of examples) expect((await run(...argv)).exit).toBe(0);
  });
});
