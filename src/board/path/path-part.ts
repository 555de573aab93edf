import type { PathState } from './path-state.ts';

/**
 * One part on the power path. Its numbers are columns; every method works on the lanes `from` up to, not including, `to`, and marks in the
 * state's endings the lanes that can't be. No method allocates: they run millions of times.
 */
export interface PathPart {
  /** Study name. */
  readonly id: string;
  /** Index of the part that feeds it; −1 for a supply. */
  readonly feeder: number;
  /** Whether its output voltage depends on the current it delivers. */
  readonly carries: boolean;
  /** Heat nodes whose temperature changes its currents or losses. */
  readonly sensedNodes: readonly number[];
  /** Works out what only depends on the inputs; a lane whose numbers can't be a board is marked. */
  load(state: PathState, from: number, to: number): void;
  /** From the current it delivers (already summed) to the current it draws, its loss and the heat of it. */
  draw(state: PathState, from: number, to: number): void;
  /** From its feeder's voltage to its own output voltage. */
  drop(state: PathState, from: number, to: number): void;
  /** Writes its own results, a column an output; limits are written elsewhere. A lane where one of them has no value is marked. */
  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void;
}
