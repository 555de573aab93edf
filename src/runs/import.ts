import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, existsSync, readdirSync, rmdirSync, rmSync } from 'node:fs';
import { copyFile, mkdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { stringify } from 'yaml';
import { Refusal, refuse } from '../fault/fault.ts';
import { checkDetection, checkGiven } from './check-detection.ts';
import { type Detection, detect, type Given } from './detect.ts';
import { lineFault } from './locate-fault.ts';
import { type Run, runFile, samplesFile } from './run.ts';
import { place, type Scan, scanLog } from './scan.ts';
import { withStore } from './store.ts';
import { storeLog } from './store-log.ts';
import { copyWhole } from './whole-lines.ts';

export interface ImportOptions extends Given {
  /** Name of the run; made from the file's name when left out. */
  readonly id?: string;
  /** Leaves out a last line that was cut off; such a log is refused otherwise. */
  readonly allowCut?: boolean;
  /** What should stand beside the recording, before what the import itself notices. */
  readonly notes?: readonly string[];
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
  await checkFile(file, name);
  checkGiven(options);

  const say = (bytes: number) => options.progress?.(`reading ${name}: ${(bytes / 1e6).toFixed(0)} MB`);
  const scan = await scanLog(file, name, say);
  const detection = detect(scan.head, options);
  checkDetection(detection, scan, name, options);
  const cut = isCut(scan, detection);
  if (cut && !options.allowCut) throw new Refusal(refuse('run/cut-off', {}, lastPlace(name, scan)));
  const rows = scan.lines - 1 - (cut ? 1 : 0);
  if (rows < 1) throw new Refusal(refuse('run/header-only', {}, place(name, scan.headerLine, scan.head[0])));
  if (options.accept && !(await options.accept(detection, scan))) return null;

  const runs = join(studyFolder, 'runs');
  const hadRuns = existsSync(runs);
  const making = join(runs, `.${id}-${randomUUID()}`);
  // A refused import leaves no empty folder; one with runs in it stays, and that is no error.
  const clear = () => {
    rmSync(making, { recursive: true, force: true });
    if (!hadRuns && existsSync(runs) && readdirSync(runs).length === 0) rmdirSync(runs);
  };
  const leave = (signal: NodeJS.Signals) => {
    clear();
    process.exit(signal === 'SIGINT' ? 130 : 143);
  };
  const signals = ['SIGINT', 'SIGTERM'] as const;
  for (const signal of signals) process.once(signal, leave);
  try {
    await mkdir(making, { recursive: true });
    options.progress?.(`storing ${name}`);
    const original = join(making, originalName(name));
    await copyFile(file, original);
    const whole = cut ? await copyWhole(original, join(making, 'whole.csv'), scan.wholeBytes) : original;
    const notes = notesOf(scan, cut, detection, options);
    const stored = await withStore((store) => storeLog(store, { file: whole, name, detection, scan, rows, making }));
    const sha256 = await hashOf(original);
    const run: Run = {
      id,
      format: 1,
      original: originalName(name),
      sha256,
      ...stored,
      notes: [...(options.notes ?? []), ...notes, ...stored.notes],
    };
    if (cut) await rm(whole);
    await writeFile(join(making, runFile), writeRun(run));
    await putInPlace(making, folder, id);
    return run;
  } finally {
    for (const signal of signals) process.off(signal, leave);
    clear();
  }
}

/** "board-step-telemetry.csv.gz" becomes "board-step-telemetry". */
export function runId(fileName: string): string {
  const stem = fileName.toLowerCase().replace(/(\.(csv|tsv|txt|log|gz))+$/, '');
  return stem.replace(/[^a-z0-9]+/g, '-').replace(/^[^a-z]+|-+$/g, '') || 'run';
}

async function checkFile(file: string, name: string): Promise<void> {
  const about = await stat(file).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT' || error.code === 'ENOTDIR') throw new Refusal(refuse('run/no-file', { file }));
    throw error;
  });
  if (!about.isFile()) throw new Refusal(refuse('run/no-plain-file', { file: name }));
}

/** A last line without a line end counts as cut off when something is missing from it. */
function isCut({ openEnd, lines }: Scan, detection: Detection): boolean {
  return openEnd !== '' && lines > 1 && lineFault(openEnd, detection) !== null;
}

function lastPlace(name: string, { lastLine, openEnd }: Scan) {
  return place(name, lastLine, openEnd, openEnd.length, 1);
}

function notesOf(scan: Scan, cut: boolean, detection: Detection, given: Given): string[] {
  const notes: string[] = [];
  if (cut) notes.push(`line ${scan.lastLine}, the last one, was cut off and is left out`);
  else if (scan.openEnd !== '')
    notes.push(`line ${scan.lastLine}, the last one, has no line end: digits of its last field may be missing`);
  if (detection.timeFormat === 'date and time' && !/(Z|[+-]\d{2}(:?\d{2})?)\s*$/.test(detection.firstTime.slice(11)))
    notes.push('the times state no zone and are taken as UTC');
  for (const { heading, type, unit } of detection.columns)
    if (type === 'text' && unit && !given.text?.includes(heading))
      notes.push(`column ${heading} states a unit and yet holds no numbers that can be read: it is taken as words`);
  return notes;
}

/** The original keeps its name unless that is the name of one of the run's own files. */
function originalName(name: string): string {
  return [runFile, samplesFile].includes(name.toLowerCase()) ? `log-${name}` : name;
}

async function hashOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file)) hash.update(chunk);
  return hash.digest('hex');
}

/** The run's own file, for people and for version control. */
function writeRun(run: Run): string {
  return `# A recording of this study: ${samplesFile} holds the readings, ${run.original} is the file they came from.\n${stringify(run)}`;
}

async function putInPlace(making: string, folder: string, id: string): Promise<void> {
  try {
    await rename(making, folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOTEMPTY' || code === 'EEXIST') throw new Refusal(refuse('run/exists', { id }));
    throw error;
  }
}
