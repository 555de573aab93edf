import type { Caution } from './cautions.ts';
import type { DescribedChange } from './changes-of.ts';
import type { ExpectedReading } from './expected-readings.ts';
import type { LowLoad } from './low-load.ts';
import type { SenseCheck } from './sense-check.ts';

export type Phase =
  | 'before'
  | 'isolate'
  | 'change'
  | 'inspect'
  | 'measure'
  | 'low load'
  | 'soak'
  | 'full load'
  | 'after';

/** One thing to do, and to tick. */
export interface ProcedureItem {
  /** Its place on the list, from 1. */
  readonly number: number;
  /** Its name, the same as long as the study has the change. */
  readonly id: string;
  readonly phase: Phase;
  readonly does: string;
  readonly details: readonly string[];
  /** When to go no further, and what it then probably is. */
  readonly stop: string | null;
  readonly cautions: readonly string[];
  readonly readings: readonly ExpectedReading[];
}

/** What a checklist is made from. */
export interface ProcedureBasis {
  /** Title of the study. */
  readonly study: string;
  readonly step: string;
  readonly title: string;
  readonly about: string;
  /** Step that the changes come on top of. */
  readonly before: string;
  readonly changes: readonly DescribedChange[];
  readonly points: readonly SenseCheck[];
  /** Null: no limiter holds by power, or there is no operating point at that load. */
  readonly low: LowLoad | null;
  /** What the instruments are expected to read at full load. */
  readonly full: readonly ExpectedReading[];
  /** Limits that are near and that no instrument watches. */
  readonly unwatched: readonly string[];
  /** Limits without data. */
  readonly open: readonly string[];
}

/** An item before it has its number; what is left out is empty. */
export interface Draft extends Partial<Omit<ProcedureItem, 'number' | 'cautions'>> {
  readonly id: string;
  readonly phase: Phase;
  readonly does: string;
  readonly warns?: readonly Caution[];
}
