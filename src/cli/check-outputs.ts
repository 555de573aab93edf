import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import { readQuantity } from '../quantity/read.ts';
import { placeOf } from '../study/locate.ts';
import type { Step, Study } from '../study/study.ts';

/**
 * What a study says about outputs of its board, which are known only when the board is put together: the values of own limits, and the instruments.
 * Limits are looked at as they first stand, and again at the steps that change one; `text` is the study's own, for the places.
 */
export function checkOutputs(study: Study, text: string): Fault[] {
  const [first, ...later] = study.steps;
  const steps = [first, ...later.filter(({ changed }) => changed.some((path) => path.split('.')[0] === 'limits'))];
  const faults = steps.flatMap((step) => checkOwnLimits(step, study.steps.indexOf(step)));
  return [...faults, ...checkInstruments()];

  function checkOwnLimits(step: Step, index: number): Fault[] {
    const limits = Object.entries(step.board.limits ?? {});
    const board = limits.length > 0 ? boardOf(step) : undefined;
    return limits.flatMap(([id, { of, under, over }]) => {
      const field = (name: string) => (index === 0 ? `limits.${id}.${name}` : `steps.${index}.changes`);
      const kind = board && kindOf(board, of);
      if (board && !kind) return [unknownOutput(board, `limits.${id}`, of, field('of'))];
      const written = String(under ?? over ?? 'open');
      if (!kind || written === 'open') return [];
      return misread(written, kind, field(under === undefined ? 'over' : 'under'));
    });
  }

  function checkInstruments(): Fault[] {
    const entries = Object.entries(study.instruments);
    const board = entries.length > 0 ? boardOf(first) : undefined;
    if (!board) return [];
    return entries.flatMap(([id, { shows, uncertainty, repeatability }]) => {
      const field = `instruments.${id}`;
      const kind = kindOf(board, shows);
      if (!kind) return [unknownOutput(board, field, shows, `${field}.shows`)];
      const size = kind === 'temperature' ? 'temperature-difference' : kind;
      return [
        ...misread(uncertainty, size, `${field}.uncertainty`, 0),
        ...(repeatability === undefined ? [] : misread(repeatability, size, `${field}.repeatability`, 0)),
      ];
    });
  }

  function unknownOutput(board: BoardModel, limit: string, of: string, field: string): Fault {
    const known = board.outputs.map(({ id }) => id);
    return refuse('board/no-such-output', { limit, of, near: nearest(of, known) || known[0] }, placed(field));
  }

  /** What is wrong with a number: it can't be read, or isn't above `above`. */
  function misread(written: string, kind: KindName, field: string, above = Number.NEGATIVE_INFINITY): Fault[] {
    const read = readQuantity(written, kind);
    if (!read.ok) return [{ ...read.fault, place: placed(field) }];
    if (read.quantity.value > above) return [];
    const data = { text: written, kind: kinds[kind].title, expected: 'more than zero' };
    return [refuse('study/out-of-range', data, placed(field))];
  }

  function placed(field: string) {
    return placeOf(text, study.file, field);
  }
}

/** The board without the limits that are still to be looked at; undefined where something else is wrong with it. */
function boardOf(step: Step): BoardModel | undefined {
  const assembly = assembleBoard({ ...step, board: { ...step.board, limits: undefined } });
  return assembly.ok ? assembly.board : undefined;
}

function kindOf(board: BoardModel, output: string): KindName | undefined {
  return board.outputs[board.indexOfOutput(output)]?.kind;
}
