import type { Ending, Model, Status } from '../../metrology/model.ts';
import type { Step } from '../../study/study.ts';
import { tiesOfStep } from '../../study/ties.ts';
import { table } from '../lanes.ts';
import { type BoardLimit, Limits, type OpenBoardLimit } from '../limits.ts';
import { Outputs } from '../outputs.ts';
import { Slots } from '../slots.ts';
import { PlateOnBoard } from './plate-on-board.ts';

/** The plate of a step alone, as a Model: its inputs are all numbers of the step, so that what they share with others counts. */
export interface PlateModel extends Model {
  readonly step: Step;
  readonly limits: readonly BoardLimit[];
  readonly open: readonly OpenBoardLimit[];
  /** As it is after the last evaluation. */
  readonly plate: PlateOnBoard;
}

/** The Model of a step's plate; null for a board without one. */
export function assemblePlate(step: Step): PlateModel | null {
  const section = step.board.plate;
  if (!section) return null;
  const slots = new Slots(step.quantities);
  const outputs = new Outputs();
  const plate = new PlateOnBoard(section, slots);
  plate.addOutputs(outputs);
  const limits = new Limits(slots, outputs);
  plate.addLimits(limits);
  const ties = tiesOfStep(step, slots.inputs);
  const columns = table(outputs.list.length).columns;
  const state: { ending: Ending[] } = { ending: ['solved'] };
  const status: Status = { ending: 'unsettled', residual: Number.POSITIVE_INFINITY, passes: 0 };
  return {
    step,
    inputs: slots.inputs,
    outputs: outputs.list,
    limits: limits.known,
    open: limits.open,
    plate,
    evaluate(given, y) {
      const x = ties ? ties.apply(given) : given;
      for (let i = 0; i < x.length; i++) slots.columns[i][0] = x[i];
      state.ending[0] = 'solved';
      plate.load(state, 0, 1);
      status.ending = state.ending[0];
      status.residual = plate.rest?.residual ?? Number.POSITIVE_INFINITY;
      status.passes = plate.rest?.passes ?? 0;
      if (status.ending === 'solved') {
        plate.write(columns, 0, 1);
        limits.write(columns, 0, 1);
      }
      for (let i = 0; i < y.length; i++) y[i] = status.ending === 'solved' ? columns[i][0] : Number.NaN;
      return status;
    },
  };
}
