import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assembleBoard } from '../board/assemble.ts';
import { type RandomBoard, randomBoard, studyText } from '../board/random-board.test-data.ts';
import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { describeStep, found, type Setting } from './option.ts';
import { readStock } from './stock.ts';
import { solveAtLimit } from './working-point.ts';

function stepOf(board: RandomBoard) {
  const reading = readStudy(studyText(board), 'random.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  return reading.study.steps[0];
}

/** The board with these resistors at its sense point, written down, read and solved: real power and what holds; null: no steady state. */
function solveWritten(board: RandomBoard, milliohms: readonly number[]) {
  const assembly = assembleBoard(stepOf({ ...board, sense: milliohms }));
  if (!assembly.ok) throw new Error('not assembled');
  const { board: model } = assembly;
  const y = new Float64Array(model.outputs.length);
  const { ending } = model.evaluate(
    Float64Array.from(model.inputs, ({ value }) => value),
    y,
  );
  return ending === 'solved' ? { real: y[model.indexOfOutput('limiters.package.real')], holder: model.holder } : null;
}

const values = [0.5, 1, 2, 3.3, 5, 10, 22, 47];
const stocked = readStock(
  `stock: 1\njoint: 0 mohm\nkelvin: 0 mohm\nresistors: [{ values: [${values.map((r) => `${r} mohm`).join(', ')}], tolerance: 1 %, temperature-coefficient: 50 ppm/K, rated-power: 1 W }]`,
  'stock.yaml',
);
if (!stocked.ok) throw new Error('stock');
const { stock } = stocked;

test('the table of failures agrees with the board as it is solved with the failed part put in, on 100 random boards', () => {
  const seen = { rises: 0, falls: 0, off: 0, 'gives in': 0, stays: 0 };
  const option = fc.record({
    // Enough for the limiter to hold; far more would only end in runaway whenever nothing limits.
    board: randomBoard.map((board) => ({ ...board, demand: 4 })),
    original: fc.boolean(),
    added: fc.array(fc.nat({ max: values.length - 1 }), { minLength: 1, maxLength: 2 }),
  });
  fc.assert(
    fc.property(option, ({ board, original, added: places }) => {
      const step = stepOf(board);
      const atLimit = solveAtLimit(step, 'package');
      // A board that has no operating point as it is has no options either.
      if (atLimit.ending !== 'solved') return;
      const added = (original ? places : places.slice(0, 1)).map((place) => stock.resistors[place]);
      const present = atLimit.of('limiters.package.real');
      const setting: Setting = { step, limiter: 'package', stock, present, meter: () => 0.1 };
      const fits = new Map([['point', { original, added, across: null }]]);
      const { described } = describeStep(setting, present, found(step, 'package'), fits, 'option');

      const there = original ? board.sense : [];
      const milliohms = [...there, ...added.map(({ resistance }) => 1e3 * resistance.value)];
      expect(described.failures).toHaveLength(2 * milliohms.length);
      described.failures.forEach((failure, k) => {
        const place = Math.floor(k / 2);
        const opens = k % 2 === 0;
        expect(failure.mode).toBe(opens ? 'opens' : 'shorts');
        seen[failure.direction]++;
        const rest = milliohms.filter((_, i) => i !== place);
        if (opens && rest.length === 0) {
          expect(failure.direction).toBe('off');
          return;
        }
        const written = solveWritten(board, opens ? rest : [...rest, 1e-8]);
        if (!written) {
          expect(failure.direction).toBe('gives in');
          return;
        }
        expect(failure.holder).toBe(written.holder);
        expect(Math.abs(failure.real! / written.real - 1)).toBeLessThan(1e-4);
      });
    }),
    { numRuns: 100, seed: 5, endOnFailure: true },
  );
  // Every kind of end has been met.
  for (const direction of ['rises', 'falls', 'off'] as const) expect(seen[direction]).toBeGreaterThan(10);
}, 60_000);
