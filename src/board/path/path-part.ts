import type { Ending } from '../../metrology/model.ts';
import type { PathState } from './path-state.ts';

/** One part on the power path. No method allocates: they run millions of times. */
export interface PathPart {
  /** Study name. */
  readonly id: string;
  /** Index of the part that feeds it; −1 for a supply. */
  readonly feeder: number;
  /** Whether its output voltage depends on the current it delivers. */
  readonly carries: boolean;
  /** Heat nodes whose temperature changes its currents or losses. */
  readonly sensedNodes: readonly number[];
  /** Takes this evaluation's numbers from the input vector. False: these numbers can't be a board. */
  load(x: Float64Array): boolean;
  /** From the current it delivers (already summed) to the current it draws, its loss and the heat of it. Anything but `solved` says why it can't. */
  draw(state: PathState): Ending;
  /** From its feeder's voltage to its own output voltage. */
  drop(state: PathState): void;
  /** Writes its own results; limits are written elsewhere. Anything but `solved`: one of them has no value here. */
  write(state: PathState, y: Float64Array): Ending;
}
