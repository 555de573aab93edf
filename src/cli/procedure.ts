import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { readQuantity } from '../quantity/read.ts';
import { type Procedure, procedureOf } from '../steps/procedure.ts';
import type { ProcedureItem } from '../steps/procedure-item.ts';
import { orphansOf, stateOf, tickOf } from '../steps/procedure-ticks.ts';
import type { Tick, Ticks } from '../study/ticks.ts';
import type { Outcome } from './envelope.ts';
import { jsonSafe } from './json-safe.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { isPrintedProcedure, procedureHtml } from './procedure-html.ts';
import { procedureMarkdown } from './procedure-markdown.ts';
import { loadTicks, storeTicks } from './procedure-store.ts';
import { procedureText, warnings } from './procedure-text.ts';

export interface ProcedureCommandOptions {
  readonly step: string;
  readonly tick?: readonly string[];
  readonly untick?: readonly string[];
  readonly print?: string;
  readonly lowLoad?: string;
  readonly resolution?: string;
  /** The present time. */
  readonly now: Date;
}

/** The `procedure` verb: the checklist of a step, printed or ticked. */
export async function runProcedure(studyArgument: string, options: ProcedureCommandOptions): Promise<Outcome> {
  const { study, folder } = await loadStudy(studyArgument);
  const step = namedStep(study, options.step);
  const procedure = procedureOf(study, step, {
    lowPower: powerOf(options.lowLoad, 'power for a small load'),
    resolution: powerOf(options.resolution, 'last digit of a reading'),
  });
  const stored = await loadTicks(folder, step);
  const { tick = [], untick = [] } = options;
  // Every name is looked up before anything is written.
  const named = (names: readonly string[]) => names.map((name) => namedItem(procedure.items, name, step));
  const ticks = ticked(stored.ticks, named(tick), named(untick), timeOf(options.now));
  if (tick.length + untick.length > 0) await storeTicks(stored, step, ticks);
  const printed = options.print;
  if (printed !== undefined)
    await print(printed, isHtml(printed) ? procedureHtml(procedure, ticks) : procedureMarkdown(procedure, ticks));
  return {
    text:
      printed === undefined
        ? procedureText(procedure, ticks)
        : [`printed to ${printed}`, ...warnings(procedure, ticks)].join('\n'),
    json: jsonSafe({
      ...procedure,
      items: procedure.items.map((item) => ({ ...item, ...stateOf(item, ticks) })),
      noLonger: orphansOf(procedure.items, ticks).map(([id, orphan]) => ({ id, ...orphan })),
      ticks: stored.path,
      printed: printed ?? null,
    }),
    exit: 0,
    notes: missingPictures(procedure.changes, folder),
  };
}

/** Pictures that a change names and that aren't in the study's folder. */
function missingPictures(changes: Procedure['changes'], folder: string): string[] {
  return changes.flatMap(({ id, photo }) =>
    photo === undefined || existsSync(join(folder, photo))
      ? []
      : [`${id}: there is no picture "${photo}" in the study's folder`],
  );
}

function ticked(
  ticks: Ticks,
  done: readonly ProcedureItem[],
  taken: readonly ProcedureItem[],
  at: string,
): Map<string, Tick> {
  const after = new Map(ticks);
  for (const item of done) after.set(item.id, tickOf(item, at));
  for (const { id } of taken) after.delete(id);
  return after;
}

/** An item by its number or its name. */
function namedItem(items: readonly ProcedureItem[], wanted: string, step: string): ProcedureItem {
  const found = items.find(({ id, number }) => id === wanted || String(number) === wanted);
  if (found) return found;
  const known = items.map(({ id }) => id);
  throw new Refusal(
    refuse('procedure/no-such-item', {
      item: wanted,
      step,
      most: items.length,
      known,
      nearest: nearest(wanted, known),
    }),
  );
}

function powerOf(text: string | undefined, what: string): number | undefined {
  if (text === undefined) return undefined;
  const read = readQuantity(text, 'power');
  if (read.ok && read.quantity.value > 0) return read.quantity.value;
  throw new Refusal(refuse('procedure/bad-power', { text, what }));
}

/** To the second, in UTC. */
function timeOf(now: Date): string {
  return `${now.toISOString().slice(0, 19)}Z`;
}

const isHtml = (path: string) => /\.html?$/i.test(path);

/** Writes a printed procedure; a file that is something else is left alone. */
async function print(path: string, text: string): Promise<void> {
  if (!isHtml(path) && !/\.(md|markdown)$/i.test(path)) throw new Refusal(refuse('procedure/no-such-form', { path }));
  try {
    await writeFile(path, text, { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    if (!isPrintedProcedure(await readFile(path, 'utf8'))) throw new Refusal(refuse('procedure/file-exists', { path }));
    await writeFile(path, text);
  }
}
