import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import type { Ending } from '../metrology/model.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { PowerLimiter } from '../study/schema/limiters.ts';
import type { Step } from '../study/study.ts';

/** A board solved once: how it ended, and any output by its id. */
export interface Solved {
  readonly board: BoardModel;
  readonly ending: Ending;
  /** The limiter that holds, or `demand`. */
  readonly holder: string;
  of(id: string): number;
}

/** Solves a board at its best values, some of them changed, as SI by input id. */
export function solveWith(board: BoardModel, changed: ReadonlyMap<string, number>): Solved {
  const y = new Float64Array(board.outputs.length);
  const { ending } = board.evaluate(
    Float64Array.from(board.inputs, ({ id, value }) => changed.get(id) ?? value),
    y,
  );
  return { board, ending, holder: board.holder, of: (id) => y[board.indexOfOutput(id)] };
}

/** How far the demand is lifted so that only the limiter asked about can hold. */
const unheld = 20;

/**
 * The step as it would be if this limiter alone held the processor: it regulates, whatever it does on the real board, every other one only warns, and
 * the processor takes whatever it may.
 */
export function heldOnlyBy(step: Step, limiterId: string): Step {
  const limiters = Object.entries(step.board.limiters).map(([id, limiter]) => [
    id,
    { ...limiter, acts: id === limiterId ? ('regulate' as const) : ('warn' as const) },
  ]);
  return { ...step, board: { ...step.board, limiters: Object.fromEntries(limiters) } };
}

/** The board of a step; its study has been read, so it can be put together. */
export function boardOf(step: Step, dialled?: { limiter: string; watts: number }): BoardModel {
  const dial = dialled && { limiter: dialled.limiter, realPower: exactly(dialled.watts) };
  const assembly = assembleBoard(step, dial);
  if (!assembly.ok) throw new Error(`step "${step.id}" can't be put together: ${assembly.faults[0].code}`);
  return assembly.board;
}

function exactly(watts: number): Quantity {
  return { kind: 'power', value: watts, unit: 'W', spread: null, text: `${watts} W` };
}

/** The board with nothing but this limiter holding, at what its reading allows. */
export function solveAtLimit(step: Step, limiterId: string): Solved {
  const board = boardOf(heldOnlyBy(step, limiterId));
  return solveWith(board, lifted(step));
}

/** The board with a real power flowing past this limiter. */
export function solveAtPower(step: Step, limiterId: string, watts: number): Solved {
  const board = boardOf(heldOnlyBy(step, limiterId), { limiter: limiterId, watts });
  return solveWith(board, lifted(step));
}

export function lifted({ board }: Step): ReadonlyMap<string, number> {
  return new Map([['demand.scale', unheld * board.demand.scale.value]]);
}

/** One sense point as it is while a real power flows past the limiter. */
export interface PointAtPower {
  readonly id: string;
  /** Voltage behind it times current through it, crest included where the limiter takes the peak [W]. */
  readonly power: number;
  readonly current: number;
  readonly voltage: number;
  readonly temperature: number;
}

/** The sense points of a limiter, each once, while a real power flows past it. */
export function pointsAtPower(step: Step, limiter: PowerLimiter, solved: Solved): PointAtPower[] {
  const crest = limiter.takes === 'peak' ? step.board.demand.crest.value : 1;
  return [...new Set(limiter.reads.map(({ sense }) => sense))].map((id) => {
    const current = solved.of(`parts.${id}.current`);
    const voltage = solved.of(`parts.${id}.voltage`);
    const { heats } = step.board.parts[id];
    const temperature = solved.of(`heat.nodes.${heats as string}.temperature`);
    return { id, power: crest * voltage * current, current, voltage, temperature };
  });
}
