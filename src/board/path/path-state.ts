/**
 * What the power path and the heat path share while they are solved together.
 * Indices: parts in their order from the supply downward; heat nodes in the order of the study, ambient last.
 */
export interface PathState {
  /** Share of the processor's nominal power [1]. */
  scale: number;
  /** Voltage at each part's output [V]. */
  readonly voltage: Float64Array;
  /** Current each part draws from its feeder [A]. */
  readonly drawn: Float64Array;
  /** Current each part delivers to those it feeds [A]. */
  readonly delivered: Float64Array;
  /** Power lost in each part, or taken by a load [W]. */
  readonly loss: Float64Array;
  /** Temperature of each heat node [K]. */
  readonly temperature: Float64Array;
  /** Heat into each node [W]. */
  readonly heat: Float64Array;
}

export function pathState(parts: number, nodes: number): PathState {
  return {
    scale: 1,
    voltage: new Float64Array(parts),
    drawn: new Float64Array(parts),
    delivered: new Float64Array(parts),
    loss: new Float64Array(parts),
    temperature: new Float64Array(nodes + 1),
    heat: new Float64Array(nodes + 1),
  };
}
