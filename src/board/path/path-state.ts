import type { Ending } from '../../metrology/model.ts';
import { column, lanes, type Table, table } from '../lanes.ts';

/**
 * What the power path and the heat path share while they are solved together, one column a part or node.
 * Indices: parts in their order from the supply downward; heat nodes in the order of the study, ambient last.
 */
export interface PathState {
  /** Anything but `solved`: why this lane has no currents and losses. */
  readonly ending: Ending[];
  /** Share of the processor's nominal power [1]. */
  readonly scale: Float64Array;
  /** Voltage at each part's output [V]. */
  readonly voltage: readonly Float64Array[];
  /** Resistance of each part that the current passes, where it has one [Ω]. */
  readonly resistance: readonly Float64Array[];
  /** Current each part draws from its feeder [A]. */
  readonly drawn: readonly Float64Array[];
  /** Current each part delivers to those it feeds [A]. */
  readonly delivered: readonly Float64Array[];
  /** Power lost in each part, or taken by a load [W]. */
  readonly loss: readonly Float64Array[];
  /** Temperature of each heat node [K]. */
  readonly temperature: readonly Float64Array[];
  /** Heat into each node [W]. */
  readonly heat: Table;
}

export function pathState(parts: number, nodes: number): PathState {
  return {
    ending: new Array<Ending>(lanes).fill('solved'),
    scale: column(1),
    voltage: table(parts).columns,
    resistance: table(parts).columns,
    drawn: table(parts).columns,
    delivered: table(parts).columns,
    loss: table(parts).columns,
    temperature: table(nodes + 1).columns,
    heat: table(nodes + 1),
  };
}

/** Keeps the first reason why a lane has no solution. */
export function fail({ ending }: { readonly ending: Ending[] }, lane: number, reason: Ending): void {
  if (ending[lane] === 'solved') ending[lane] = reason;
}
