import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawsOf } from '../metrology/draws.ts';
import { startValues } from '../metrology/evaluate.ts';
import type { Ending } from '../metrology/model.ts';
import { readStudy } from '../study/read.ts';
import { assembleBoard, type BoardModel } from './assemble.ts';
import { lanes } from './lanes.ts';
import { randomBoard, studyText } from './random-board.test-data.ts';

const seed = 20_261_125;

function boardOf(text: string): BoardModel {
  const reading = readStudy(text, 'board.yaml');
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error(JSON.stringify(assembly.faults));
  return assembly.board;
}

/** Every number of a random board made uncertain by so much of it, and one input vector a lane. */
function lanesOf(board: BoardModel, share: number): Float64Array[] {
  const uncertain = board.inputs.map((input) => ({
    ...input,
    spread: input.value === 0 ? null : ({ shape: 'normal', u: share * Math.abs(input.value) } as const),
  }));
  const draws = drawsOf({ ...board, inputs: uncertain }, { seed }, lanes);
  draws.fill(0);
  return Array.from({ length: lanes }, (_, s) => {
    const x = startValues(board);
    draws.inputs.forEach((input, k) => {
      x[input] = draws.columns[k][s];
    });
    return x;
  });
}

function together(board: BoardModel, vectors: readonly Float64Array[]): { y: Float64Array[]; endings: Ending[] } {
  vectors.forEach((x, s) => {
    for (let i = 0; i < x.length; i++) board.batch.inputs[i][s] = x[i];
  });
  board.batch.evaluate(vectors.length);
  const y = vectors.map((_, s) => Float64Array.from(board.batch.outputs, (output) => output[s]));
  return { y, endings: board.batch.endings.slice(0, vectors.length) };
}

function alone(board: BoardModel, x: Float64Array): { y: Float64Array; ending: Ending } {
  const y = new Float64Array(board.outputs.length);
  return { ending: board.evaluate(x, y).ending, y };
}

function expectSame(board: BoardModel, a: Float64Array, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) {
    // A margin is a small difference of figures compared by themselves, the loop gain a quotient of small differences.
    const size = Math.max(1e-2, Math.abs(a[i]));
    if (!Number.isNaN(a[i]) && board.outputs[i].id !== 'loop-gain' && !board.outputs[i].hold)
      expect(Math.abs(b[i] - a[i]) / size, board.outputs[i].id).toBeLessThan(1e-9);
  }
}

describe(`many draws together (seed ${seed})`, () => {
  test('a lane gives what it gives beside others, to the last bit, and what an evaluation alone gives', () => {
    fc.assert(
      fc.property(randomBoard, fc.constantFrom(0.01, 0.05), (sketch, share) => {
        const board = boardOf(studyText(sketch));
        const vectors = lanesOf(board, share);
        const before = together(board, vectors);
        for (const s of [0, 13, lanes - 1]) {
          const { y, ending } = alone(board, vectors[s]);
          expect(before.endings[s]).toBe(ending);
          expectSame(board, before.y[s], y);
          expect(together(board, [vectors[s]]).y[0]).toEqual(before.y[s]);
        }
        const turned = together(board, [...vectors].reverse());
        expect(turned.y[0]).toEqual(before.y[lanes - 1]);
      }),
      { seed, numRuns: 25, endOnFailure: true },
    );
  });

  // The other board has its own best values at the draw: it starts there, and finds it the slow way from the cold board.
  test('a draw reached from the best values is the operating point that is reached from the cold board', () => {
    fc.assert(
      fc.property(randomBoard, (sketch) => {
        const board = boardOf(studyText(sketch));
        const [drawn] = lanesOf(board, 0.03);
        const { y, ending } = alone(board, drawn);
        const reading = readStudy(studyText(sketch), 'board.yaml');
        if (!reading.ok) throw new Error('no study');
        const [step] = reading.study.steps;
        [...step.quantities.keys()].forEach((quantity, i) => {
          Object.assign(quantity, { value: drawn[i] });
        });
        const assembly = assembleBoard(step);
        if (!assembly.ok) throw new Error('no board');
        const cold = alone(assembly.board, drawn);
        expect(cold.ending).toBe(ending);
        expectSame(board, cold.y, y);
      }),
      { seed, numRuns: 60, endOnFailure: true },
    );
  });

  test('lanes without an operating point don’t disturb those that have one, and numbers that are no board end at once', () => {
    const board = boardOf(`uprate: 1
title: leaky
demand: {scale: 1, crest: 1}
parts:
  adapter: {kind: supply, voltage: 20 V, resistance: 10 mohm, efficiency: 0.9, heats: ambient}
  chip: {kind: load, fed-by: adapter, power: 20 W, leakage: {power: 1 W, at: 25 degC, e-fold: 40 K}, heats: die}
limiters: {}
heat: {ambient: 25 degC, nodes: {die: {limit: none}}, links: {out: {between: [die, ambient], through: [{resistance: 1 K/W}]}}}
steps: [{id: as-is}]
`);
    const sound = startValues(board);
    const of = (changed: Record<string, number>) =>
      Float64Array.from(board.inputs, ({ id, value }) => changed[id] ?? value);
    const hot = of({ 'heat.links.out.through.0.resistance': 40 });
    const none = of({ 'parts.adapter.efficiency': 1.2 });
    const { endings, y } = together(board, [sound, hot, sound, none, sound]);
    expect(endings).toEqual(['solved', 'runaway', 'solved', 'infeasible', 'solved']);
    expect(y[1].every(Number.isNaN)).toBe(true);
    expect(y[3].every(Number.isNaN)).toBe(true);
    const { y: itself } = alone(board, sound);
    for (const s of [0, 2, 4]) expectSame(board, itself, y[s]);
  });
});
