import { describe, expect, test } from 'vitest';
import { load, package54, processor, sense, sketchText, supply } from '../board/sketch.test-data.ts';
import { Refusal } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { runCommand } from './command.ts';
import { planReach, type ReachCommandOptions } from './plan-reach.ts';

/** Two coolings of one place, 2 K/W and 1 K/W over 25 °C, beside a limit of 60 W ± 3 W on the power itself. */
const reading = readStudy(
  sketchText({
    parts: [supply('adapter', 20), sense('adapter'), processor('point', 100), load('rest', 'adapter', 1)],
    limiters: package54(),
    limits:
      '{mine: {of: limiters.package.real, under: 60 W ± 6 W (k=2), reason: a rule}, far: {of: limiters.package.real, under: 200 W, reason: a rule}}',
    heat: '{ambient: 25 degC, nodes: {spot: {limit: 105 degC}}, links: {out: {between: [spot, ambient], through: [{resistance: 2 K/W ± 1 %}]}}}',
  }).replace(
    'steps: [{id: as-is}]',
    'steps: [{id: as-is}, {id: cooled, changes: [{at: heat.links.out.through.0.resistance, becomes: 1 K/W ± 1 %}]}]',
  ),
  'reach.yaml',
);
if (!reading.ok) throw new Error('the sketch reads');
const { study } = reading;
const reach = (options: ReachCommandOptions = {}) => planReach(study, { samples: 1024, ...options });

describe('plan --reach', () => {
  test('tells the power of each limit on each cooling, what it takes to lift it, and what is unknown', () => {
    const { text, exit } = reach();
    expect(exit).toBe(0);
    expect(text).toMatch(/Power path of step cooled; real power at package \(package\), at this step 54/);
    expect(text).toMatch(/── cooling of as-is\nlooked at from [\d.]+ W to 100 W: the load asks for no more/);
    // (105 − 25 − 1 W·2 K/W)/(2 K/W) = 39 W at best values, and 60 W − 1.645 · 3 W.
    expect(text).toMatch(/heat\.nodes\.spot\.limit +38\.\d+ W +39\.\d+ W ± .* spot gets too hot/);
    expect(text).toMatch(/limits\.mine +55\.1 W +60\.0 W ± 3\.0 W .* a rule/);
    expect(text).toMatch(/heat\.links\.out\.through\.0\.resistance from 2 K\/W to 1\.\d+ K\/W/);
    expect(text).toMatch(/step cooled changes heat\.links\.out\.through\.0\.resistance/);
    expect(text).toMatch(/kept up to 100 W at 95 %: limits\.far/);
    expect(text).toMatch(/unknown at any power, and unknown is not safe: \d+ limits without data\n.*fill in/);
    expect(text).toMatch(/── cooling of cooled \(as this step has it\)\nchanged with it: heat\.links/);
    expect(text).toMatch(/limit +as-is +cooled\n[\s\S]*heat\.nodes\.spot\.limit +38\.\d+ W +7\d\.\d+ W/);
  });

  test('with another confidence says so, and the same data go to programs', () => {
    const { text, json } = reach({ confidence: 0.99, step: 'as-is' });
    expect(text).toMatch(/At 99 %: the highest power at which a limit is kept with 99 % confidence, one-sided/);
    const { coolings, confidence } = (json as { reach: Reached }).reach;
    expect(confidence).toBe(0.99);
    const mine = coolings[0].limits.find(({ id }) => id === 'limits.mine')!;
    // Abramowitz & Stegun, table 26.5: 2.32635 leaves 1 %.
    expect(mine.power.value).toBeCloseTo(60 - 2.32635 * 3, 2);
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
  });

  test('a study without a limiter on power refuses', () => {
    const without = readStudy(
      sketchText({ parts: [supply('adapter', 20), load('rest', 'adapter', 1)] }),
      'no-limiter.yaml',
    );
    if (!without.ok) throw new Error('the sketch reads');
    expect(() => planReach(without.study, {})).toThrow(Refusal);
  });
});

interface Reached {
  readonly confidence: number;
  readonly coolings: readonly {
    readonly limits: readonly { readonly id: string; readonly power: { value: number } }[];
  }[];
}

test.each([
  ['a limiter on a temperature sets no power', ['--reach', '--limiter', 'die-limit'], /one of: package-limit/],
  ['a trip sets no power', ['--reach', '--limiter', 'controller-trip'], /one of: package-limit/],
  ['a step that is none', ['--reach', '--step', 'stacked-8'], /did you mean "stacked-9"/],
  ['a share beyond its ends', ['--reach', '--confidence', '1'], /from 0\.5 to 0\.999/],
  ['a limiter without --reach', ['--limiter', 'package-limit'], /--limiter[\s\S]*give --reach/],
  ['a confidence without --reach', ['--confidence', '0.9'], /--confidence[\s\S]*give --reach/],
  ['draws until accurate', ['--reach', '--samples', 'auto'], /leave out --samples/],
  ['a budget with it', ['--reach', '--budget', 'limits.skin'], /cannot be used with/],
])('%s is wrong usage', async (_, argv, said) => {
  let err = '';
  const exit = await runCommand(['plan', 'examples/mini-pc', ...argv], {
    out: () => {},
    err: (text) => {
      err += text;
    },
    debug: false,
  });
  expect(exit).toBe(2);
  expect(err).toMatch(said);
});
