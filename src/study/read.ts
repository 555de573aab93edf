import { type Fault, refuse } from '../fault/fault.ts';
import { applyChanges } from './changes.ts';
import type { CheckInput } from './checks/check.ts';
import { checkCommonCauses } from './checks/common-causes.ts';
import { checkConductors } from './checks/conductors.ts';
import { checkFeeding } from './checks/feeding.ts';
import { checkFollowers } from './checks/followers.ts';
import { checkHeatWays } from './checks/heat-ways.ts';
import { checkJoints } from './checks/joints.ts';
import { checkLadder } from './checks/ladder.ts';
import { checkLearning } from './checks/learning.ts';
import { checkOrders } from './checks/orders.ts';
import { checkOwnLimits } from './checks/own-limits.ts';
import { checkPlate } from './checks/plate.ts';
import { checkReferences } from './checks/references.ts';
import type { Lines } from './lines.ts';
import { outlineOf, textAt } from './outline.ts';
import { addressQuantities } from './quantities.ts';
import { type Path, plainOf, type Raw, rawAt, spanAt } from './raw.ts';
import { remarksOf } from './remarks.ts';
import { boardFields, board as boardSchema, type StudyFile, studySchema } from './schema/study.ts';
import { schemaFaults } from './schema-faults.ts';
import type { Step, StepChange, StudyReading } from './study.ts';
import { readText } from './yaml-text.ts';

const mostFaults = 50;
const structureChecks = [checkReferences, checkFeeding, checkConductors, checkHeatWays, checkFollowers, checkOwnLimits];

/** A step's board as raw text, ready for its meaning. */
export interface RawStep {
  readonly id: string;
  readonly index: number;
  readonly board: Raw;
  readonly changes: readonly StepChange[];
}

/** Reads a study's text: the study with every step's board, or every fault found, in the order of the file. `file` is named in the places. */
export function readStudy(text: string, file: string): StudyReading {
  const reading = readText(text, file);
  if (!reading.ok) return { ok: false, faults: reading.faults };
  const { raw, lines } = reading;
  const faults = [...reading.faults];
  if (raw.shape !== 'map') {
    faults.push(refuse('study/not-a-study', {}, lines.place({ from: 0, to: 1 })));
    return { ok: false, faults };
  }
  const version = rawAt(raw, ['uprate']);
  if (version && !(version.shape === 'scalar' && version.value === 1)) {
    const found = version.shape === 'scalar' ? String(version.value) : `a ${version.shape}`;
    return { ok: false, faults: [refuse('study/version', { found }, lines.place(spanAt(raw, ['uprate'])))] };
  }

  const plain = plainOf(raw);
  const whole = studySchema.safeParse(plain);
  if (!whole.success) faults.push(...schemaFaults(whole.error.issues, studySchema, plain, raw, lines));
  faults.push(...checkLadder(raw, lines));
  const climbed = climb(raw, lines);
  faults.push(...climbed.faults);
  const steps: Step[] = [];
  for (const step of climbed.steps) {
    const read = readStep(step, raw, lines, reading.faults.length === 0);
    faults.push(...(step.index === 0 ? read.faults : read.faults.map((fault) => atStep(fault, step.id))));
    if (read.step) steps.push(read.step);
  }
  if (!faults.some(isRefusal)) {
    const addresses = new Map(
      steps.flatMap((step) => [...step.quantities].map(([quantity, path]) => [path, quantity])),
    );
    for (const step of steps)
      faults.push(
        ...checkCommonCauses(step.board, addresses, (path) =>
          lines.place(spanAt(rawStepOf(climbed.steps, step.id).board, path)),
        ),
      );
    faults.push(...checkLearning(raw, steps, lines));
  }

  const found = withoutTypos(inOrder(faults));
  const refusals = found.filter(isRefusal);
  if (refusals.length > 0 || !whole.success) return { ok: false, faults: capped(refusals) };
  const { title, about = '', instruments = {}, learning, advice, gate } = whole.data as StudyFile;
  const remarks = inOrder([
    ...found,
    ...steps.flatMap((step) => remarksOf(step, rawStepOf(climbed.steps, step.id), lines)),
  ]);
  return { ok: true, study: { file, title, about, steps, instruments, learning, advice, gate, remarks } };
}

/** Every step's board, each with its changes on the one before. */
export function climb(raw: Raw, lines: Lines): { steps: RawStep[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const steps: RawStep[] = [];
  let board = boardOf(raw);
  const list = rawAt(raw, ['steps']);
  if (list?.shape !== 'list') return { steps, faults };
  list.items.forEach((item, index) => {
    const id = textAt(item, ['id']) ?? String(index + 1);
    const after = applyChanges(board, item, id, lines);
    board = after.board;
    faults.push(...after.faults);
    steps.push({ id, index, board, changes: after.changes });
  });
  return { steps, faults };
}

function boardOf(raw: Raw): Raw {
  if (raw.shape !== 'map') return raw;
  return { ...raw, entries: new Map([...raw.entries].filter(([key]) => Object.hasOwn(boardFields, key))) };
}

function readStep(step: RawStep, file: Raw, lines: Lines, whole: boolean): { step?: Step; faults: Fault[] } {
  const { id, index, board: raw, changes } = step;
  const place: CheckInput['place'] = (path: Path, part) => lines.place(spanAt(raw, path, part));
  const input: CheckInput = { raw, outline: outlineOf(raw), place };
  // A name that stands twice hides one of the two: what hangs on it can't be judged.
  const faults = whole ? structureChecks.flatMap((check) => check(input)) : [];
  const plain = plainOf(raw);
  const parsed = boardSchema.safeParse(plain);
  if (!parsed.success)
    return { faults: [...faults, ...schemaFaults(parsed.error.issues, boardSchema, plain, raw, lines)] };
  const quantities = addressQuantities(parsed.data, raw);
  faults.push(...checkOrders(parsed.data, place));
  faults.push(...checkPlate(parsed.data, place), ...checkJoints(parsed.data, place));
  const title = textAt(file, ['steps', index, 'title']) ?? id;
  const about = textAt(file, ['steps', index, 'about']) ?? '';
  const changed = changes.map(({ at }) => at);
  return { step: { id, title, about, changed, changes, board: parsed.data, quantities }, faults };
}

function rawStepOf(steps: readonly RawStep[], id: string): RawStep {
  return steps.find((step) => step.id === id)!;
}

function isRefusal(fault: Fault): boolean {
  return fault.severity === 'refusal';
}

function atStep(fault: Fault, step: string): Fault {
  return { ...fault, data: { ...fault.data, step } };
}

/** In the order of the file, each said once: a later step's board has the same fault at the same place again. */
function inOrder(faults: readonly Fault[]): Fault[] {
  const seen = new Set<string>();
  const once = faults.filter((fault) => {
    const { step: _, ...data } = fault.data;
    const key = JSON.stringify([fault.code, data, fault.place?.line, fault.place?.column]);
    return !seen.has(key) && seen.add(key);
  });
  const line = (fault: Fault) => fault.place?.line ?? 0;
  const column = (fault: Fault) => fault.place?.column ?? 0;
  return once.sort((a, b) => line(a) - line(b) || column(a) - column(b));
}

/** A field with a slip in its name is told as that, not as missing too. */
function withoutTypos(faults: readonly Fault[]): Fault[] {
  const slips = faults
    .filter(({ code }) => code === 'study/unknown-key')
    .map(({ data }) => `${data.field}.${data.nearest}`);
  return faults.filter(
    ({ code, data }) => code !== 'study/missing-key' || !slips.includes(`${data.field}.${data.key}`),
  );
}

function capped(faults: readonly Fault[]): Fault[] {
  if (faults.length <= mostFaults) return [...faults];
  return [...faults.slice(0, mostFaults), refuse('study/more-faults', { more: faults.length - mostFaults })];
}
