import { describe, expect, test } from 'vitest';
import { randomStream } from '../numeric/random.ts';
import { type Departures, noDepartures } from './departures.ts';
import { drawHidden, type HiddenValues } from './hidden.ts';
import type { Planted } from './planted.ts';
import { sketch } from './sketch.test-data.ts';
import { VirtualBoard } from './virtual-board.ts';

const stated: HiddenValues = new Map();

function boardOf(study = sketch(), faults: readonly Planted[] = [], departures: Departures = noDepartures) {
  return new VirtualBoard(study.steps[0], { hidden: stated, departures, faults, seed: 1 });
}

function steady(...given: Parameters<typeof boardOf>): ReadonlyMap<string, number> {
  const board = boardOf(...given);
  expect(board.settle()).toBe(true);
  return board.outputs;
}

describe('a steady virtual board', () => {
  const outputs = steady();
  const of = (id: string) => outputs.get(id)!;

  test('is held at what its limiter allows', () => {
    expect(of('limiters.package.reads')).toBeCloseTo(50, 8);
    expect(of('limiters.package.real')).toBeCloseTo(50, 8);
  });

  test('lets out all the heat that goes in', () => {
    const through =
      (of('heat.nodes.sink.temperature') - 298.15) * 40 * 0.05 + (of('heat.nodes.board.temperature') - 298.15) / 2;
    const lost = of('parts.core.loss') + of('parts.vr.loss') + of('parts.point.loss');
    expect(through).toBeCloseTo(lost, 6);
    expect(of('wall-power')).toBeCloseTo(lost + of('parts.adapter.loss'), 6);
  });

  test('obeys Ohm and the divider of heat by hand', () => {
    const power = of('parts.core.loss');
    expect(of('heat.nodes.die.temperature') - of('heat.nodes.sink.temperature')).toBeCloseTo(0.3 * power, 6);
    expect(of('heat.nodes.sink.temperature') - 298.15).toBeCloseTo(power / (40 * 0.05), 6);
    expect(of('parts.adapter.voltage')).toBeCloseTo(19 - 0.02 * of('parts.adapter.current'), 9);
  });

  test('comes to the same by living through time', () => {
    const board = boardOf();
    for (let second = 0; second < 20_000; second += 5) board.advance(5);
    for (const [id, value] of outputs) expect(board.outputs.get(id), id).toBeCloseTo(value, 4);
  });
});

describe('a warming virtual board', () => {
  test('warms without passing its steady state, and its cells follow', () => {
    const end = steady().get('heat.nodes.die.temperature')!;
    const board = boardOf();
    let before = 0;
    for (let second = 0; second < 600; second++) {
      board.advance(1);
      const now = board.outputs.get('heat.nodes.die.temperature')!;
      expect(now).toBeGreaterThanOrEqual(before - 1e-9);
      expect(now).toBeLessThan(end + 0.5);
      before = now;
    }
    expect(before).toBeGreaterThan(305);
  });

  test('switches itself off at a trip, and cools', () => {
    const board = boardOf(sketch(40));
    for (let second = 0; second < 60 && board.state === 'running'; second++) board.advance(1);
    expect(board.state).toBe('tripped');
    board.advance(1);
    expect(board.outputs.get('limiters.package.real')).toBe(0);
    const warm = board.outputs.get('heat.nodes.die.temperature')!;
    for (let second = 0; second < 3000; second++) board.advance(1);
    expect(board.outputs.get('heat.nodes.die.temperature')).toBeLessThan(warm);
    expect(board.outputs.get('heat.nodes.die.temperature')).toBeCloseTo(298.15, 1);
  });
});

describe('planted faults and departures', () => {
  const sound = steady();
  const rise = (outputs: ReadonlyMap<string, number>, node: string) =>
    outputs.get(`heat.nodes.${node}.temperature`)! - 298.15;

  test('a detached pad has a tenth of its conductance', () => {
    const outputs = steady(sketch(), [{ kind: 'detached-pad', link: 'die-sink' }]);
    const power = outputs.get('parts.core.loss')!;
    expect(rise(outputs, 'die') - rise(outputs, 'sink')).toBeCloseTo(3 * power, 6);
  });

  test('a sense resistor a tenth too large lets a tenth less through', () => {
    const outputs = steady(sketch(), [{ kind: 'wrong-sense', part: 'point', factor: 1.1 }]);
    expect(outputs.get('limiters.package.real')).toBeCloseTo(50 / 1.1, 6);
  });

  test('with a dead phase the others carry its share', () => {
    const outputs = steady(sketch(), [{ kind: 'dead-phase', part: 'vr' }]);
    const perAmpere = (each: ReadonlyMap<string, number>) =>
      each.get('parts.vr.phase-current')! / each.get('parts.core.current')!;
    expect(perAmpere(outputs) / perAmpere(sound)).toBeCloseTo(4 / 3, 9);
    expect(outputs.get('parts.vr.loss')).toBeGreaterThan(sound.get('parts.vr.loss')!);
  });

  test('a film that grows with its rise leaves the rise of 25 K as it is', () => {
    const outputs = steady(sketch(), [], { ...noDepartures, filmExponent: 0.2 });
    // h·(ΔT/25 K)^0.2·A·ΔT = P.
    const power = outputs.get('parts.core.loss')!;
    const here = rise(outputs, 'sink');
    expect(40 * (here / 25) ** 0.2 * 0.05 * here).toBeCloseTo(power, 5);
  });
});

test('what is hidden is drawn from what is stated, and the same at every look', () => {
  const study = sketch();
  const draws = Array.from({ length: 2000 }, (_, seed) => drawHidden(study, randomStream(seed)));
  const ambient = draws.map((hidden) => hidden.get('heat.ambient')!);
  const resistance = draws.map((hidden) => hidden.get('parts.point.fitted.0.resistance')!);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(mean(ambient)).toBeCloseTo(298.15, 0);
  expect(Math.min(...ambient)).toBeGreaterThan(296.149);
  expect(Math.max(...resistance)).toBeLessThan(0.00505001);
  expect(Math.max(...resistance)).toBeGreaterThan(0.005045);
  expect(drawHidden(study, randomStream(5))).toEqual(drawHidden(study, randomStream(5)));
});
