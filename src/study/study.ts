import type { Fault } from '../fault/fault.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Board, StudyFile } from './schema/study.ts';

/** One change of a step: what, where, when, the contents before and after, and how to take it back. */
export interface StepChange {
  /** Path of the field. */
  readonly at: string;
  /** Its content in the step before, as written; undefined where there was none. */
  readonly before: unknown;
  /** Its new content, as written; undefined where it is removed. */
  readonly after: unknown;
  readonly why?: string;
  readonly where?: string;
  /** Path in the study's folder. */
  readonly photo?: string;
  readonly undo?: string;
  /** A date, or a time in UTC. */
  readonly done?: string;
}

/** The board as it is at one step, with every number's address. */
export interface Step {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  /** Paths touched by this step's changes. */
  readonly changed: readonly string[];
  /** The changes themselves, in the order they are made. */
  readonly changes: readonly StepChange[];
  readonly board: Board;
  /**
   * Each quantity of `board` (by identity) under its path, such as `parts.core-sense.fitted.0.resistance`.
   * The same path at another step is the same physical number unless a change has replaced it: then `#<step id>` is appended.
   */
  readonly quantities: ReadonlyMap<Quantity, string>;
}

/** A study, read and understood. */
export interface Study {
  readonly file: string;
  readonly title: string;
  readonly about: string;
  readonly steps: readonly Step[];
  readonly instruments: NonNullable<StudyFile['instruments']>;
  readonly learning: StudyFile['learning'];
  readonly advice: StudyFile['advice'];
  readonly gate: StudyFile['gate'];
  /** Things to know that are no refusal: numbers without uncertainty, ratings without data. */
  readonly remarks: readonly Fault[];
}

/** The study, or every fault found in it. */
export type StudyReading =
  | { readonly ok: true; readonly study: Study }
  | { readonly ok: false; readonly faults: readonly Fault[] };
