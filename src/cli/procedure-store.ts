import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal } from '../fault/fault.ts';
import { readTicks, type Ticks, writeTicks } from '../study/ticks.ts';
import { replaceStudy } from './replace-study.ts';

/** The ticks of a step's procedure as they lie in the study's folder. */
export interface StoredTicks {
  readonly path: string;
  /** null: no file yet. */
  readonly text: string | null;
  readonly ticks: Ticks;
}

/** Reads `procedures/<step>.yaml` of a study's folder; no file is no ticks. */
export async function loadTicks(folder: string, step: string): Promise<StoredTicks> {
  const path = join(folder, 'procedures', `${step}.yaml`);
  const text = await textOf(path);
  if (text === null) return { path, text, ticks: new Map() };
  const reading = readTicks(text, path, step);
  if (!reading.ok) throw new Refusal(reading.faults);
  return { path, text, ticks: reading.ticks };
}

/** Puts other ticks in the place of those that were read: whole or not at all, and never over a file that has changed meanwhile. */
export async function storeTicks(stored: StoredTicks, step: string, ticks: Ticks): Promise<void> {
  if (stored.text === null) {
    await mkdir(join(stored.path, '..'), { recursive: true });
    await startFile(stored.path, step);
  }
  await replaceStudy(stored.path, stored.text ?? writeTicks(step, new Map()), writeTicks(step, ticks));
}

/** A record without ticks; another one that has come meanwhile stays. */
async function startFile(path: string, step: string): Promise<void> {
  try {
    await writeFile(path, writeTicks(step, new Map()), { flag: 'wx' });
  } catch (error) {
    // Half a file would be in the way of every later tick.
    if ((error as NodeJS.ErrnoException).code === 'ENOSPC') await rm(path, { force: true });
    throw error;
  }
}

async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
