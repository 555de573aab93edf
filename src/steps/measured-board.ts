import type { BoardModel } from '../board/assemble.ts';
import type { Input, Model, Output } from '../metrology/model.ts';
import { errorInput, type Instrument } from './instrument.ts';

/** A number of the board that an instrument reads in a window: its reading is an input, and so is the instrument's error. */
export interface ReadInput {
  readonly instrument: string;
  readonly input: Input;
}

/**
 * A dialled board as its instruments see it in one window. Beside the board's own inputs it has the window's measured power, an error that each
 * instrument keeps from window to window, and the drift of ambient since the runs that were learnt from,
 * or the ambient that was read. Its outputs are the instruments' readings.
 */
export function measuredBoard(
  board: BoardModel,
  instruments: readonly Instrument[],
  power: ReadInput,
  drift: Input | null,
  ambient: ReadInput | null = null,
): Model {
  const dialAt = board.indexOfInput('dial');
  const ambientAt = board.indexOfInput('heat.ambient');
  const own = board.inputs.map((_, i) => i).filter((i) => i !== dialAt);
  const inputs: Input[] = own.map((i) => board.inputs[i]);
  const powerAt = inputs.push(power.input) - 1;
  const ambientReadAt = ambient ? inputs.push(ambient.input) - 1 : -1;
  const driftAt = drift ? inputs.push(drift) - 1 : -1;
  const errorAt = inputs.length;
  inputs.push(...instruments.map((instrument) => errorInput(instrument, board)));
  const errorOf = (read: ReadInput | null) => errorAt + instruments.findIndex(({ id }) => id === read?.instrument);
  const powerErrorAt = errorOf(power);
  const ambientErrorAt = errorOf(ambient);
  const shown = instruments.map(({ shows }) => board.indexOfOutput(shows));
  const outputs: Output[] = instruments.map(({ id, title }, i) => {
    const { kind, unit } = board.outputs[shown[i]];
    return { id, kind, unit, title };
  });
  const boardX = new Float64Array(board.inputs.length);
  const boardY = new Float64Array(board.outputs.length);
  return {
    inputs,
    outputs,
    evaluate(x, y) {
      for (let k = 0; k < own.length; k++) boardX[own[k]] = x[k];
      boardX[dialAt] = x[powerAt] - x[powerErrorAt];
      if (ambientReadAt >= 0) boardX[ambientAt] = x[ambientReadAt] - x[ambientErrorAt];
      if (driftAt >= 0) boardX[ambientAt] += x[driftAt];
      const status = board.evaluate(boardX, boardY);
      for (let i = 0; i < shown.length; i++) y[i] = boardY[shown[i]] + x[errorAt + i];
      return status;
    },
  };
}
