import { describe, expect, test } from 'vitest';
import { package54, processor, sense, sketchText, supply } from '../board/sketch.test-data.ts';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { planStep } from './plan.ts';
import { type ReachOptions, reachOf } from './reach.ts';

/** One-sided 95 % of a normal distribution, the two-sided 90 % of JCGM 100:2008, table G.1. */
const k95 = 1.645;

interface Sketch {
  readonly limits?: string;
  /** Limit of the one place, and its way to ambient. */
  readonly spot?: string;
  readonly out?: string;
  readonly limiters?: string;
  readonly core?: string;
  readonly steps?: string;
}

/** A processor of up to 100 W on one place: spot = 25 °C + R·P. */
function studyOf({ limits, spot = 'none', out = '2 K/W', limiters = package54(), core = '', steps }: Sketch) {
  const text = sketchText({
    parts: [
      `${supply('adapter', 20)}, rated-power: none, rated-current: none, over-current: none`
        .replace('ambient},', 'ambient,')
        .concat('}'),
      sense('adapter'),
      processor('point', 100, `, rated-current: none${core}`),
    ],
    limiters,
    limits,
    heat: `{ambient: 25 degC, nodes: {spot: {limit: ${spot}}}, links: {out: {between: [spot, ambient], through: [{resistance: ${out}}]}}}`,
  }).replace('steps: [{id: as-is}]', `steps: [{id: as-is}${steps ? `, ${steps}` : ''}]`);
  const reading = readStudy(text, 'reach.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.study;
}

const usual: ReachOptions = { confidence: 0.95, samples: 2048, seed: 5 };

function reach(sketch: Sketch, options: Partial<ReachOptions> = {}, step = 'as-is') {
  const result = reachOf(studyOf(sketch), step, { ...usual, ...options });
  if (!result.ok) throw new Error(result.faults.map((fault) => sayFault(fault).found).join('\n'));
  return result.reach;
}

const limitsOf = (sketch: Sketch, options: Partial<ReachOptions> = {}) => reach(sketch, options).coolings[0].limits;

describe('the power that a limit allows with 95 %', () => {
  test('on the power itself: 60 W less 1.645 of its 3 W', () => {
    const [mine] = limitsOf({ limits: '{mine: {of: limiters.package.real, under: 60 W ± 6 W (k=2), reason: a test}}' });
    expect(mine).toMatchObject({ id: 'limits.mine', ending: 'binds', method: 'first-order', falls: true });
    expect(mine.power!.value).toBeCloseTo(60 - k95 * 3, 2);
    expect(mine.best!.value).toBeCloseTo(60, 4);
    expect(mine.best!.u).toBeCloseTo(3, 3);
  });

  test('on a temperature: 85 °C ± 5 K, 25 °C and 2 K/W leave 30 W, less 1.645 · 5 K over 2 K/W', () => {
    const [place] = limitsOf({ spot: '85 degC ± 10 K (k=2)' });
    expect(place.power!.value).toBeCloseTo(30 - (k95 * 5) / 2, 2);
    expect(place.best!.value).toBeCloseTo(30, 4);
  });

  test('of readings as few as five, with Student’s one-sided factor 2.132', () => {
    // JCGM 100:2008, table G.2: t for 90 % two-sided and 4 degrees of freedom, 2.13.
    const [few] = limitsOf(
      { limits: '{mine: {of: limiters.package.real, under: "60 W ± 3 W (k=1, 4 dof)", reason: a test}}' },
      { samples: 0 },
    );
    expect((60 - few.power!.value) / 3).toBeCloseTo(2.132, 3);
  });

  test('where the board bends, by draws: a factor e^±0.5 on the resistance is one on the power', () => {
    // ln R is normal with sigma, so that P = 60 K/R is passed by 5 % below 60/(2·e^(1.645·sigma)).
    const [bent] = limitsOf({ spot: '85 degC', out: '2 K/W ~ 60 %' });
    const sigma = Math.sqrt(Math.log(1 + 0.6 ** 2));
    expect(bent.method).toBe('monte-carlo');
    expect(bent.power!.value / (60 / (2 * Math.exp(k95 * sigma)))).toBeCloseTo(1, 2);
    const [straight] = limitsOf({ spot: '85 degC', out: '2 K/W ~ 60 %' }, { samples: 0 });
    expect(straight.method).toBe('first-order');
    expect(straight.power!.value).not.toBeCloseTo(bent.power!.value, 0);
  });

  test('with other confidences: 50 % is the best value, more confidence allows less', () => {
    const limits = '{mine: {of: limiters.package.real, under: 60 W ± 6 W (k=2), reason: a test}}';
    const at = (confidence: number) => limitsOf({ limits }, { confidence })[0].power!.value;
    expect(at(0.5)).toBeCloseTo(60, 6);
    // Abramowitz & Stegun, table 26.1: Φ(2) = 0.97725.
    expect(at(0.97725)).toBeCloseTo(54, 2);
    expect(at(0.99)).toBeLessThan(at(0.97725));
  });

  test.each([
    ['first order', { spot: '85 degC ± 10 K (k=2)', out: '2 K/W ± 5 %' }],
    ['draws', { spot: '85 degC ± 10 K (k=2)', out: '2 K/W ~ 60 %' }],
  ])('by %s, a plan dialled to it passes the limit in one draw of twenty', (_, sketch) => {
    const [{ power }] = limitsOf(sketch);
    const plan = planStep(studyOf(sketch), 'as-is', {
      samples: 20_000,
      seed: 11,
      dial: { limiter: 'package', realPower: power!.value },
    });
    expect(plan.margins[0].exceed.value).toBeGreaterThan(0.045);
    expect(plan.margins[0].exceed.value).toBeLessThan(0.055);
  });
});

describe('the map of what binds', () => {
  const map = {
    spot: '85 degC',
    out: '2 K/W ± 1 %',
    limits:
      '{third: {of: limiters.package.real, under: 80 W, reason: a test}, second: {of: limiters.package.real, under: 60 W, reason: a test}, far: {of: limiters.package.real, under: 130 W, reason: a test}, unknown: {of: parts.adapter.current, under: open, reason: a test}}',
  };

  test('is in order, ends with what doesn’t bind before the load asks for no more, and lists what is unknown', () => {
    const [{ limits, open, range }] = reach(map).coolings;
    expect(limits.map(({ id, ending }) => [id, ending])).toEqual([
      ['heat.nodes.spot.limit', 'binds'],
      ['limits.second', 'binds'],
      ['limits.third', 'binds'],
      ['limits.far', 'kept'],
    ]);
    expect(limits[3]).toMatchObject({ power: null, best: null, lifting: null });
    expect(range!.end).toBe('demand');
    expect(range!.high.value).toBeCloseTo(100, 6);
    expect(open.map(({ id }) => id)).toEqual(['limits.unknown']);
  });

  test('says what lifts a limit to where the next one binds: half the resistance gives twice the power', () => {
    const [{ lifting }] = limitsOf(map);
    expect(lifting!.target.value).toBeCloseTo(60, 3);
    const [{ input, from, to }] = lifting!.byOneOf;
    expect(input).toBe('heat.links.out.through.0.resistance');
    expect(from.value).toBe(2);
    // R·60 W + 1.645·u(60 W) = 60 K, with u = 60 W · 0.02 K/W/√3.
    expect(to.value).toBeCloseTo((60 - (k95 * 60 * 0.02) / Math.sqrt(3)) / 60, 3);
    expect(lifting!.lacks.value).toBeCloseTo(60 * (2 - to.value), 2);
  });

  test('a rating is not a thing to be lifted', () => {
    const limits = '{mine: {of: limiters.package.real, under: 60 W ± 6 W (k=2), reason: a test}}';
    expect(limitsOf({ limits })[0].lifting!.byOneOf).toEqual([]);
  });

  test('a lower limit that more power meets is passed at the lowest power, and said not to fall', () => {
    const [mine] = limitsOf({ limits: '{mine: {of: limiters.package.real, over: 50 W, reason: a test}}' });
    expect(mine).toMatchObject({ ending: 'nowhere', falls: false, power: null });
  });

  test('a limiter on a temperature stands among the limits, where it would hold', () => {
    const hot = 'hot: {acts: regulate, allowed-temperature: 65 degC, node: spot}';
    const [held] = limitsOf({ limiters: package54().replace(/}$/, `, ${hot}}`), spot: '85 degC' });
    expect(held.id).toBe('limiters.hot');
    expect(held.power!.value).toBeCloseTo(20, 4);
    expect(held.consequence).toMatch(/gives way/);
  });

  test('ends where the heat runs away: leakage of 1 W·e^(ΔT/20 K) on 2 K/W leaves at most 20 K · ln 10 / 2 K/W', () => {
    const [{ range, limits }] = reach({
      spot: '65 degC',
      core: ', leakage: {power: 1 W, at: 25 degC, e-fold: 20 K}',
    }).coolings;
    expect(range!.end).toBe('runaway');
    expect(range!.high.value).toBeCloseTo((20 * Math.log(10)) / 2, 2);
    expect(limits[0].power!.value).toBeCloseTo(20, 2);
  });

  test('where some draws run away, it says up to where there is an operating point', () => {
    const leaking: Sketch = { out: '2 K/W ± 10 %', core: ', leakage: {power: 1 W, at: 25 degC, e-fold: 20 K}' };
    const [{ range, settles }] = reach(leaking, { samples: 256 }).coolings;
    expect(settles!.value).toBeLessThan(range!.high.value);
    expect(reach(leaking, { samples: 0 }).coolings[0].settles).toBeNull();
  });
});

describe('coolings', () => {
  const steps =
    '{id: louder, changes: [{at: demand.crest, becomes: 1.2}]}, {id: cooled, changes: [{at: heat.links.out.through.0.resistance, becomes: 1 K/W ± 1 %}]}';
  const two = { spot: '85 degC', out: '2 K/W ± 1 %', steps };

  test('each heat path of the study once, with the power path of the step', () => {
    const { coolings } = reach(two, {}, 'cooled');
    expect(coolings.map(({ cooling, own }) => [cooling.steps, own])).toEqual([
      [['as-is', 'louder'], false],
      [['cooled'], true],
    ]);
    expect(coolings[1].cooling.changed).toEqual(['heat.links.out.through.0.resistance']);
    expect(coolings.map(({ limits }) => Math.round(limits[0].best!.value))).toEqual([30, 60]);
  });

  test('a step to come that changes what makes a limit bind is named', () => {
    const [before, after] = reach(two, {}, 'cooled').coolings;
    expect(before.limits[0].lifting!.steps).toEqual([
      { step: 'cooled', inputs: ['heat.links.out.through.0.resistance'] },
    ]);
    expect(after.limits[0].lifting!.steps).toEqual([]);
  });

  test('a heat path without one of the step’s places is refused, the others are told', () => {
    const wider = `{id: wider, changes: [{at: heat.nodes.rest, becomes: {limit: none}}, {at: heat.links.rest, becomes: {between: [rest, ambient], through: [{resistance: 1 K/W}]}}]}`;
    const { coolings } = reach({ spot: '85 degC', steps: wider }, {}, 'wider');
    expect(coolings[0].faults.map(({ code, data }) => [code, data.missing])).toEqual([
      ['reach/other-places', ['rest']],
    ]);
    expect(coolings[1].limits[0].best!.value).toBeCloseTo(30, 4);
  });
});

describe('the limiter', () => {
  const limiters = `{package: {acts: regulate, takes: average, allowed: 20 W, reads: [{sense: point, assumed: 10 mohm}]}, wide: {acts: regulate, takes: average, allowed: 40 W, reads: [{sense: point, assumed: 10 mohm}]}, off: {acts: trip, takes: average, allowed: 90 W, reads: [{sense: point, assumed: 10 mohm}]}, hot: {acts: regulate, allowed-temperature: 200 degC, node: spot}}`;
  const refusal = (wanted: string) => {
    const result = reachOf(studyOf({ limiters }), 'as-is', { ...usual, limiter: wanted });
    return result.ok ? [] : result.faults;
  };

  test('is the one that holds, or the one that is named', () => {
    expect(reach({ limiters }).limiter.id).toBe('package');
    expect(reach({ limiters }).present!.value).toBeCloseTo(20, 6);
    expect(reach({ limiters }, { limiter: 'wide' }).limiter.id).toBe('wide');
  });

  test.each(['hot', 'off', 'none'])('%s sets no power, and those that do are named', (wanted) => {
    const [fault] = refusal(wanted);
    expect(fault).toMatchObject({ code: 'reach/no-such-limiter', data: { known: ['package', 'wide'] } });
  });

  test('a board without any is refused', () => {
    const result = reachOf(studyOf({ limiters: '{}' }), 'as-is', usual);
    expect(!result.ok && result.faults[0].code).toBe('reach/no-power-limiter');
  });

  test('is the nearest to holding where a temperature holds', () => {
    const cold = limiters.replace('200 degC', '40 degC');
    expect(reach({ limiters: cold }).limiter.id).toBe('package');
    expect(reach({ limiters: cold }).coolings[0].limits[0]).toMatchObject({ id: 'limiters.hot' });
  });
});
