import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { startValues } from '../../src/metrology/evaluate.ts';
import { randomStream } from '../../src/numeric/random.ts';
import { noDepartures } from '../../src/rehearsal/departures.ts';
import { drawHidden } from '../../src/rehearsal/hidden.ts';
import { VirtualBoard } from '../../src/rehearsal/virtual-board.ts';
import { readStudy } from '../../src/study/read.ts';
import type { Study } from '../../src/study/study.ts';
import { assembled } from './bench.ts';
import { randomStudy } from './random-study.ts';

/** Two programs that share the elementary laws and no solution: the tool's board, and the virtual one that lives through time until it is steady. */
describe('without departures the virtual board comes to rest where the tool says', () => {
  test.each([
    // Phases that share unequally lose a little more together than as many equal ones.
    ['mini-pc', () => example('mini-pc'), 2e-3],
    ['accelerator', () => example('accelerator'), 1e-9],
    ...[1, 2, 3, 4, 5, 6].map((seed) => [`random ${seed}`, () => randomStudy(seed), 2e-3] as const),
  ] as const)('%s', (_, read, tolerance) => {
    const study = read();
    for (const hidden of [new Map<string, number>(), drawHidden(study, randomStream(11))])
      for (const step of study.steps) {
        const board = assembled(step);
        const x = startValues(board);
        board.inputs.forEach(({ id }, i) => {
          x[i] = hidden.get(id) ?? x[i];
        });
        const y = new Float64Array(board.outputs.length);
        if (board.evaluate(x, y).ending !== 'solved') continue;
        const live = new VirtualBoard(step, { hidden, departures: noDepartures, faults: [], seed: 1 });
        live.armed = false;
        expect(live.settle()).toBe(true);
        board.outputs.forEach(({ id, kind }, i) => {
          const lived = live.outputs.get(id);
          if (lived === undefined) return;
          const size = kind === 'temperature' ? 50 : Math.max(Math.abs(y[i]), 1e-6);
          expect(Math.abs(lived - y[i]) / size, `${step.id}: ${id}`).toBeLessThan(tolerance);
        });
        expect(live.outputs.size).toBeGreaterThan(20);
      }
  });
});

function example(name: string): Study {
  const reading = readStudy(readFileSync(`examples/${name}/study.yaml`, 'utf8'), name);
  if (!reading.ok) throw new Error(name);
  return reading.study;
}
