import { sayFault } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import { assembleBoard } from './assemble.ts';
import { type Sketch, sketchText } from './sketch.test-data.ts';

/** Solves a board written in a few lines, with some inputs changed after it was assembled. */
export function solveSketch(sketch: Sketch, changed: Readonly<Record<string, number>> = {}) {
  const reading = readStudy(sketchText(sketch), 'edge.yaml');
  if (!reading.ok) throw new Error(reading.faults.map((fault) => sayFault(fault).found).join('\n'));
  const assembly = assembleBoard(reading.study.steps[0]);
  if (!assembly.ok) throw new Error(assembly.faults.map((fault) => sayFault(fault).found).join('\n'));
  const { board } = assembly;
  const y = new Float64Array(board.outputs.length);
  const { ending } = board.evaluate(
    Float64Array.from(board.inputs, ({ id, value }) => changed[id] ?? value),
    y,
  );
  const of = (id: string) => {
    const place = board.indexOfOutput(id);
    if (place < 0) throw new Error(`no output ${id}`);
    return y[place];
  };
  return { board, ending, holder: board.holder, of };
}
