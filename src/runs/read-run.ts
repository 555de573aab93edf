import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import { fromUnit } from '../quantity/write.ts';
import { type Channel, elapsed, type Run, runFile, samplesFile } from './run.ts';
import { identifier, quoted, withStore } from './store.ts';

const channelSchema = z.strictObject({
  name: z.string(),
  type: z.literal(['number', 'text']),
  unit: z.string(),
  kind: z.literal(Object.keys(kinds) as KindName[]).nullable(),
  count: z.int(),
  missing: z.int(),
  first: z.number().nullable(),
  last: z.number().nullable(),
  least: z.number().nullable(),
  greatest: z.number().nullable(),
});

const runSchema = z.strictObject({
  id: z.string(),
  format: z.literal(1),
  original: z.string(),
  sha256: z.string(),
  delimiter: z.string(),
  decimal: z.string(),
  timeColumn: z.string(),
  timeFormat: z.string(),
  start: z.string().nullable(),
  origin: z.number(),
  rows: z.int(),
  duration: z.number(),
  channels: z.array(channelSchema),
  notes: z.array(z.string()),
});

/** Runs of a study folder, in the order of their names. */
export async function listRuns(studyFolder: string): Promise<Run[]> {
  return Promise.all((await runIds(studyFolder)).map((id) => readRun(studyFolder, id)));
}

/** Folders in runs/ that hold a run: what else somebody keeps there is none. */
async function runIds(studyFolder: string): Promise<string[]> {
  const folder = join(studyFolder, 'runs');
  if (!existsSync(folder)) return [];
  const names = await readdir(folder);
  return names.filter((name) => isRunId(name) && existsSync(join(folder, name, runFile))).sort();
}

function isRunId(name: string): boolean {
  return /^[a-z][a-z0-9-]*$/.test(name);
}

/** One run's description. Throws a Refusal when there is none, or when its file isn't one. */
export async function readRun(studyFolder: string, id: string): Promise<Run> {
  const path = join(studyFolder, 'runs', id, runFile);
  if (!isRunId(id) || !existsSync(path)) {
    const known = await runIds(studyFolder);
    throw new Refusal(refuse('run/no-such-run', { id, known, near: nearest(id, known) }));
  }
  let content: unknown;
  try {
    content = parse(await readFile(path, 'utf8'));
  } catch {
    throw new Refusal(refuse('run/bad-file', { file: `runs/${id}/${runFile}`, message: 'it is no YAML' }));
  }
  const read = runSchema.safeParse(content);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const message = `${issue.path.join('.') || 'it'}: ${issue.message}`;
  throw new Refusal(refuse('run/bad-file', { file: `runs/${id}/${runFile}`, message }));
}

/** Readings of some channels, row by row; SI where the channel's unit is known, else as recorded. NaN where a reading is missing. */
export interface Readings {
  /** Seconds since the first row. */
  readonly time: Float64Array;
  readonly channels: ReadonlyMap<string, Float64Array>;
}

/** Reads number channels of a run; all of them by default. */
export async function readChannels(studyFolder: string, run: Run, names?: readonly string[]): Promise<Readings> {
  const wanted = run.channels.filter(({ name, type }) => type === 'number' && (names?.includes(name) ?? true));
  const path = quoted(join(studyFolder, 'runs', run.id, samplesFile));
  const columns = [elapsed, ...wanted.map(({ name }) => name)].map(identifier).join(', ');
  const table = await withStore((store) => store.read(`SELECT ${columns} FROM read_parquet(${path})`));
  const time = Float64Array.from(table.columns[0], Number);
  const channels = new Map(wanted.map((channel, c) => [channel.name, toSi(table.columns[c + 1], channel)]));
  return { time, channels };
}

function toSi(cells: readonly unknown[], { unit, kind }: Channel): Float64Array {
  const values = Float64Array.from(cells, (cell) => (cell === null ? Number.NaN : Number(cell)));
  if (!kind) return values;
  // A unit is a straight line: two points tell it, and a million readings needn't be parsed one by one.
  const zero = fromUnit(0, unit, kind);
  const one = fromUnit(1, unit, kind) - zero;
  return values.map((value) => zero + one * value);
}
