import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type Fault, Refusal, refuse } from '../fault/fault.ts';
import { type Detection, missing, timeScales } from './detect.ts';
import { lineOfRow, locateFault } from './locate-fault.ts';
import { type Channel, elapsed, type Run, samplesFile } from './run.ts';
import { place, type Scan } from './scan.ts';
import { identifier, quoted, type Store } from './store.ts';

/** A log that was looked through and is to be stored. */
export interface Job {
  /** The log, whole lines only. */
  readonly file: string;
  /** Its name in messages. */
  readonly name: string;
  readonly detection: Detection;
  readonly scan: Scan;
  /** Rows of readings that it must give. */
  readonly rows: number;
  /** Folder the samples are written into. */
  readonly making: string;
}

/** A log may be larger than the machine's memory; what doesn't fit is put aside in the run's own folder while it is made. */
const memory = '500MB';

type Stored = Omit<Run, 'id' | 'format' | 'original' | 'sha256'>;

/** Reads the log with the embedded database and writes its samples. Throws a Refusal naming the place of the first fault. */
export async function storeLog(store: Store, job: Job): Promise<Stored> {
  const { detection, making } = job;
  const samples = quoted(join(making, samplesFile));
  const rawFile = join(making, 'raw.parquet');
  const raw = `read_parquet(${quoted(rawFile)}, file_row_number = true)`;
  await store.run(`SET TimeZone = 'UTC'; SET memory_limit = '${memory}'; SET temp_directory = ${quoted(making)}`);
  try {
    await store.run(`COPY (SELECT * FROM ${readCsv(job)}) TO ${quoted(rawFile)} (FORMAT parquet, COMPRESSION zstd)`);
  } catch (error) {
    return refuseLocated(job, refuse('run/store', { message: String((error as Error).message).split('\n')[0] }));
  }
  await checkRows(store, job, raw);
  const seconds = secondsOf(detection);
  await checkTime(store, job, raw, seconds);
  const first = await store.read(`SELECT min(${seconds}) FROM ${raw}`);
  const origin = Number(first.columns[0][0]);
  const others = detection.columns.filter((_, c) => c !== detection.time).map(({ heading }) => identifier(heading));
  await store.run(
    `COPY (SELECT ${seconds} - (${origin}) AS ${elapsed}, ${others.join(', ')} FROM ${raw})
     TO ${samples} (FORMAT parquet, COMPRESSION zstd)`,
  );
  await rm(rawFile);
  return describe(store, job, samples, origin);
}

/** The store says that something is wrong; a slow look at each line says what and where. `otherwise` is what is said when it finds nothing. */
async function refuseLocated({ file, name, detection, scan }: Job, otherwise: Fault): Promise<never> {
  throw new Refusal((await locateFault(file, name, detection, scan.headerLine)) ?? otherwise);
}

function readCsv({ file, detection, scan }: Job): string {
  const types = detection.columns.map(({ heading, type }, c) => {
    const clock = c === detection.time && detection.timeFormat === 'date and time';
    return `${quoted(heading)}: '${clock || type === 'text' ? 'VARCHAR' : 'DOUBLE'}'`;
  });
  const options = [
    'auto_detect = false',
    'header = true',
    `skip = ${scan.headerLine - 1}`,
    `delim = ${detection.delimiter === '\t' ? "'\\t'" : quoted(detection.delimiter)}`,
    `quote = '"'`,
    `escape = '"'`,
    `decimal_separator = ${quoted(detection.decimal)}`,
    `columns = {${types.join(', ')}}`,
    `nullstr = [${missing.map(quoted).join(', ')}]`,
    'max_line_size = 1048576',
    'strict_mode = true',
  ];
  return `read_csv(${quoted(file)}, ${options.join(', ')})`;
}

/** The time column in seconds, as SQL. A date without a zone is read as UTC; null where it is none. */
function secondsOf({ columns, time, timeFormat }: Detection): string {
  const column = identifier(columns[time].heading);
  if (timeFormat === 'unknown') throw new Error('a log without a time is refused before it is stored');
  if (timeFormat === 'date and time') return `(epoch_us(TRY_CAST(trim(${column}) AS TIMESTAMPTZ)) / 1e6)`;
  return `(${column} * ${timeScales[timeFormat]})`;
}

/** As many rows as the log has lines of readings, and finite numbers only: "inf" is a number to the database. */
async function checkRows(store: Store, job: Job, raw: string): Promise<void> {
  const numbers = job.detection.columns.filter(
    ({ type }, c) => type === 'number' && !(c === job.detection.time && job.detection.timeFormat === 'date and time'),
  );
  const endless = numbers.map(({ heading }) => `count(*) FILTER (NOT isfinite(${identifier(heading)}))`);
  const { columns } = await store.read(`SELECT ${['count(*)', ...endless].join(', ')} FROM ${raw}`);
  const [rows, ...counts] = columns.map(([cell]) => Number(cell));
  if (counts.some((count) => count > 0) || rows !== job.rows)
    await refuseLocated(job, refuse('run/rows', { file: job.name, rows, lines: job.rows }));
}

/** Every row has a time, and time never stands still or goes back. */
async function checkTime(store: Store, job: Job, raw: string, seconds: string): Promise<void> {
  const { file, name, detection, scan } = job;
  const { heading } = detection.columns[detection.time];
  const column = identifier(heading);
  const found = await store.read(
    `SELECT row, written, before, now IS NULL, now = earlier FROM (
       SELECT file_row_number AS row, CAST(${column} AS VARCHAR) AS written, ${seconds} AS now,
         lag(CAST(${column} AS VARCHAR)) OVER rows AS before, lag(${seconds}) OVER rows AS earlier
       FROM ${raw} WINDOW rows AS (ORDER BY file_row_number)
     ) WHERE now IS NULL OR now <= earlier ORDER BY row LIMIT 1`,
  );
  if (found.columns[0].length === 0) return;
  const [row, now, before, none, same] = found.columns.map(([cell]) => cell);
  const { number, text } = await lineOfRow(file, scan.headerLine, Number(row));
  const where = place(name, number, text, 1, Math.max(1, text.length));
  if (none && now === null) throw new Refusal(refuse('run/time-missing', { column: heading }, where));
  if (none) throw new Refusal(refuse('run/time-format', { column: heading, text: String(now) }, where));
  const code = same ? 'run/time-twice' : 'run/time-back';
  throw new Refusal(refuse(code, { column: heading, now: String(now), before: String(before) }, where));
}

async function describe(store: Store, { detection }: Job, samples: string, origin: number): Promise<Stored> {
  const others = detection.columns.filter((_, c) => c !== detection.time);
  const figures = others.flatMap(({ heading, type }) => {
    const column = identifier(heading);
    const known = `FILTER (${column} IS NOT NULL)`;
    const numbers = ['arg_min', 'arg_max'].map((edge) => `${edge}(${column}, ${elapsed}) ${known}`);
    return [
      `count(${column})`,
      ...(type === 'number' ? [...numbers, `min(${column})`, `max(${column})`] : ['NULL', 'NULL', 'NULL', 'NULL']),
    ];
  });
  const { columns } = await store.read(
    `SELECT count(*), max(${elapsed}), ${figures.join(', ')} FROM read_parquet(${samples})`,
  );
  const [rows, duration, ...cells] = columns.map(([cell]) => (cell === null ? null : Number(cell)));
  const channels = others.map(({ heading, type, unit }, c): Channel => {
    const [count, first, last, least, greatest] = cells.slice(5 * c, 5 * c + 5);
    const known = { count: count!, missing: rows! - count! };
    return {
      name: heading,
      type,
      unit: unit?.unit ?? '',
      kind: unit?.kind ?? null,
      ...known,
      first,
      last,
      least,
      greatest,
    };
  });
  const clock = detection.timeFormat.startsWith('epoch') || detection.timeFormat === 'date and time';
  return {
    delimiter: detection.delimiter,
    decimal: detection.decimal,
    timeColumn: detection.columns[detection.time].heading,
    timeFormat: detection.timeFormat,
    start: clock ? new Date(origin * 1000).toISOString() : null,
    origin,
    rows: rows!,
    duration: duration!,
    channels,
    notes: channels.filter(({ count }) => count === 0).map(({ name }) => `channel ${name} has no reading at all`),
  };
}
