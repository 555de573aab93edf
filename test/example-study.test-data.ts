import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { assembleBoard } from '../src/board/assemble.ts';
import { readStudy } from '../src/study/read.ts';
import type { Study } from '../src/study/study.ts';

/** A study of `examples/`. Throws when it has faults. */
export function exampleStudy(name: string): Study {
  const file = `examples/${name}/study.yaml`;
  const reading = readStudy(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(`${file} has faults`);
  return reading.study;
}

/** The board at a step, solved at its best values with some inputs changed: results by output id [SI]. */
export function solvedStep(study: Study, stepId: string, changed: Readonly<Record<string, number>> = {}) {
  const step = study.steps.find(({ id }) => id === stepId)!;
  const assembly = assembleBoard(step);
  if (!assembly.ok) throw new Error(`step ${stepId} has no board`);
  const { board } = assembly;
  const x = Float64Array.from(board.inputs, ({ value }) => value);
  for (const [id, value] of Object.entries(changed)) {
    const place = board.indexOfInput(id);
    if (place < 0) throw new Error(`no input ${id}`);
    x[place] = value;
  }
  const y = new Float64Array(board.outputs.length);
  expect(board.evaluate(x, y).ending).toBe('solved');
  return (id: string): number => {
    const place = board.indexOfOutput(id);
    if (place < 0) throw new Error(`no output ${id}`);
    return y[place];
  };
}

/** Resistance of a sense point's two resistors side by side, each with its joint, at a temperature [Ω]: by hand, apart from the board's code. */
export function stackedByHand(
  lower: { readonly at20: number; readonly joint: number },
  upper: { readonly at20: number; readonly joint: number },
  coefficient: number,
  temperature: number,
): number {
  const [a, b] = [lower, upper].map(({ at20, joint }) => at20 * (1 + coefficient * (temperature - 293.15)) + joint);
  return (a * b) / (a + b);
}
