/**
 * How far a published figure can be trusted: A a standard or a certified table, B a published worked example,
 * C an independent program or a closed form.
 */
export type Tier = 'A' | 'B' | 'C';

/** One published figure beside what a law of `src/physics` or a method of `src/metrology` gives for the same inputs. */
export interface Figure {
  /** What it is, with its inputs and its unit: "drop across 2 mm of 5 W/(m·K) over 900 mm² at 10 W [K]". */
  readonly what: string;
  readonly computed: number;
  readonly published: number;
  /** Largest difference allowed, in the unit of the figure. A law that is one per cent off must not pass. */
  readonly tolerance: number;
  /** Where the tolerance comes from. */
  readonly why: string;
  /** Title, organisation, year, equation or table; "from memory" where it was not read. */
  readonly source: string;
  readonly tier: Tier;
  /** Only where one per cent of the figure can't show, with the reason (a zero, a temperature, a figure printed too coarsely). */
  readonly coarse?: string;
}

/** A published figure that doesn't follow from its own inputs: the law must not give it. */
export interface Trap {
  readonly what: string;
  readonly computed: number;
  readonly published: number;
  /** Difference that the computed figure has to exceed, in the unit of the figure; within it the trap would be met. */
  readonly tolerance: number;
  /** Where the tolerance comes from. */
  readonly why: string;
  readonly source: string;
  /** What is wrong with it. */
  readonly reason: string;
}

/** Everything that is checked of one topic. */
export interface Topic {
  readonly title: string;
  readonly field: 'electrical' | 'thermal' | 'mechanics' | 'chemistry' | 'sensing' | 'metrology';
  readonly figures: readonly Figure[];
  readonly traps?: readonly Trap[];
  /** What stays unchecked for want of a published figure. */
  readonly unchecked?: readonly string[];
}
