import type { PadCurve } from './pad-curve.ts';
import type { Rectangle } from './rectangle-contact.ts';

/**
 * A screw or spring that pulls the plate towards the board. Its force is `force` with the plate at `height` there, grows by `stiffness`
 * for every metre that the plate stands higher, and is never less than 0.
 */
export interface Screw {
  readonly x: number;
  readonly y: number;
  /** [N] */
  readonly force: number;
  /** [N/m]; 0 for a constant force. */
  readonly stiffness: number;
  /** [m] over the board; of no meaning without stiffness. */
  readonly height: number;
}

/** A component with a gap pad on it. */
export interface Pad extends Rectangle {
  /** Of the component's top over the board [m], more by the height of a step of the plate above it. */
  readonly height: number;
  /** Of the free pad [m]. */
  readonly thickness: number;
  readonly curve: PadCurve;
}

/** A die, or a package that the plate rests on through a thin layer of interface material. */
export interface Die extends Rectangle {
  /** Of its top over the board, interface material included [m]. */
  readonly height: number;
  /** Pressure for every metre that the layer is compressed [Pa/m]. */
  readonly bedding: number;
}

/** A hard support at a point: a standoff, a screw's shoulder. */
export interface Stop {
  readonly x: number;
  readonly y: number;
  /** [m] over the board. */
  readonly height: number;
  /** [N/m] */
  readonly stiffness: number;
}

/** A rigid plate and everything that pulls or carries it; x and y in the plane of the board [m]. */
export interface Plate {
  readonly screws: readonly Screw[];
  readonly pads: readonly Pad[];
  readonly dies: readonly Die[];
  readonly stops: readonly Stop[];
}

export interface PadLoad {
  /** At its centre [m]; negative: the gap that is left. */
  readonly compression: number;
  /** At its centre, and at the corner that is compressed most [1]. */
  readonly strain: number;
  readonly largestStrain: number;
  readonly force: number;
  /** Over the whole pad [Pa]. */
  readonly meanPressure: number;
  /** Whether the strains lie within the pad's data. */
  readonly covered: boolean;
}

export interface DieLoad {
  readonly force: number;
  /** Over the whole die [Pa]. */
  readonly meanPressure: number;
  /** At the corner that is pressed most, and least [Pa]. */
  readonly highestPressure: number;
  readonly lowestPressure: number;
  /** Highest over mean pressure [1]: 1 is even. Null without contact. */
  readonly unevenness: number | null;
  /** Share of the die that is touched [1]; 0: no contact. */
  readonly contact: number;
  /** Room left over the corner that is nearest to the plate [m]; 0 with contact. */
  readonly gap: number;
  /** Where the force acts [m]; the die's centre without contact. */
  readonly x: number;
  readonly y: number;
}

/** Where a plate comes to rest. Height of its underside: height + tiltX·x + tiltY·y [m]. */
export interface PlateAtRest {
  readonly ending: 'solved';
  readonly height: number;
  /** Slopes along x and y [1]. */
  readonly tiltX: number;
  readonly tiltY: number;
  readonly pads: readonly PadLoad[];
  readonly dies: readonly DieLoad[];
  /** Pull of each screw, push of each stop [N]. */
  readonly screwForces: readonly number[];
  readonly stopForces: readonly number[];
  /** Largest of the unbalanced force and the unbalanced moments over the plate's size, over the pull of the screws [1]. */
  readonly residual: number;
  /** Steps of the iteration. */
  readonly passes: number;
}

/** `unsupported`: nothing holds the plate where it is pulled: it tips over, falls through, or is free to turn. `unsettled`: passes ran out. */
export interface PlateNotAtRest {
  readonly ending: 'unsupported' | 'unsettled';
  readonly residual: number;
  readonly passes: number;
}

export type PlateResult = PlateAtRest | PlateNotAtRest;
