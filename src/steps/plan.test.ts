import { describe, expect, test } from 'vitest';
import {
  load,
  lossless,
  package54,
  processor,
  regulator,
  rising,
  type Sketch,
  sense,
  sketchText,
  supply,
} from '../board/sketch.test-data.ts';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { budgetOfMargin } from './budget-of-margin.ts';
import { planStep } from './plan.ts';
import type { Dial } from './step-plan.ts';

const seed = 20_261_125;

function studyOf(sketch: Sketch) {
  const reading = readStudy(sketchText(sketch), 'edge.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.study;
}

const plan = (sketch: Sketch, samples = 0, dial?: Dial) => planStep(studyOf(sketch), 'as-is', { samples, seed, dial });
/** As a program gets it. */
const sent = (value: unknown) => JSON.parse(JSON.stringify(value));

/** 20 V, and a limit of one's own on the voltage of the adapter. */
const held = (limit: string, voltage = '20 V') => ({
  parts: [
    `  adapter: {kind: supply, voltage: ${voltage}, resistance: 0 ohm, efficiency: 1, heats: ambient, rated-power: none, rated-current: none, over-current: none}`,
    load('rest', 'adapter', 10, ', rated-current: none'),
  ],
  limits: `{mine: {of: parts.adapter.voltage, ${limit}, reason: a test}}`,
});
const margin = (sketch: Sketch, samples = 0) => plan(sketch, samples).margins[0];

describe('a margin', () => {
  test('counts from the limit to the value, or for a lower limit from the value down to it', () => {
    expect(margin(held('under: 21 V')).margin.value).toBeCloseTo(1, 12);
    expect(margin(held('over: 21 V')).margin.value).toBeCloseTo(-1, 12);
    expect(margin(held('under: 21 V')).share).toBeCloseTo(1 / 21, 12);
    expect(margin(held('over: 21 V'))).toMatchObject({ state: 'exceeded', exceed: { value: 1 } });
  });

  test('exactly met and exactly known is close, and not exceeded', () => {
    expect(margin(held('under: 20 V'))).toMatchObject({ state: 'close', exceed: { value: 0 } });
    expect(margin(held('over: 20 V'))).toMatchObject({ state: 'close', exceed: { value: 0 } });
  });

  test('value and limit have each their own uncertainty, the margin that of both', () => {
    // 0.3 V and 0.4 V are the legs of 0.5 V.
    const both = margin(held('under: 21 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)'));
    expect(both.value.u).toBeCloseTo(0.3, 9);
    expect(both.limit.u).toBeCloseTo(0.4, 9);
    expect(both.margin.u).toBeCloseTo(0.5, 9);
    expect(both.limit.text).toBe('21.00 V ± 0.40 V');
    // Φ(−2) = 0.022750 (Abramowitz & Stegun, table 26.1).
    expect(both.exceed.value).toBeCloseTo(0.02275, 5);
    expect(both).toMatchObject({ state: 'kept', interval: { level: 0.95 } });
    expect(both.interval.low.value).toBeCloseTo(1 - 1.96 * 0.5, 4);
    expect(margin(held('under: 20.9 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)')).state).toBe('close');
  });

  test('first order and Monte Carlo say the same of a straight line', () => {
    const sketch = held('under: 21 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)');
    const drawn = margin(sketch, 4096);
    expect(drawn.disagree).toBe(false);
    expect(drawn.exceed.value).toBeCloseTo(margin(sketch).exceed.value, 9);
  });

  test('drawn until accurate says how that ended, and what is accurate', () => {
    const sketch = held('under: 21 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)');
    const drawn = planStep(studyOf(sketch), 'as-is', { samples: 'auto', seed });
    const { samples, adaptive } = drawn.sampling!;
    expect(adaptive).toMatchObject({ ended: 'accurate', asked: ['limits.mine'], inaccurate: [] });
    expect(samples).toBe(adaptive!.blocks * 4096);
    expect(drawn.margins[0]).toMatchObject({ method: 'first-order', why: 'first order, as the draws confirm' });
    expect(plan(sketch, 4096).sampling!.adaptive).toBeNull();
  });

  test('a far margin has to be accurate only where there is no nearer one', () => {
    const asked = (limits: string) =>
      planStep(studyOf({ ...held('under: 21 V', '20 V ± 0.6 V (k=2)'), limits }), 'as-is', { samples: 'auto', seed })
        .sampling!.adaptive!.asked;
    const far = 'far: {of: parts.adapter.voltage, under: 100 V, reason: a test}';
    const near = 'near: {of: parts.adapter.voltage, under: 21 V, reason: a test}';
    expect(asked(`{${far}, ${near}}`)).toEqual(['limits.near']);
    expect(asked(`{${far}}`)).toEqual(['limits.far']);
  });

  test('from few readings has an interval with Student’s factor: t₀.₉₇₅(4) = 2.776', () => {
    // JCGM 100:2008, table G.2: 2.78.
    const few = margin(held('under: 21 V', '"20 V ± 0.3 V (k=1, 4 dof)"'));
    expect(few.degreesOfFreedom).toBeCloseTo(4, 9);
    expect((1 - few.interval.low.value) / 0.3).toBeCloseTo(2.776, 3);
    expect(margin(held('under: 21 V', '20 V ± 0.6 V (k=2)')).degreesOfFreedom).toBeNull();
  });

  test('a chance too small to be counted is a number with its error, not 0', () => {
    // Φ(−4.5) = 3.3977e-6 (Abramowitz & Stegun, table 26.2: −log₁₀ = 5.46882); in 4096 draws it isn't met once.
    const rare = margin(held('under: 22.25 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)'), 4096).exceed;
    expect(rare.text).toMatch(/^3\.[34]\d*e-6 ± 0\.\d+e-6$/);
    expect(Math.abs(rare.value - 3.3977e-6)).toBeLessThan(1.5 * rare.error);
    expect(rare.error).toBeLessThan(0.1 * rare.value);
    expect(margin(held('under: 40 V', '20 V ± 0.6 V (k=2)'), 4096).exceed.text).toBe('< 1e-9');
    expect(margin(held('under: 20.6 V', '19.5..20.5 V'), 4096).exceed.text).toBe('< 1e-9');
    expect(margin(held('under: 20.6 V'), 4096).exceed).toMatchObject({ value: 0, error: 0 });
  });

  test('of two that are never exceeded, the one nearer in standard uncertainties binds', () => {
    const sketch = held('under: 60 V', '20 V ± 0.6 V (k=2)');
    const both = plan({
      ...sketch,
      limits:
        '{far: {of: parts.adapter.voltage, under: 100 V, reason: a test}, near: {of: parts.adapter.voltage, under: 60 V, reason: a test}}',
    });
    expect(both.margins.map(({ id, exceed }) => [id, exceed.value])).toEqual([
      ['limits.near', 0],
      ['limits.far', 0],
    ]);
    expect(both.binding).toBe('limits.near');
  });

  test('its budget names each input with its part of the variance: 0.09 and 0.16 of 0.25', () => {
    const rows = budgetOfMargin(
      studyOf(held('under: 21 V ± 0.8 V (k=2)', '20 V ± 0.6 V (k=2)')),
      'as-is',
      'limits.mine',
    )!;
    expect(rows.slice(0, 2).map(({ input, share }) => [input, Number(share.toFixed(6))])).toEqual([
      ['limits.mine.under', 0.64],
      ['parts.adapter.voltage', 0.36],
    ]);
    expect(rows[0].contribution.value).toBeCloseTo(0.4, 9);
  });

  test('of a limit that has come down to nothing is no share of it', () => {
    // The rating falls to nothing at 30 °C; 10 W over 2 K/W leave the place at 45 °C.
    const derated = plan({
      parts: [
        supply('adapter', 20),
        '  wire: {kind: conductor, fed-by: adapter, resistance: 0 ohm, heats: spot, rated-current: 3 A, derating: {from: 20 degC, end: 30 degC}}',
        load('rest', 'wire', 10),
      ],
    }).margins.find(({ id }) => id === 'parts.wire.rated-current')!;
    expect(derated.limit.value).toBe(0);
    expect(derated.margin.value).toBeCloseTo(-0.5, 12);
    expect(derated.share).toBeNull();
  });
});

describe('a step without a solution', () => {
  const leaking = {
    parts: [
      supply('adapter', 20),
      sense('adapter'),
      processor('point', 100, ', leakage: {power: 30 W, at: 25 degC, e-fold: 10 K}'),
    ],
    limiters: package54(),
  };
  const unsolved = plan(leaking);

  test('says why, and has no numbers that could be taken for results', () => {
    expect(unsolved).toMatchObject({ ending: 'runaway', operating: null, solution: null, margins: [], binding: null });
    expect(unsolved.faults.map(({ code }) => code)).toEqual(['board/runaway']);
  });

  test('still says what its limiters allow, so that a dial has something to turn down', () => {
    const [limiter] = sent(unsolved).limiters;
    expect(limiter).toMatchObject({ id: 'package', holds: false, ratio: null, allowed: { value: 54, text: '54 W' } });
    expect(limiter.real).toEqual({ value: null, unit: 'W', u: null, text: 'no solution' });
    expect(limiter.reads).toEqual(limiter.real);
  });
});

describe('a board that does nothing', () => {
  test('has numbers for people and programs alike', () => {
    const idle = plan({
      parts: [supply('adapter', 20), sense('adapter'), processor('point', 0)],
      limiters: package54(),
    });
    expect(idle.solution!.imbalance).toBe(0);
    expect(idle.limiters[0].real.value).toBe(0);
    expect(sent(idle).limiters[0].ratio).toBeNull();
  });
});

describe('notes', () => {
  const on = (watts: number, curve = rising) =>
    plan({ parts: [supply('adapter', 20), regulator('adapter', 10, curve), processor('vr', watts)] }).notes;

  test('inside its loss curve a regulator needs none, to the very ends', () => {
    expect(on(100)).toEqual([]);
    expect(on(300)).toEqual([]);
    expect(on(500, lossless)).toEqual([]);
  });

  test('beyond its end, or below its beginning, the current and the point are named', () => {
    const [beyond] = on(350);
    expect(beyond).toMatchObject({ code: 'board/beyond-curve', severity: 'warning' });
    expect(sayFault(beyond).found).toContain('35 A');
    expect(sayFault(beyond).found).toContain('ends at 30 A');
    expect(on(300.1)).toHaveLength(1);
    expect(on(99.9)).toHaveLength(1);
    const [below] = on(50);
    expect(below).toMatchObject({ code: 'board/below-curve', severity: 'warning' });
    expect(sayFault(below).found).toContain('begins at 10 A');
  });

  test.each([
    ['efficiency: 1', 'efficiency: 0.98 ± 0.02 (k=1)', 'parts.adapter.efficiency', '1.04'],
    ['resistance: 0 ohm', 'resistance: 10 mohm ± 10 mohm (k=1)', 'parts.adapter.resistance', '-20 mΩ'],
    ['resistance: 0 ohm', 'resistance: 10 mohm ± 3 mohm (k=1)', null, ''],
    ['efficiency: 1', 'efficiency: 0.9..1', null, ''],
  ])('%s as %s: draws that can’t be are named', (before, after, input, end) => {
    const drawn = plan({ parts: [supply('adapter', 20).replace(before, after), load('rest', 'adapter', 10)] }, 64);
    expect(drawn.notes.map(({ code, data }) => [code, data.input, data.end])).toEqual(
      input === null ? [] : [['board/impossible-draws', input, end]],
    );
    expect(drawn.sampling!.failed > 0).toBe(input !== null);
  });
});

test('the dial sets the real power of one limiter, and the others stay', () => {
  const sketch = {
    parts: [supply('adapter', 20), sense('adapter', 5), processor('point', 200)],
    limiters: package54(),
  };
  // 10 mΩ assumed, 5 mΩ fitted: the limiter would let 108 W through.
  expect(plan(sketch).limiters[0]).toMatchObject({ holds: true, ratio: expect.closeTo(2, 9) });
  const [dialled] = plan(sketch, 0, { limiter: 'package', realPower: 80 }).limiters;
  expect(dialled.real.value).toBeCloseTo(80, 9);
  expect(dialled.reads.value).toBeCloseTo(40, 9);
});
