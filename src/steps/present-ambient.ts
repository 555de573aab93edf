import type { BoardModel } from '../board/assemble.ts';
import type { Batch, Input, Model } from '../metrology/model.ts';
import type { Study } from '../study/study.ts';
import { AMBIENT, type Learnt } from './learn.ts';

/**
 * A board in the air of the bench: where an instrument reads the ambient, its last reading stands in the place of the stated ambient, with the error that
 * this instrument has in the fit. The board's own outputs; without such a reading the board itself.
 */
export function atPresentAmbient(board: BoardModel, study: Study, { problem }: Learnt): Model {
  const thermometer = Object.entries(study.instruments).find(([, { shows }]) => shows === AMBIENT)?.[0];
  const error = problem.inputs.find(({ id }) => id === `instruments.${thermometer}.error`);
  const reading = problem.inputs.findLast(({ id }) => /^windows\..+\.ambient$/.test(id));
  const place = board.indexOfInput('heat.ambient');
  if (!error || !reading || place < 0) return board;
  const inputs: Input[] = [...board.inputs.slice(0, place), reading, ...board.inputs.slice(place + 1), error];
  const boardX = new Float64Array(board.inputs.length);
  return {
    inputs,
    outputs: board.outputs,
    evaluate(x, y) {
      for (let i = 0; i < boardX.length; i++) boardX[i] = x[i];
      boardX[place] = x[place] - x[boardX.length];
      return board.evaluate(boardX, y);
    },
    batch: board.batch && atReadAmbient(board.batch, place),
  };
}

/** A board's batch with the reading in the place of its ambient, and the reading's error as one input more. */
function atReadAmbient(batch: Batch, place: number): Batch {
  const [reading, error] = [new Float64Array(batch.lanes), new Float64Array(batch.lanes)];
  const ambient = batch.inputs[place];
  const { outputs, endings, lanes } = batch;
  return {
    inputs: [...batch.inputs.with(place, reading), error],
    outputs,
    endings,
    lanes,
    evaluate(count) {
      for (let s = 0; s < count; s++) ambient[s] = reading[s] - error[s];
      batch.evaluate(count);
    },
  };
}
