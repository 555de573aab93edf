import { describe, expect, test } from 'vitest';
import { load, processor, type Sketch, sketchText, supply } from '../board/sketch.test-data.ts';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import type { Kind } from './fit.ts';
import { planSense, type SensePlanning, type SenseRequest } from './plan-sense.ts';
import { readStock } from './stock.ts';

const sensePoint = (name: string, more = '') =>
  `  ${name}: {kind: sense, fed-by: adapter, heats: ambient, fitted: [{title: R1, resistance: 5 mohm, rated-power: 1 W}]${more}}`;
const read = (name: string, more = '') => `{sense: ${name}, assumed: 5 mohm${more}}`;
const limiter = (allowed: number, ...reads: string[]) =>
  `{package: {acts: regulate, takes: average, allowed: ${allowed} W, reads: [${reads.join(', ')}]}}`;

function step(sketch: Sketch) {
  const reading = readStudy(sketchText({ demand: '{scale: 20, crest: 1}', ...sketch }), 'board.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.study.steps[0];
}

/** Parts without joints, so that Ohm's law alone counts. */
function stock(resistors: string, chips = '') {
  const figures = 'tolerance: 1 %, temperature-coefficient: 50 ppm/K, rated-power: 3 W';
  const text = `stock: 1\njoint: 0 mohm\nkelvin: 0 mohm\nresistors: [{ values: [${resistors}], ${figures} }]\n${
    chips && `chips: [{ values: [${chips}], ${figures} }]\n`
  }`;
  const reading = readStock(text, 'stock.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.stock;
}

function request(targets: number[], kinds: Kind[] = ['stack'], more: Partial<SenseRequest> = {}): SenseRequest {
  return { limiter: 'package', targets, kinds, top: 1, meter: () => 0.1, ...more };
}

function firstOf(planning: SensePlanning) {
  if (!planning.ok) throw new Error(planning.faults.map((fault) => sayFault(fault).found).join('\n'));
  return planning.plan.options[0];
}

const saidOf = (planning: SensePlanning) =>
  planning.ok ? '' : planning.faults.map((fault) => sayFault(fault).found).join('\n');

const onePoint = (more = '', allowed = 60) =>
  step({
    parts: [supply('adapter', 20), sensePoint('point', more), processor('point', 20)],
    limiters: limiter(allowed, read('point')),
  });

describe('worked by hand: 5 mΩ, of which the firmware allows 60 W', () => {
  // Ohm's law: 5 ∥ 5 = 2.5, 5 ∥ 10 = 3.3333, 5 ∥ 3 = 1.875, 5 ∥ 100 = 4.7619 mΩ; real = 60 W · 5/R.
  test.each([
    ['5 mohm', 120],
    ['10 mohm', 90],
    ['3 mohm', 160],
    ['100 mohm', 63],
  ])('%s across it lets %d W pass, and its joint open 60 W again', (value, real) => {
    const [{ steps }] = [firstOf(planSense(onePoint(), stock(value), request([real])))];
    const [made] = steps;
    expect(Math.abs(made.real - real)).toBeLessThan(1e-6);
    expect(Math.abs(made.correction.factor - real / 60)).toBeLessThan(1e-9);
    const opens = made.failures.find(({ mode, isOriginal }) => mode === 'opens' && !isOriginal)!;
    expect(opens.direction).toBe('falls');
    expect(Math.abs(opens.real! - 60)).toBeLessThan(1e-6);
    // The original cracked: all of the current through the new one, 60 W · 5/R.
    const cracks = made.failures.find(({ mode, isOriginal }) => mode === 'opens' && isOriginal)!;
    expect(Math.abs(cracks.real! - (60 * 5) / Number.parseFloat(value))).toBeLessThan(1e-5);
    // Shorted, the reading is gone and the processor takes all it asks for: 20 · 20 W.
    const shorts = made.failures.filter(({ mode }) => mode === 'shorts');
    expect(shorts.map(({ holder, direction }) => [holder, direction])).toEqual([
      ['demand', 'rises'],
      ['demand', 'rises'],
    ]);
    for (const short of shorts) expect(Math.abs(short.real! - 400)).toBeLessThan(1e-4);
  });

  test('two of them, or one in its place', () => {
    // 5 ∥ 10 ∥ 10 = 2.5 mΩ: 120 W.
    const stacked = firstOf(planSense(onePoint(), stock('10 mohm'), request([120]))).steps[0];
    expect(stacked.work).toEqual({ soldered: 2, removed: 0 });
    expect(Math.abs(stacked.real - 120)).toBeLessThan(1e-6);
    // 4 mΩ in place of 5: 75 W; its joint is the only way.
    const replaced = firstOf(planSense(onePoint(), stock('4 mohm'), request([75], ['replace']))).steps[0];
    expect(replaced.work).toEqual({ soldered: 1, removed: 1 });
    expect(Math.abs(replaced.real - 75)).toBeLessThan(1e-6);
    expect(replaced.failures.map(({ mode, direction }) => [mode, direction])).toEqual([
      ['opens', 'off'],
      ['shorts', 'rises'],
    ]);
  });

  test('its interval: tolerances, coefficient and joints, each as its share of the current', () => {
    // 10 mΩ ± 1 % beside an exact 5 mΩ carries a third of the current: u(R)/R = (1/3)·1 %/√3, and the coefficient adds 50 ppm/K·5 K/√3 at 25 °C.
    const made = firstOf(planSense(onePoint(), stock('10 mohm'), request([90]))).steps[0];
    const part = Math.hypot(0.01, 50e-6 * 5) / Math.sqrt(3) / 3;
    expect(Math.abs(made.u / made.real / part - 1)).toBeLessThan(1e-6);
    // With joints of 0 to 1 mΩ: u = 1 mΩ/√12 beside 0.1 mΩ/√3 in 10.5 mΩ, which carry 5/15.5 of the current.
    const joined = firstOf(planSense(onePoint(), { ...stock('10 mohm'), joint: { low: 0, high: 1e-3 } }, request([88])))
      .steps[0];
    const branch = Math.hypot(0.1 / Math.sqrt(3), (10 * 50e-6 * 5) / Math.sqrt(3), 1 / Math.sqrt(12)) / 10.5;
    expect(Math.abs(joined.u / joined.real / ((5 / 15.5) * branch) - 1)).toBeLessThan(1e-6);
  });

  test('dissipation: I²R of its own share', () => {
    // 90 W at 20 V behind a lossless supply and 5 ∥ 10 mΩ: close to 4.5 A, of which 3 A in 5 mΩ and 1.5 A in 10 mΩ: 45 mW and 22.5 mW.
    const { dissipations } = firstOf(planSense(onePoint(), stock('10 mohm'), request([90]))).steps[0];
    expect(dissipations.map(({ part, rating }) => [part, rating])).toEqual([
      ['R1', 1],
      ['10 mΩ 1 %', 3],
    ]);
    expect(Math.abs(dissipations[0].power / 45e-3 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(dissipations[1].power / 22.5e-3 - 1)).toBeLessThan(2e-3);
  });

  test('the check at a low load reads less in the same ratio, and tells an open joint', () => {
    // 0.15 · 60 W = 9 W, read as 9 W · 3.3333/5 = 6 W; 2 · 0.1 W · 6/9 from the meter, and little from 10 mΩ ± 1 %.
    const { check } = firstOf(planSense(onePoint(), stock('10 mohm'), request([90]))).steps[0];
    expect(check!.real).toBe(9);
    expect(Math.abs(check!.reads - 6)).toBeLessThan(1e-9);
    expect(Math.abs(check!.before - 9)).toBeLessThan(1e-9);
    expect(
      Math.abs(check!.band - 2 * Math.hypot(0.1 * (6 / 9), (6 * Math.hypot(0.01, 50e-6 * 5)) / Math.sqrt(3) / 3)),
    ).toBeLessThan(1e-6);
    expect(check!.misses).toEqual([]);
    const blunt = firstOf(planSense(onePoint(), stock('100 mohm'), request([63], ['stack'], { meter: () => 3 })))
      .steps[0];
    expect(blunt.check!.misses.map(({ part, mode }) => [part, mode])).toContainEqual(['100 mΩ 1 %', 'opens']);
  });
});

describe('a divider across the sense filter', () => {
  // INA210 (SBOS437F, table 1): 5 kΩ inputs, 1250 Ω between them: gain 1000/(Rs + 1000); with Rs = 100 Ω 1000/1100.
  const ina210 = ', divider: {series: 100 ohm, parallel: 1250 ohm, input: 5 kohm}';

  test('the filter that is there already makes the limiter allow 1.1 times as much', () => {
    const planning = planSense(onePoint(ina210), stock('100 mohm', '1 kohm'), request([72], ['divider']));
    if (!planning.ok) throw new Error(saidOf(planning));
    expect(Math.abs(planning.plan.present - 66)).toBeLessThan(1e-6);
    // 1 kΩ beside the amplifier's 1250 ∥ 5000 = 1000 Ω is 500 Ω: gain 500/600, so that 72 W pass.
    const [made] = planning.plan.options[0].steps;
    expect(Math.abs(made.real - 72)).toBeLessThan(1e-6);
    expect(made.work).toEqual({ soldered: 1, removed: 0 });
    const across = made.failures.filter(({ part }) => part === '1 kΩ 1 %');
    expect(across.map(({ mode, direction }) => [mode, direction])).toEqual([
      ['opens', 'falls'],
      ['shorts', 'rises'],
    ]);
    expect(Math.abs(across[0].real! - 66)).toBeLessThan(1e-6);
    expect(across[1].holder).toBe('demand');
  });

  test.each([
    // The published factors at 10 Ω: INA212 0.98232, INA213 0.99157 (section 8.4.1, worked out from equation 1).
    ['1 kohm', 0.98232],
    ['20 kohm', 0.99157],
  ])('an amplifier of %s reads %d of what is there', (input, gain) => {
    const board = onePoint(`, divider: {series: 10 ohm, parallel: 1250 ohm, input: ${input}}`);
    const planning = planSense(board, stock('10 mohm'), request([90]));
    if (!planning.ok) throw new Error(saidOf(planning));
    expect(Math.abs(60 / planning.plan.present - gain)).toBeLessThan(5e-6);
  });

  test('without a filter in the study there are none, and that is said', () => {
    const said = saidOf(planSense(onePoint(), stock('10 mohm', '1 kohm'), request([72], ['divider'])));
    expect(said).toBe('dividers were asked for, and no sense point of package has its filter in the study');
  });
});

describe('several points and limiters', () => {
  const twoPoints = step({
    parts: [
      supply('adapter', 20),
      sensePoint('first'),
      sensePoint('second'),
      processor('first', 30),
      load('second-load', 'second', 10, ', follows: processor'),
      load('rest', 'second', 5),
    ],
    limiters: `{package: {acts: regulate, takes: average, allowed: 45 W, reads: [${read('first')}, ${read('second')}]}, board: {acts: trip, takes: average, allowed: 80 W, reads: [${read('first')}, ${read('second')}]}}`,
  });

  test('each point with its share of the power, by the general solution', () => {
    // At scale s: 30·s flows past the first, 10·s + 5 past the second. 10 mΩ on the first: 20·s + 10·s + 5 = 45, s = 4/3, 40 + 13.333 + 5 W.
    const made = firstOf(planSense(twoPoints, stock('10 mohm'), request([58.3]))).steps[0];
    expect(made.changes.map(({ at }) => at)).toEqual(['parts.first.fitted.1']);
    expect(Math.abs(made.real - (40 + 40 / 3 + 5))).toBeLessThan(1e-6);
    expect(made.corrections.map(({ factor }) => factor.toFixed(9))).toEqual(['1.500000000', '1.000000000']);
    // R1 of the second shorted: 20·s = 45.
    const short = made.failures.find(({ sense, mode }) => sense === 'second' && mode === 'shorts')!;
    expect(Math.abs(short.real! - (40 * 2.25 + 5))).toBeLessThan(1e-5);
    // It then passes the trip at 80 W, which reads the same points: 20·2.25 + 0 W, so no.
    expect(short.passed).toEqual([]);
  });

  test('what another limiter reads of the same points changes with them', () => {
    const { others } = firstOf(planSense(twoPoints, stock('10 mohm'), request([58.3]))).steps[0];
    const [other] = others;
    expect(others.map(({ id, acts }) => [id, acts])).toEqual([['board', 'trip']]);
    // 58.333 W real: without the change it reads them as they are, with it 45 W. It trips at 20·s + 10·s + 5 = 80, s = 2.5: 105 W instead of 80 W.
    expect(Math.abs(other.before! - 175 / 3)).toBeLessThan(1e-6);
    expect(Math.abs(other.after! - 45)).toBeLessThan(1e-6);
    expect(Math.abs(other.actedAt! - 80)).toBeLessThan(1e-6);
    expect(Math.abs(other.actsAt! - 105)).toBeLessThan(1e-6);
  });

  test('later steps only add', () => {
    const { steps } = firstOf(
      planSense(twoPoints, stock('5 mohm, 8 mohm, 10 mohm, 15 mohm, 22 mohm, 33 mohm, 47 mohm'), request([52, 60, 70])),
    );
    expect(steps).toHaveLength(3);
    for (const { work, error } of steps) {
      expect(work.removed).toBe(0);
      expect(Math.abs(error)).toBeLessThan(0.02);
    }
  });
});

describe('a single failure that lifts real power over a trip or a rating is marked', () => {
  test('the rating of the load behind the point', () => {
    const board = step({
      parts: [supply('adapter', 20), sensePoint('point'), processor('point', 20, ', rated-current: 10 A')],
      limiters: limiter(60, read('point')),
    });
    const { failures } = firstOf(planSense(board, stock('10 mohm'), request([90]))).steps[0];
    expect(failures.map(({ mode, passed }) => [mode, passed.includes('parts.core.rated-current')])).toEqual([
      ['opens', false],
      ['shorts', true],
      ['opens', false],
      ['shorts', true],
    ]);
  });
});

describe('refused, with the reason', () => {
  const board = onePoint();
  test.each([
    [
      'an unknown limiter',
      request([90], ['stack'], { limiter: 'pakage' }),
      '"pakage" is no limiter that reads power on this board',
    ],
    ['far more than it could ever be', request([450]), 'nothing in the stock brings package within 10 % of 450 W'],
    ['nothing near it', request([300]), 'nothing in the stock brings package within 10 % of 300 W'],
    ['none of the kinds', request([90], ['divider']), 'dividers were asked for'],
  ])('%s', (_, asked, says) => {
    const planning = planSense(board, stock('10 mohm'), asked);
    expect(planning.ok).toBe(false);
    expect(saidOf(planning)).toContain(says);
    expect(saidOf(planning)).not.toMatch(/undefined|NaN/);
  });

  test('beyond the supply: its rating, or all that its resistance lets through', () => {
    const parts = (adapter: string) => [adapter, sensePoint('point'), processor('point', 20)];
    const limiters = limiter(60, read('point'));
    const rated = supply('adapter', 20).replace('efficiency', 'rated-power: 100 W, efficiency');
    expect(saidOf(planSense(step({ parts: parts(rated), limiters }), stock('5 mohm'), request([120])))).toBe(
      'target 120 W is beyond the supply: all supplies together give 100 W at most',
    );
    // 20²/(4 · 0.9 Ω) = 111 W.
    const weak = supply('adapter', 20, '900 mohm');
    expect(saidOf(planSense(step({ parts: parts(weak), limiters }), stock('5 mohm'), request([120])))).toContain(
      'give 111.1 W at most',
    );
    const amps = supply('adapter', 20).replace('efficiency', 'rated-current: 5 A, efficiency');
    expect(saidOf(planSense(step({ parts: parts(amps), limiters }), stock('5 mohm'), request([120])))).toContain(
      'rated current would be',
    );
  });

  test('below idle', () => {
    const idle = step({
      parts: [supply('adapter', 20), sensePoint('point'), processor('point', 20), load('rest', 'point', 10)],
      limiters: limiter(60, read('point')),
    });
    expect(saidOf(planSense(idle, stock('5 mohm'), request([8])))).toBe(
      'target 8 W is below what flows past package anyway, whatever the processor does',
    );
  });

  test('a stock of which nothing can be used, as every part would be beyond its rating', () => {
    const tiny = {
      ...stock('10 mohm'),
      resistors: stock('10 mohm').resistors.map((part) => ({ ...part, ratedPower: 1e-3 })),
    };
    expect(saidOf(planSense(board, tiny, request([90])))).toContain(
      'no value of the stock can be used at any sense point of package',
    );
  });

  test('a target below the present limit is a derating, and allowed', () => {
    const made = firstOf(planSense(board, stock('10 mohm'), request([30], ['replace']))).steps[0];
    expect(Math.abs(made.real - 30)).toBeLessThan(1e-6);
  });
});
