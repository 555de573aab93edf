import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import type { Step } from '../study/study.ts';
import { assembleBoard, type BoardModel } from './assemble.ts';
import { type RandomBoard, randomBoard, studyText } from './random-board.test-data.ts';

const plain: RandomBoard = {
  supply: { volts: 19.5, milliohms: 20, efficiency: 0.9 },
  cable: 10,
  sense: [5],
  assumed: 5,
  phases: 4,
  rail: { volts: 0.9, exponent: 0.33, watts: 30, leakage: 0 },
  byCurve: false,
  constant: [4],
  allowed: 40,
  ambient: 25,
  die: 0.2,
  sink: 0.2,
  stage: 4,
  flow: 15,
  demand: 20,
};

function stepOf(text: string): Step {
  const reading = readStudy(text, 'board.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.study.steps[0];
}

function boardOf(board: RandomBoard, edit: (text: string) => string = (text) => text): BoardModel {
  const assembly = assembleBoard(stepOf(edit(studyText(board))));
  if (!assembly.ok) throw new Error(assembly.faults.map((fault) => sayFault(fault).found).join('\n'));
  return assembly.board;
}

function evaluate(model: BoardModel, changed: Record<string, number> = {}) {
  const x = Float64Array.from(model.inputs, ({ id, value }) => changed[id] ?? value);
  const y = new Float64Array(model.outputs.length);
  const status = { ...model.evaluate(x, y) };
  return { status, y, holder: model.holder, of: (id: string) => y[model.indexOfOutput(id)] };
}

describe('the operating point', () => {
  test('the limiter holds where the demand is above it, the demand where it is below', () => {
    expect(evaluate(boardOf(plain)).holder).toBe('package');
    const { holder, of } = evaluate(boardOf({ ...plain, demand: 0.5 }));
    expect(holder).toBe('demand');
    expect(of('scale')).toBe(0.5);
    expect(of('parts.core.power')).toBeCloseTo(15, 9);
  });

  test('a temperature limiter holds its node at the allowed temperature', () => {
    const hot = boardOf({ ...plain, allowed: 1000 }, (text) =>
      text.replace('limiters:\n', 'limiters:\n  throttle: {acts: regulate, allowed-temperature: 60 degC, node: die}\n'),
    );
    const { holder, of } = evaluate(hot);
    expect(holder).toBe('throttle');
    expect(of('heat.nodes.die.temperature')).toBeCloseTo(333.15, 8);
  });

  test('the dial sets the real power at a limiter, whatever it reads', () => {
    const step = stepOf(studyText({ ...plain, sense: [5, 22] }));
    const realPower = { kind: 'power', value: 33, unit: 'W', spread: null, text: '33 W' } as const;
    const assembly = assembleBoard(step, { limiter: 'package', realPower });
    if (!assembly.ok) throw new Error('no board');
    const { of } = evaluate(assembly.board);
    expect(of('limiters.package.real')).toBeCloseTo(33, 8);
    expect(of('limiters.package.reads')).toBeCloseTo((33 * ((5 * 22) / 27)) / 5, 8);
  });

  test('a dial on a limiter that reads no power is refused by name', () => {
    const realPower = { kind: 'power', value: 33, unit: 'W', spread: null, text: '33 W' } as const;
    const assembly = assembleBoard(stepOf(studyText(plain)), { limiter: 'nobody', realPower });
    expect(assembly.ok).toBe(false);
    if (!assembly.ok) expect(assembly.faults[0].code).toBe('board/no-such-limiter');
  });

  test('from a start nearby and from the cold board the same solution is found', () => {
    fc.assert(
      fc.property(randomBoard, fc.double({ min: 0.7, max: 1.4, noNaN: true }), (drawn, ratio) => {
        const near = boardOf(drawn);
        const moved = evaluate(near, {
          'limiters.package.allowed': drawn.allowed * ratio,
          'heat.ambient': drawn.ambient + 278.15,
        });
        const cold = evaluate(boardOf({ ...drawn, allowed: drawn.allowed * ratio, ambient: drawn.ambient + 5 }));
        expect(moved.status.ending).toBe(cold.status.ending);
        if (moved.status.ending !== 'solved') return;
        for (const [i, value] of moved.y.entries())
          expect(Math.abs(value - cold.y[i])).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(value)));
      }),
      { numRuns: 60, seed: 20261125 },
    );
  });

  test('an evaluation leaves nothing behind: the same numbers give the same bits', () => {
    const model = boardOf(plain);
    const first = evaluate(model).y.slice();
    evaluate(model, { 'heat.ambient': 320 });
    expect(evaluate(model).y).toEqual(first);
  });
});

describe('no operating point is a result, not a number', () => {
  const leaky = (watts: number) => ({
    ...plain,
    allowed: 1e6,
    demand: 1,
    rail: { ...plain.rail, leakage: watts },
    die: 2,
  });

  test('leakage that grows faster than its heat leaves is a runaway', () => {
    const { status, y } = evaluate(boardOf(leaky(30)));
    expect(status.ending).toBe('runaway');
    expect(y.every(Number.isNaN)).toBe(true);
  });

  test('a loop gain grows with leakage towards 1 and is never reported at or above it', () => {
    let last = 0;
    let runaway = false;
    for (let watts = 0.5; watts < 40; watts *= 1.3) {
      const { status, of } = evaluate(boardOf(leaky(watts)));
      if (status.ending === 'runaway') runaway = true;
      else {
        expect(runaway).toBe(false);
        expect(of('loop-gain')).toBeGreaterThan(last);
        expect(of('loop-gain')).toBeLessThan(1);
        last = of('loop-gain');
      }
    }
    expect(runaway).toBe(true);
  });

  // Closed form: P = U²/(4·R) is the most that a source of voltage U and resistance R can give.
  test.each([
    [0.99, 'solved'],
    [1.01, 'infeasible'],
  ])('a load of %d of the most a supply can give is %s', (share, ending) => {
    const most = 12 ** 2 / (4 * 0.5);
    const step = stepOf(`uprate: 1
title: a source and a load
demand: {scale: 1, crest: 1}
parts:
  source: {kind: supply, voltage: 12 V, resistance: 0.5 ohm, efficiency: 1, heats: ambient}
  load: {kind: load, fed-by: source, follows: processor, power: ${share * most} W, heats: ambient}
limiters: {}
heat: {ambient: 25 degC, nodes: {air: {}}, links: {out: {between: [air, ambient], through: [{resistance: 1 K/W}]}}}
steps: [{id: as-is}]
`);
    const assembly = assembleBoard(step);
    if (!assembly.ok) throw new Error('no board');
    expect(evaluate(assembly.board).status.ending).toBe(ending);
  });

  test('a limiter that even an idle processor exceeds leaves no operating point', () => {
    const busy = boardOf(plain, (text) =>
      text.replace('limiters:\n', 'limiters:\n  throttle: {acts: regulate, allowed-temperature: 20 degC, node: die}\n'),
    );
    expect(evaluate(busy).status.ending).toBe('infeasible');
  });
});

describe('limits', () => {
  test('a rating that is left out or open is an open limit; none is no limit', () => {
    const model = boardOf(plain, (text) =>
      text
        .replace(', rated-power: 1 W', '')
        .replace('limit: 110 degC', 'limit: open')
        .replace('rated-current: 200 A', 'rated-current: none'),
    );
    expect(model.open.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['parts.point.fitted.0.rated-power', 'heat.nodes.pcb.limit', 'parts.adapter.rated-power']),
    );
    expect(model.open.map(({ id }) => id)).not.toContain('parts.core.rated-current');
    expect(model.limits.map(({ id }) => id)).not.toContain('parts.core.rated-current');
  });

  test('a limit of one’s own holds any output, under or over', () => {
    const model = boardOf(plain, (text) =>
      text.replace(
        'steps:',
        'limits:\n  droop: {of: parts.adapter.voltage, over: 19 V, reason: the charger gives up below}\nsteps:',
      ),
    );
    const { of } = evaluate(model);
    expect(of('limits.droop.margin')).toBeCloseTo(of('parts.adapter.voltage') - 19, 12);
  });

  test('a limit of one’s own on an output that isn’t there names near ones', () => {
    const step = stepOf(
      studyText(plain).replace('steps:', 'limits:\n  x: {of: parts.adapter.volts, under: 20 V, reason: none}\nsteps:'),
    );
    const assembly = assembleBoard(step);
    expect(assembly.ok).toBe(false);
    if (!assembly.ok) expect(sayFault(assembly.faults[0]).expected).toContain('parts.adapter.voltage');
  });
});
