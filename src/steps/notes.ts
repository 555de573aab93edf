import type { BoardModel } from '../board/assemble.ts';
import type { Fault } from '../fault/fault.ts';
import { figure } from './figure.ts';

/** Where a step's figures lean on data that ends before them: a regulator outside the currents of its loss curve. `y`: the board's outputs. */
export function notesOf(board: BoardModel, y: Float64Array): Fault[] {
  return Object.entries(board.step.board.parts).flatMap(([id, part]): Fault[] => {
    if (part.kind !== 'regulator' || part.losses.by !== 'curve') return [];
    const current = y[board.indexOfOutput(`parts.${id}.phase-current`)];
    const { points } = part.losses;
    const first = points[0].current;
    const last = points[points.length - 1].current;
    const beyond = current > last.value;
    if (!beyond && current >= first.value) return [];
    const shown = figure(current, null, 'current', 'A').text;
    const data = { part: part.title ?? id, current: shown, first: first.text, last: last.text };
    return [{ code: beyond ? 'board/beyond-curve' : 'board/below-curve', severity: 'warning', data }];
  });
}
