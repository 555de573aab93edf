import { stringify } from 'yaml';
import { z } from 'zod';
import { type Fault, refuse } from '../fault/fault.ts';
import { plainOf } from './raw.ts';
import { readText } from './yaml-text.ts';

/** One item of a procedure that has been done. */
export interface Tick {
  /** When, in UTC: `2026-03-05T14:10:00Z`. */
  readonly at: string;
  /** What the item said then. */
  readonly said: string;
  /** The figures it gave then. */
  readonly figures?: readonly string[];
}

/** Ticks by the name of the item. */
export type Ticks = ReadonlyMap<string, Tick>;

const tick = z.strictObject({
  at: z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/),
  said: z.string(),
  figures: z.array(z.string()).optional(),
});

const file = z.strictObject({ step: z.string(), ticks: z.record(z.string(), tick) });

export type TicksReading =
  | { readonly ok: true; readonly ticks: Ticks }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads the record of ticks of one step's procedure. */
export function readTicks(text: string, path: string, step: string): TicksReading {
  const reading = readText(text, path);
  if (!reading.ok) return reading;
  if (reading.faults.length > 0) return { ok: false, faults: reading.faults };
  const parsed = file.safeParse(plainOf(reading.raw));
  const bad = (what: string): TicksReading => ({ ok: false, faults: [refuse('procedure/bad-ticks', { path, what })] });
  if (!parsed.success) {
    const [{ path: where }] = parsed.error.issues;
    return bad(`something is wrong at ${where.join('.') || 'the top'}`);
  }
  if (parsed.data.step !== step) return bad(`it belongs to step "${parsed.data.step}"`);
  return { ok: true, ticks: new Map(Object.entries(parsed.data.ticks)) };
}

/** The record as text. */
export function writeTicks(step: string, ticks: Ticks): string {
  return `# What has been done, and when (UTC); written by \`uprate procedure --tick\`.\n${stringify(
    { step, ticks: Object.fromEntries(ticks) },
    { lineWidth: 0 },
  )}`;
}
