import type { KindName } from '../quantity/kind.ts';
import type { Spread } from '../quantity/spread.ts';

/** A named number that goes into a model. */
export interface Input {
  /** Unique within a study; the same id at another step is the same physical number (same draw in a Monte Carlo run). */
  readonly id: string;
  readonly kind: KindName;
  /** Unit for display, as the person wrote it. */
  readonly unit: string;
  /** Best value [SI]. */
  readonly value: number;
  /** What is known about it beside the value; `null` for an exact number (a count, a definition). */
  readonly spread: Spread | null;
  /** Where the number comes from: "data sheet", "measured", "estimated", a citation; '' when nothing is said. */
  readonly source: string;
}

/** A limit on an output: the quantity must stay under (or over) `threshold`. */
export interface Hold {
  readonly side: 'under' | 'over';
  /** Output id that carries the limit's own value [SI] (it may depend on temperature, so it is an output too). */
  readonly thresholdOutput: string;
  /** Output id that carries the value held [SI]. */
  readonly valueOutput: string;
  /** Why it is a limit, in the words of the study or the law. */
  readonly reason: string;
}

/** A named number that comes out of a model. For a margin (limit − value, or value − limit), `hold` names its limit. */
export interface Output {
  readonly id: string;
  readonly kind: KindName;
  readonly unit: string;
  readonly title: string;
  readonly hold?: Hold;
}

/** How an evaluation ended. Anything but `solved` means that y holds no usable numbers (NaN throughout). */
export type Ending = 'solved' | 'runaway' | 'infeasible' | 'unsettled';

/** Status of the last evaluation; one object per model, written anew by each evaluation. */
export interface Status {
  ending: Ending;
  /** Largest remaining error of the coupled solution, relative to its scale [1]. */
  residual: number;
  /** Passes of the coupled iteration. */
  passes: number;
}

/** The same function on many input vectors at once, one a lane; every number is a column with a place for each lane. */
export interface Batch {
  /** One column an input, for the caller to fill: an evaluation of the model itself writes there too. */
  readonly inputs: readonly Float64Array[];
  /** One column an output; NaN in a lane that isn't `solved`. */
  readonly outputs: readonly Float64Array[];
  readonly endings: readonly Ending[];
  /** Most lanes that can be evaluated together. */
  readonly lanes: number;
  /** Evaluates the first `count` lanes. */
  evaluate(count: number): void;
}

/**
 * Named inputs, named outputs, and one pure function between them.
 * SI in, SI out; no allocation, no clock, no randomness.
 */
export interface Model {
  readonly inputs: readonly Input[];
  readonly outputs: readonly Output[];
  /** Reads `x` (length = inputs), writes `y` (length = outputs); the returned object is reused by the next call. */
  evaluate(x: Float64Array, y: Float64Array): Status;
  /** For a model that evaluates many input vectors in less time than one after the other. */
  readonly batch?: Batch;
}
