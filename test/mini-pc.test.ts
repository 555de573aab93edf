import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assembleBoard, type BoardModel } from '../src/board/assemble.ts';
import { planStep } from '../src/steps/plan.ts';
import { readStudy } from '../src/study/read.ts';
import type { Study } from '../src/study/study.ts';

const file = 'examples/mini-pc/study.yaml';

function example(): Study {
  const reading = readStudy(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error('the example has faults');
  return reading.study;
}

const study = example();

/** The board at a step with some inputs changed: results by output id. */
function solved(stepId: string, changed: Record<string, number> = {}): (id: string) => number {
  const step = study.steps.find(({ id }) => id === stepId)!;
  const assembly = assembleBoard(step);
  if (!assembly.ok) throw new Error('the example has no board');
  const { board } = assembly;
  const x = startOf(board);
  for (const [id, value] of Object.entries(changed)) {
    const place = board.indexOfInput(id);
    if (place < 0) throw new Error(`no input ${id}`);
    x[place] = value;
  }
  const y = new Float64Array(board.outputs.length);
  expect(board.evaluate(x, y).ending).toBe('solved');
  return (id) => y[board.indexOfOutput(id)];
}

const startOf = (board: BoardModel) => Float64Array.from(board.inputs, ({ value }) => value);

/** A board that nothing but its demand holds, with a die that is kept cool: for looking at currents beyond the ladder. */
const unheld = {
  'limiters.package-limit.allowed': 1000,
  'limiters.die-limit.allowed-temperature': 500,
  'heat.ambient': 283.15,
};

/** The scale at which an output reaches a value, by halving: everything here rises with scale. */
function scaleWhere(output: string, wanted: number): (id: string) => number {
  let [low, high] = [0.1, 6];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (solved('stacked-9', { ...unheld, 'demand.scale': middle })(output) < wanted) low = middle;
    else high = middle;
  }
  return solved('stacked-9', { ...unheld, 'demand.scale': low });
}

describe('the ladder of the mini-PC', () => {
  test('four steps from the firmware’s 54 W to about 85 W of real power', () => {
    const real = study.steps.map((step) => planStep(study, step.id, { samples: 0, seed: 1 }).limiters[0].real.value);
    expect(real).toHaveLength(4);
    expect(real[0]).toBeGreaterThan(52);
    expect(real[0]).toBeLessThan(55);
    for (let i = 1; i < 4; i++) expect(real[i]).toBeGreaterThan(real[i - 1] + 5);
    expect(real[3]).toBeGreaterThan(80);
    expect(real[3]).toBeLessThan(90);
  });

  test('each step names its holder, has its margins sorted by the chance of exceeding, and lists open limits as open', () => {
    for (const { id } of study.steps) {
      const plan = planStep(study, id, { samples: 512, seed: 1 });
      expect(plan.operating?.holder).toBe('package-limit');
      const chances = plan.margins.map(({ exceed }) => exceed.value);
      expect(chances).toEqual([...chances].sort((a, b) => b - a));
      expect(plan.binding).toBe(plan.margins[0].id);
      expect(plan.open.map((open) => open.id)).toEqual([
        'parts.fuse.rated-current',
        'parts.core.rated-current',
        'heat.nodes.network.limit',
      ]);
    }
  });

  test('the embedded controller trips before 120 W: its margin shrinks at every step', () => {
    const margins = study.steps.map(({ id }) => solved(id)('limiters.controller-trip.margin'));
    for (let i = 1; i < 4; i++) expect(margins[i]).toBeLessThan(margins[i - 1]);
  });
});

// Common practice, no source: what people of the trade expect of such a board. The figures are their rules of thumb, not ours.
describe('facts of the trade on the example board (common practice, no source)', () => {
  test('a notebook’s or mini-PC’s external supply gives about 19 to 20 V', () => {
    for (const { id } of study.steps) {
      const volts = solved(id)('parts.adapter.voltage');
      expect(volts).toBeGreaterThan(19);
      expect(volts).toBeLessThan(20);
    }
  });

  test('core rails run at about 0.6 to 1.2 V', () => {
    for (const { id } of study.steps)
      for (const rail of ['core-vr', 'graphics-vr']) {
        expect(solved(id)(`parts.${rail}.voltage`)).toBeGreaterThan(0.6);
        expect(solved(id)(`parts.${rail}.voltage`)).toBeLessThan(1.2);
      }
  });

  test('a processor that draws about 100 W at its core needs on the order of 110 A', () => {
    const of = scaleWhere('parts.core.power', 100);
    expect(of('parts.core.power')).toBeCloseTo(100, 6);
    expect(of('parts.core.current')).toBeGreaterThan(95);
    expect(of('parts.core.current')).toBeLessThan(125);
  });

  test('a 30 A stage loaded with 20 A has 50 % headroom while its junction stays below 150 °C', () => {
    const of = scaleWhere('parts.core-vr.phase-current', 20);
    const load = of('parts.core-vr.phase-current');
    expect(load).toBeCloseTo(20, 6);
    expect(of('parts.core-vr.junction-temperature')).toBeLessThan(150 + 273.15);
    expect(of('parts.core-vr.stage.rated-current.margin') / load).toBeCloseTo(0.5, 6);
  });

  test('the headroom is gone where the junction reaches 150 °C', () => {
    const of = solved('stacked-9', {
      ...unheld,
      'demand.scale': 2.5,
      'heat.ambient': 273.15 + 95,
      'parts.core.leakage.power': 0,
    });
    expect(of('parts.core-vr.junction-temperature')).toBeGreaterThan(150 + 273.15);
    expect(of('parts.core-vr.stage.rated-current.limit')).toBe(0);
    expect(of('parts.core-vr.stage.junction-limit.margin')).toBeLessThan(0);
  });

  test('cooler regulators waste about a watt or two less, and the limiter hands it to the processor', () => {
    const loaded = {
      'demand.scale': 6,
      'limiters.package-limit.allowed': 80,
      'limiters.die-limit.allowed-temperature': 500,
    };
    const film = 'heat.links.stages-air.through.0.film.coefficient';
    const hot = solved('stacked-9', { ...loaded, [film]: 5 });
    const cool = solved('stacked-9', { ...loaded, [film]: 200 });
    expect(cool('heat.nodes.stages.temperature')).toBeLessThan(hot('heat.nodes.stages.temperature') - 30);
    const losses = (of: (id: string) => number) => of('parts.core-vr.loss') + of('parts.graphics-vr.loss');
    const saved = losses(hot) - losses(cool);
    expect(saved).toBeGreaterThan(0.5);
    expect(saved).toBeLessThan(2.5);
    // What flows past the limiter is the same but for the sense resistors' own temperature, so that the processor gets what the regulators no longer take.
    const flowed = cool('limiters.package-limit.real') - hot('limiters.package-limit.real');
    expect(Math.abs(flowed)).toBeLessThan(0.2);
    expect(cool('processor-power') - hot('processor-power')).toBeCloseTo(saved + flowed, 1);
  });
});
