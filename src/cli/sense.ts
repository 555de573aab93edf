import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal, refuse } from '../fault/fault.ts';
import { readQuantity } from '../quantity/read.ts';
import { defaultStock } from '../sense/default-stock.ts';
import type { Kind } from '../sense/fit.ts';
import { type ByHand, planSense, type SensePlanning, tryByHand } from '../sense/plan-sense.ts';
import { partByHand, readStock, type Stock, shortBelow } from '../sense/stock.ts';
import { addSteps } from '../study/add-steps.ts';
import type { Step, Study } from '../study/study.ts';
import type { Outcome } from './envelope.ts';
import { loadStudy } from './load-study.ts';
import { namedStep } from './named-step.ts';
import { replaceStudy } from './replace-study.ts';
import { senseJson } from './sense-json.ts';
import { describeSense, optionAsSteps } from './sense-text.ts';

export interface SenseCommandOptions {
  readonly limiter: string;
  readonly target?: readonly string[];
  readonly hand?: readonly string[];
  readonly stock?: string;
  readonly step?: string;
  readonly kinds?: string;
  readonly top?: number;
  /** Place of the option that is told in full, from 1. */
  readonly option?: number;
  readonly meter?: string;
  /** Put the steps of the option that is told in full behind the last step of the study. */
  readonly write?: boolean;
}

const allKinds: readonly Kind[] = ['replace', 'stack', 'divider'];

/** The `sense` verb: what to solder at the sense points so that a limiter holds at other real powers. */
export async function runSense(studyArgument: string, options: SenseCommandOptions): Promise<Outcome> {
  const { study, folder, text: studyText, path } = await loadStudy(studyArgument);
  const stepId = options.step === undefined ? study.steps[0].id : namedStep(study, options.step);
  const step = study.steps.find(({ id }) => id === stepId)!;
  const { stock, name } = await stockFor(folder, options.stock);
  const { limiter, hand = [], target = [], top = target.length > 1 ? 5 : 10 } = options;
  const meter = meterFor(study, limiter, options.meter);
  const planning =
    hand.length > 0
      ? tryByHand(step, stock, { limiter, hand: hand.map((text) => readHand(step, limiter, text)), meter: meter.at })
      : planSense(step, stock, {
          limiter,
          targets: readTargets(target),
          kinds: readKinds(options.kinds),
          top,
          meter: meter.at,
        });
  const plan = planOrRefuse(planning);
  const chosen = Math.min(options.option ?? 1, plan.options.length);
  const text = describeSense(plan, { step, chosen, stock: name, meter: meter.says, byHand: hand.length > 0 });
  const json = senseJson(plan, { stock: name, meter: meter.says });
  if (!options.write) return { text, json, exit: 0 };
  const added = addSteps(studyText, path, step.id, optionAsSteps(plan, plan.options[chosen - 1]));
  if (!added.ok) throw new Refusal(added.faults);
  await replaceStudy(path, studyText, added.text);
  const notes = [`written behind step ${step.id}: \`uprate plan\` computes the new steps`];
  return { text, json, exit: 0, notes };
}

function planOrRefuse(planning: SensePlanning) {
  if (!planning.ok) throw new Refusal(planning.faults);
  return planning.plan;
}

/** The stock list that was named, or `stock.yaml` beside the study, or the usual values. */
async function stockFor(folder: string, named: string | undefined): Promise<{ stock: Stock; name: string }> {
  const beside = join(folder, 'stock.yaml');
  const text = await textOf(named ?? beside);
  if (text === undefined && named !== undefined) throw new Refusal(refuse('command/no-file', { path: named }));
  const file = text === undefined ? 'default stock' : (named ?? beside);
  const reading = readStock(text ?? defaultStock, file);
  if (!reading.ok) throw new Refusal(reading.faults);
  return { stock: reading.stock, name: text === undefined ? 'values that are commonly sold (no stock.yaml)' : file };
}

async function textOf(path: string): Promise<string | undefined> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR') return undefined;
    throw error;
  }
}

function readTargets(written: readonly string[]): number[] {
  if (written.length === 0) throw new Refusal(refuse('sense/bad-target', { target: '', reason: 'none is given' }));
  return written.map((text) => {
    const reading = readQuantity(text, 'power');
    if (!reading.ok) throw new Refusal(reading.fault);
    const { value } = reading.quantity;
    if (value > 0) return value;
    throw new Refusal(refuse('sense/bad-target', { target: text, reason: 'it is not more than zero' }));
  });
}

function readKinds(written: string | undefined): Kind[] {
  if (written === undefined) return [...allKinds];
  return written.split(',').map((kind) => {
    const known = allKinds.find((each) => each === kind.trim());
    if (!known) throw new Refusal(refuse('sense/bad-kind', { kind: kind.trim() }));
    return known;
  });
}

const signs: Readonly<Record<string, Kind>> = { '+': 'stack', '=': 'replace', '/': 'divider' };

/** `core-sense + 22 mohm`: stacked; `=` in its place; `/` across the sense lines. */
function readHand(step: Step, limiter: string, text: string): ByHand {
  const bad = (reason: string) => new Refusal(refuse('sense/bad-hand', { hand: text, reason }));
  const [, sense, sign, written] = /^\s*([a-z][a-z0-9-]*)\s*([+=/])\s*(.+)$/.exec(text) ?? [];
  if (!sense) throw bad('it is no sense point, sign and value');
  const entry = step.board.limiters[limiter];
  const known = entry && 'reads' in entry ? entry.reads.map((read) => read.sense) : [];
  if (known.length > 0 && !known.includes(sense))
    throw bad(`${limiter} doesn’t read "${sense}"; it reads ${known.join(', ')}`);
  const reading = readQuantity(written, 'resistance');
  if (!reading.ok) throw new Refusal(reading.fault);
  if (!(reading.quantity.value >= shortBelow))
    throw new Refusal(refuse('sense/plain-short', { value: written.trim() }));
  const part = step.board.parts[sense];
  if (sign === '/' && part?.kind === 'sense' && !part.divider)
    throw new Refusal(refuse('sense/no-divider', { limiter }));
  return { sense, kind: signs[sign], part: partByHand(reading.quantity) };
}

/** How well a person knows the real power: as said here, by an instrument of the study, or an ordinary meter. */
function meterFor(study: Study, limiter: string, said: string | undefined) {
  const shown = Object.values(study.instruments).find(({ shows }) => shows === `limiters.${limiter}.real`);
  const written = said ?? shown?.uncertainty;
  if (written === undefined)
    return { at: (watts: number) => 0.02 * watts, says: 'a meter that is sure to 2 % (none is in the study)' };
  const reading = readQuantity(written, 'power');
  if (!reading.ok) throw new Refusal(reading.fault);
  const { value } = reading.quantity;
  const whose = said === undefined ? (shown!.title ?? shown!.channel) : 'your meter';
  return { at: () => value, says: `${whose}, sure to ${written}` };
}
