import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { copyFile, mkdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { stringify } from 'yaml';
import { Refusal, refuse } from '../fault/fault.ts';
import { type Detection, detect, missing } from './detect.ts';
import { lineAt, locateFault } from './locate-fault.ts';
import { type Channel, elapsed, type Run, runFile, samplesFile } from './run.ts';
import { place, type Scan, scanLog } from './scan.ts';
import { identifier, quoted, type Store, withStore } from './store.ts';

export interface ImportOptions {
  /** Name of the run; made from the file's name when left out. */
  readonly id?: string;
  readonly delimiter?: string;
  /** Heading of the time column. */
  readonly time?: string;
  readonly progress?: (text: string) => void;
  /** Shows what was found before anything is stored; false stops there. */
  readonly accept?: (detection: Detection, scan: Scan) => boolean | Promise<boolean>;
}

/** Reads a text log into `runs/<id>/` of a study folder: all of it or nothing. Throws a Refusal naming the place in the log. */
export async function importLog(studyFolder: string, file: string, options: ImportOptions = {}): Promise<Run | null> {
  const name = basename(file);
  const id = options.id ?? runId(name);
  if (!/^[a-z][a-z0-9-]*$/.test(id)) throw new Refusal(refuse('run/bad-id', { id }));
  const folder = join(studyFolder, 'runs', id);
  if (existsSync(folder)) throw new Refusal(refuse('run/exists', { id }));
  if ((await stat(file)).isDirectory()) throw new Refusal(refuse('run/folder', { file: name }));

  const scan = await scanLog(file, name, (bytes) => options.progress?.(`reading ${name}: ${(bytes / 1e6).toFixed(0)} MB`));
  const detection = detect(scan.head, options);
  checkDetection(detection, scan, name, options);
  if (options.accept && !(await options.accept(detection, scan))) return null;

  const making = join(studyFolder, 'runs', `.${id}-${randomUUID()}`);
  await mkdir(making, { recursive: true });
  try {
    const run = await withStore((store) => storeLog(store, { file, name, id, detection, scan, making }));
    await copyFile(file, join(making, name));
    await writeFile(join(making, runFile), writeRun(run));
    await rename(making, folder);
    return run;
  } finally {
    await rm(making, { recursive: true, force: true });
  }
}

/** "board-step-telemetry.csv.gz" becomes "board-step-telemetry". */
export function runId(fileName: string): string {
  const stem = fileName.toLowerCase().replace(/(\.(csv|tsv|txt|log|gz))+$/, '');
  return stem.replace(/[^a-z0-9]+/g, '-').replace(/^[^a-z]+|-+$/g, '') || 'run';
}

/** The run's own file, for people and for version control. */
function writeRun(run: Run): string {
  return `# A recording of this study: ${samplesFile} holds the readings, ${run.original} is the file they came from.\n${stringify(run)}`;
}

interface Job {
  readonly file: string;
  readonly name: string;
  readonly id: string;
  readonly detection: Detection;
  readonly scan: Scan;
  readonly making: string;
}

function checkDetection(detection: Detection, scan: Scan, name: string, { delimiter, time }: ImportOptions): void {
  const header = scan.head[0];
  const at = (length = header.length) => place(name, scan.headerLine, header, 1, Math.max(1, length));
  const headings = detection.columns.map(({ heading }) => heading);
  if (delimiter !== undefined && ![',', ';', '\t', '|'].includes(delimiter))
    throw new Refusal(refuse('run/bad-delimiter', { delimiter }));
  if (detection.columns.length < 2) throw new Refusal(refuse('run/one-column', {}, at()));
  const twice = headings.find((heading, i) => headings.indexOf(heading) !== i);
  if (twice !== undefined) throw new Refusal(refuse('run/duplicate-column', { column: twice }, at()));
  const nameless = headings.indexOf('');
  if (nameless >= 0) throw new Refusal(refuse('run/nameless-column', { number: nameless + 1 }, at()));
  if (scan.lines < 2) throw new Refusal(refuse('run/header-only', {}, at()));
  if (detection.time < 0)
    throw new Refusal(refuse(time === undefined ? 'run/no-time' : 'run/no-such-column', { column: time ?? '', known: headings }, at()));
}

async function storeLog(store: Store, job: Job): Promise<Run> {
  const { detection, name, id, scan, making } = job;
  const samples = quoted(join(making, samplesFile));
  const raw = quoted(join(making, 'raw.parquet'));
  const csv = readCsv(job);
  const timeColumn = identifier(detection.columns[detection.time].heading);
  try {
    await store.run(`COPY (SELECT * FROM ${csv}) TO ${raw} (FORMAT parquet, COMPRESSION zstd)`);
  } catch (error) {
    const fault = await locateFault(job.file, name, detection, scan.headerLine);
    throw fault ? new Refusal(fault) : new Refusal(refuse('run/store', { message: String((error as Error).message).split('\n')[0] }));
  }
  await checkTime(store, job, raw, timeColumn);
  const seconds = secondsOf(timeColumn, detection);
  const first = await store.read(`SELECT min(${seconds}) FROM read_parquet(${raw})`);
  const start = Number(first.columns[0][0]);
  const others = detection.columns.filter((_, c) => c !== detection.time).map(({ heading }) => identifier(heading));
  await store.run(
    `COPY (SELECT ${seconds} - ${start} AS ${elapsed}, ${others.join(', ')} FROM read_parquet(${raw})) TO ${samples} (FORMAT parquet, COMPRESSION zstd)`,
  );
  await rm(join(making, 'raw.parquet'));
  return describeRun(store, job, samples, start, id);
}

function readCsv({ file, detection, scan }: Job): string {
  const types = detection.columns.map(({ heading, type }, c) => {
    const clock = c === detection.time && detection.timeFormat === 'date and time';
    return `${quoted(heading)}: '${clock ? 'TIMESTAMP' : type === 'text' ? 'VARCHAR' : 'DOUBLE'}'`;
  });
  const delimiter = detection.delimiter === '\t' ? "'\\t'" : quoted(detection.delimiter);
  return `read_csv(${quoted(file)}, auto_detect = false, header = true, skip = ${scan.headerLine - 1}, delim = ${delimiter}, quote = '"', escape = '"', columns = {${types.join(', ')}}, nullstr = [${missing.map(quoted).join(', ')}], max_line_size = 1048576, strict_mode = true)`;
}

/** Seconds from the time column, for rows in any order. */
function secondsOf(column: string, { timeFormat }: Detection): string {
  if (timeFormat === 'date and time') return `(epoch_us(${column}) / 1e6)`;
  return timeFormat.endsWith('milliseconds') ? `(${column} / 1000)` : column;
}

/** Every row has a time, and time never stands still or goes back. */
async function checkTime(store: Store, { file, name, detection, scan }: Job, raw: string, column: string): Promise<void> {
  const found = await store.read(
    `SELECT row, now, before FROM (SELECT file_row_number AS row, ${column} AS now, lag(${column}) OVER (ORDER BY file_row_number) AS before
     FROM read_parquet(${raw}, file_row_number = true)) WHERE now IS NULL OR now <= before ORDER BY row LIMIT 1`,
  );
  if (found.columns[0].length === 0) return;
  const [row, now, before] = found.columns.map((cells) => cells[0]);
  const line = scan.headerLine + 1 + Number(row);
  const text = await lineAt(file, line);
  const { heading } = detection.columns[detection.time];
  const where = place(name, line, text, 1, text.length);
  if (now === null) throw new Refusal(refuse('run/time-missing', { column: heading }, where));
  const code = Number(now) === Number(before) ? 'run/time-twice' : 'run/time-back';
  throw new Refusal(refuse(code, { column: heading, now: sayTime(now), before: sayTime(before) }, where));
}

function sayTime(value: unknown): string {
  return value instanceof Date ? value.toISOString() : String(value);
}

async function describeRun(store: Store, { detection, name, scan }: Job, samples: string, start: number, id: string): Promise<Run> {
  const others = detection.columns.filter((_, c) => c !== detection.time);
  const figures = others.flatMap(({ heading, type }) => {
    const column = identifier(heading);
    return [`count(${column})`, ...(type === 'number' ? [`min(${column})`, `max(${column})`] : ['NULL', 'NULL'])];
  });
  const { columns } = await store.read(`SELECT count(*), max(${elapsed}), ${figures.join(', ')} FROM read_parquet(${samples})`);
  const value = (i: number) => (columns[i][0] === null ? null : Number(columns[i][0]));
  const rows = value(0)!;
  const channels = others.map(({ heading, type, unit }, c): Channel => {
    const count = value(2 + 3 * c)!;
    return {
      name: heading,
      type,
      unit: unit?.unit ?? '',
      kind: unit?.kind ?? null,
      count,
      missing: rows - count,
      least: value(3 + 3 * c),
      greatest: value(4 + 3 * c),
    };
  });
  const clock = detection.timeFormat.startsWith('epoch') || detection.timeFormat === 'date and time';
  const notes = channels.filter(({ count }) => count === 0).map((channel) => `channel ${channel.name} has no reading at all`);
  if (scan.openEnd) notes.push('the last line has no line end: the log may have been cut off there');
  return {
    id,
    format: 1,
    original: name,
    sha256: scan.sha256,
    delimiter: detection.delimiter,
    timeColumn: detection.columns[detection.time].heading,
    timeFormat: detection.timeFormat,
    start: clock ? new Date(start * 1000).toISOString() : null,
    rows,
    duration: value(1)!,
    channels,
    notes,
  };
}
