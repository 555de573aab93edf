import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Refusal, refuse } from '../fault/fault.ts';
import { readStudy } from '../study/read.ts';
import type { Study } from '../study/study.ts';
import { checkOutputs } from './check-outputs.ts';

export interface LoadedStudy {
  readonly study: Study;
  readonly text: string;
  /** The study file. */
  readonly path: string;
  /** The folder it lies in, with runs/ beside it. */
  readonly folder: string;
}

const largest = 5_000_000;

/** Reads the study in a folder, or a study file; throws a `Refusal` with every fault found. */
export async function loadStudy(studyArgument: string): Promise<LoadedStudy> {
  const found = await locateStudy(studyArgument);
  const reading = readStudy(found.text, found.path);
  const faults = reading.ok ? checkOutputs(reading.study, found.text) : reading.faults;
  if (!reading.ok || faults.length > 0) throw new Refusal(faults);
  return { study: reading.study, ...found };
}

/** The text of a study, not yet read for its meaning. */
export async function locateStudy(studyArgument: string): Promise<{ text: string; path: string; folder: string }> {
  let path = studyArgument;
  let about = await statOf(path);
  if (about?.isDirectory()) {
    path = join(studyArgument, 'study.yaml');
    about = await statOf(path);
    if (!about) throw new Refusal(refuse('study/no-study-file', { path: studyArgument }));
  }
  if (!about?.isFile()) throw new Refusal(refuse('command/no-file', { path: studyArgument }));
  if (about.size > largest)
    throw new Refusal(refuse('study/too-big', { size: about.size, most: largest }, placeOf(path)));
  const bytes = await readFile(path);
  try {
    return {
      text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes),
      path,
      folder: dirname(path),
    };
  } catch {
    throw new Refusal(refuse(bytes.includes(0) ? 'study/binary' : 'study/not-utf8', {}, placeOf(path)));
  }
}

async function statOf(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'ENAMETOOLONG') return undefined;
    throw error;
  }
}

function placeOf(path: string) {
  return { file: path, line: 1, column: 1, length: 1, text: `(${basename(path)})` };
}
