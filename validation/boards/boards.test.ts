import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { assembleBoard } from '../../src/board/assemble.ts';
import { readStudy } from '../../src/study/read.ts';

// Source: solve.py beside this file, which shares no code with src/: every law in its textbook form, every unknown with its own equation,
// solved by SciPy (MINPACK hybrd) with NumPy. The boards are invented, drawn by generate.py.
interface Reference {
  readonly made: { readonly command: string };
  readonly boards: Readonly<Record<string, SolvedBoard>>;
}

interface SolvedBoard {
  readonly sha256: string;
  readonly holder: string;
  readonly residual: number;
  readonly outputs: Readonly<Record<string, number>>;
}

const folder = import.meta.dirname;
const reference = JSON.parse(readFileSync(join(folder, 'reference.json'), 'utf8')) as Reference;
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

const temperatureTolerance = 1e-5;
const relativeTolerance = 1e-7;
const energyTolerance = 1e-9;

function solve(file: string) {
  const reading = readStudy(readFileSync(join(folder, file), 'utf8'), file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults, null, 2));
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error(JSON.stringify(assembly.faults, null, 2));
  const { board } = assembly;
  const y = new Float64Array(board.outputs.length);
  const { ending } = board.evaluate(
    Float64Array.from(board.inputs, ({ value }) => value),
    y,
  );
  return { board, ending, figure: (id: string) => y[board.indexOfOutput(id)] };
}

/** Largest error in units of its tolerance, with the id that has it; no number is the largest of all. */
function worst(ids: readonly string[], error: (id: string) => number) {
  return ids
    .map((id) => ({ id, error: Number.isNaN(error(id)) ? Number.POSITIVE_INFINITY : error(id) }))
    .reduce((a, b) => (b.error <= a.error ? a : b), { id: '', error: 0 });
}

test(`the references belong to these boards (remade by ${reference.made.command})`, () => {
  const hash = (file: string) =>
    createHash('sha256')
      .update(readFileSync(join(folder, file)))
      .digest('hex');
  expect(Object.fromEntries(files.map((file) => [file, hash(file)]))).toEqual(
    Object.fromEntries(Object.entries(reference.boards).map(([file, { sha256 }]) => [file, sha256])),
  );
  expect(files.length).toBeGreaterThanOrEqual(4);
});

describe.each(Object.entries(reference.boards))('%s against an independent solution', (file, solved) => {
  const { board, ending, figure } = solve(file);
  const ids = Object.keys(solved.outputs);
  const temperatures = ids.filter((id) => board.outputs[board.indexOfOutput(id)]?.kind === 'temperature');
  const others = ids.filter((id) => !temperatures.includes(id));

  test('it is solved, and so is the reference', () => {
    expect(ending).toBe('solved');
    expect(solved.residual).toBeLessThan(1e-10);
    expect(ids.filter((id) => board.indexOfOutput(id) < 0)).toEqual([]);
  });

  test(`${solved.holder} holds`, () => {
    expect(board.holder).toBe(solved.holder);
  });

  test(`${temperatures.length} temperatures to 10 µK`, () => {
    expect(temperatures.length).toBeGreaterThan(5);
    const found = worst(temperatures, (id) => Math.abs(figure(id) - solved.outputs[id]) / temperatureTolerance);
    expect(found.error, found.id).toBeLessThan(1);
  });

  test(`${others.length} currents, voltages and powers to 1e-7`, () => {
    expect(others.length).toBeGreaterThan(20);
    const found = worst(others, (id) => Math.abs(figure(id) / solved.outputs[id] - 1) / relativeTolerance);
    expect(found.error, found.id).toBeLessThan(1);
  });

  test('what comes from the wall leaves as heat', () => {
    expect(Math.abs(figure('heat') / figure('wall-power') - 1)).toBeLessThan(energyTolerance);
  });
});
