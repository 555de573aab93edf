import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { assembleBoard } from './assemble.ts';
import { type RandomBoard, randomBoard, studyText } from './random-board.test-data.ts';

/** Results of a random board by output id, or null where it has no operating point. */
function solved(board: RandomBoard): ((id: string) => number) | null {
  const reading = readStudy(studyText(board), 'random.yaml');
  if (!reading.ok) throw new Error(reading.faults.map(writeFault).join('\n'));
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error(assembly.faults.map(writeFault).join('\n'));
  const model = assembly.board;
  const x = Float64Array.from(model.inputs, ({ value }) => value);
  const y = new Float64Array(model.outputs.length);
  if (model.evaluate(x, y).ending !== 'solved') return null;
  return (id) => {
    const place = model.indexOfOutput(id);
    if (place < 0) throw new Error(`no output ${id}`);
    return y[place];
  };
}

function forBoards(check: (board: RandomBoard, of: (id: string) => number) => void): void {
  let judged = 0;
  fc.assert(
    fc.property(randomBoard, (board) => {
      const of = solved(board);
      fc.pre(of !== null);
      check(board, of!);
      judged++;
    }),
    { numRuns: 100, seed: 20261125 },
  );
  expect(judged).toBeGreaterThan(50);
}

describe('what must hold on any board', () => {
  test('power from the wall equals heat at all nodes', () => {
    forBoards((_, of) => expect(Math.abs(of('wall-power') / of('heat') - 1)).toBeLessThan(1e-9));
  });

  test('real power at a limiter on one sense point is allowed power times assumed over effective resistance', () => {
    forBoards((board, of) => {
      if (of('scale') > 19.9) return;
      const effective = 1e-3 / board.sense.reduce((sum, milliohms) => sum + 1 / milliohms, 0);
      const expected = (board.allowed * board.assumed * 1e-3) / effective;
      expect(of('limiters.package.real') / expected).toBeCloseTo(1, 9);
    });
  });

  test('a limiter reads exactly what it allows where it holds', () => {
    forBoards((board, of) => {
      if (of('scale') < 19.9) expect(of('limiters.package.reads') / board.allowed).toBeCloseTo(1, 9);
    });
  });

  test('raising the real-to-assumed ratio raises real power by that ratio', () => {
    fc.assert(
      fc.property(randomBoard, fc.double({ min: 1.01, max: 1.5, noNaN: true }), (board, ratio) => {
        const before = solved(board);
        const after = solved({ ...board, assumed: board.assumed * ratio });
        fc.pre(before !== null && after !== null && after('scale') < 19.9);
        expect(after!('limiters.package.real') / before!('limiters.package.real') / ratio).toBeCloseTo(1, 9);
      }),
      { numRuns: 100, seed: 20261125 },
    );
  });

  test('at the same scale more cooling never makes a place hotter', () => {
    // Nothing but the demand holds here. Where a limiter reads the regulator's input, cooling hands saved losses to the processor, and the die may warm.
    const nodes = ['die', 'sink', 'pcb', 'air', 'ambient'];
    let judged = 0;
    fc.assert(
      fc.property(randomBoard, (drawn) => {
        const board = { ...drawn, demand: 1, allowed: 1e6 };
        const before = solved(board);
        fc.pre(before !== null);
        const temperature = (of: (id: string) => number, node: string) => of(`heat.nodes.${node}.temperature`);
        const moreAir = solved({ ...board, flow: board.flow * 1.3 })!;
        for (const node of nodes)
          expect(temperature(moreAir, node)).toBeLessThanOrEqual(temperature(before!, node) + 1e-9);
        // A better way inside the board may warm the place it leads to, but never the place it starts from.
        const betterJoint = solved({ ...board, die: board.die * 0.7 })!;
        expect(temperature(betterJoint, 'die')).toBeLessThan(temperature(before!, 'die'));
        judged++;
      }),
      { numRuns: 100, seed: 20261125 },
    );
    expect(judged).toBeGreaterThan(50);
  });

  test('more phases never put more current into each', () => {
    forBoards((board, of) => {
      const more = solved({ ...board, phases: board.phases + 1 });
      fc.pre(more !== null);
      expect(more!('parts.vr.phase-current')).toBeLessThan(of('parts.vr.phase-current'));
    });
  });

  test('margins of temperature and current fall as power rises', () => {
    forBoards((board, of) => {
      const more = solved({ ...board, allowed: board.allowed * 1.05 });
      fc.pre(more !== null);
      for (const limit of [
        'heat.nodes.die.limit',
        'heat.nodes.pcb.limit',
        'parts.vr.stage.rated-current',
        'parts.cable.rated-current',
      ])
        expect(more!(`${limit}.margin`)).toBeLessThanOrEqual(of(`${limit}.margin`));
    });
  });
});
