import type { KindName } from '../quantity/kind.ts';

/** A column of a recording. */
export interface Channel {
  readonly name: string;
  readonly type: 'number' | 'text';
  /** As the heading states it; '' where it states none. */
  readonly unit: string;
  /** null: no unit is known. */
  readonly kind: KindName | null;
  readonly count: number;
  readonly missing: number;
  /** First and last reading, least and greatest, in the channel's unit; null for text or where all are missing. */
  readonly first: number | null;
  readonly last: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
}

/** One recording: `runs/<id>/run.yaml`. */
export interface Run {
  readonly id: string;
  /** Version of this file's format. */
  readonly format: 1;
  /** Original file's name, kept beside, and its SHA-256. */
  readonly original: string;
  readonly sha256: string;
  readonly delimiter: string;
  /** Decimal mark of the original. */
  readonly decimal: string;
  readonly timeColumn: string;
  readonly timeFormat: string;
  /** Start in UTC (ISO 8601) where the time column is a clock; null for elapsed time. */
  readonly start: string | null;
  /** What the time column says at the first row [s]: seconds since 1970 for a clock, else since where the logger counts from. */
  readonly origin: number;
  readonly rows: number;
  /** From the first to the last row [s]. */
  readonly duration: number;
  readonly channels: readonly Channel[];
  /** Things noticed that are no refusal. */
  readonly notes: readonly string[];
}

/** File names inside a run's folder. */
export const runFile = 'run.yaml';
export const samplesFile = 'samples.parquet';

/** Name of the column with seconds since the first row. */
export const elapsed = 't';
