import type { BoardModel } from '../board/assemble.ts';
import type { Fault } from '../fault/fault.ts';
import { startValues } from '../metrology/evaluate.ts';
import type { Input } from '../metrology/model.ts';
import { endsOf as endsOfSpread, standardUncertainty } from '../quantity/spread.ts';
import { figure } from './figure.ts';

/** Regulators outside the currents of their loss curves. `y`: the board's outputs. */
export function curveNotes(board: BoardModel, y: Float64Array): Fault[] {
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

/** Inputs of which some draws are no numbers for a board, such as an efficiency above 1: those draws count as exceeding every limit. */
export function drawNotes(board: BoardModel): Fault[] {
  const x = startValues(board);
  const y = new Float64Array(board.outputs.length);
  return board.inputs.flatMap((input, i): Fault[] => {
    const beyond = endsOf(input).filter((end) => {
      x[i] = end;
      const { ending, passes } = board.evaluate(x, y);
      x[i] = input.value;
      return ending === 'infeasible' && passes === 0;
    });
    if (beyond.length === 0) return [];
    const { id, kind, unit } = input;
    return [
      {
        code: 'board/impossible-draws',
        severity: 'warning',
        data: { input: id, end: figure(beyond[0], null, kind, unit).text },
      },
    ];
  });
}

/** Three standard uncertainties to each side: a draw in 700 lies beyond. What lies between two ends has them; a log-normal number stays positive. */
function endsOf({ spread, value }: Input): number[] {
  if (spread === null || spread.shape === 'log-normal') return [];
  const u = 3 * standardUncertainty(spread, value);
  const { low, high } = endsOfSpread(spread) ?? { low: value - u, high: value + u };
  return [low, high];
}
