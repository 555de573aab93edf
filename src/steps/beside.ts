import type { BoardModel } from '../board/assemble.ts';
import type { Model } from '../metrology/model.ts';
import type { Step } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';
import { errorInput, type Instrument } from './instrument.ts';

/** Prefix of the outputs of the present step. */
export const PRESENT = 'present:';

/** Prefix of what an instrument would read at the present step. */
export const READING = 'reading:';

/** Prefix of a number that others have a part in: what would be measured is the number, not its own part alone. */
export const NUMBER = 'number:';

/**
 * Two steps of one board as one model: the next one's outputs under their own ids, the present one's under `present:`, and what each instrument
 * would read there, its own error included, under `reading:`, numbers that hang together with others under `number:`. What both steps have in common is one input, so that a reading at the present step
 * says something about the next.
 */
export function beside(next: BoardModel, present: BoardModel, instruments: readonly Instrument[]): Model {
  const own = present.inputs.filter(({ id }) => next.indexOfInput(id) < 0);
  const errorAt = next.inputs.length + own.length;
  const inputs = [...next.inputs, ...own, ...instruments.map((each) => errorInput(each, present))];
  const places = present.inputs.map(({ id }) => inputs.findIndex((input) => input.id === id));
  const ties = tiesOfStep(next.step, inputs);
  const tied = tiedNumbers(next.step).flatMap((id) => {
    const place = inputs.findIndex((input) => input.id === id);
    return place < 0 ? [] : [place];
  });
  const outputs = [
    ...next.outputs,
    ...present.outputs.map(({ hold: _, ...output }) => ({ ...output, id: `${PRESENT}${output.id}` })),
    ...instruments.map(({ id, title, shows }) => {
      const { kind, unit } = present.outputs[present.indexOfOutput(shows)];
      return { id: `${READING}${id}`, kind, unit, title };
    }),
    ...tied.map((place) => {
      const { id, kind, unit } = inputs[place];
      return { id: `${NUMBER}${id}`, kind, unit, title: id };
    }),
  ];
  const shown = instruments.map(({ shows }) => present.indexOfOutput(shows));
  const readingAt = next.outputs.length + present.outputs.length;
  const numberAt = readingAt + instruments.length;
  const nextX = new Float64Array(next.inputs.length);
  const nextY = new Float64Array(next.outputs.length);
  const presentX = new Float64Array(present.inputs.length);
  const presentY = new Float64Array(present.outputs.length);
  return {
    inputs,
    outputs,
    evaluate(x, y) {
      for (let i = 0; i < nextX.length; i++) nextX[i] = x[i];
      for (let i = 0; i < presentX.length; i++) presentX[i] = x[places[i]];
      const now = present.evaluate(presentX, presentY);
      const status = now.ending === 'solved' ? next.evaluate(nextX, nextY) : now;
      y.set(nextY);
      y.set(presentY, nextY.length);
      for (let k = 0; k < shown.length; k++) y[readingAt + k] = presentY[shown[k]] + x[errorAt + k];
      const numbers = ties ? ties.apply(x) : x;
      for (let k = 0; k < tied.length; k++) y[numberAt + k] = numbers[tied[k]];
      return status;
    },
  };
}

/** Numbers that a shared one enters, or that are correlated with others. */
function tiedNumbers({ board }: Step): readonly string[] {
  const { shared = {}, correlations = [] } = board;
  return [
    ...new Set([...Object.values(shared).flatMap(({ of }) => of), ...correlations.flatMap(({ between }) => between)]),
  ];
}
