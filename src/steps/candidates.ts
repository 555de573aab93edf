import type { BoardModel } from '../board/assemble.ts';
import { Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import type { Candidate } from '../metrology/advice.ts';
import type { Input, Model, Output } from '../metrology/model.ts';
import { readQuantity } from '../quantity/read.ts';
import { standardUncertainty } from '../quantity/spread.ts';
import type { Step, Study } from '../study/study.ts';
import { NUMBER, PRESENT, READING } from './beside.ts';
import { readInstrument } from './instrument.ts';
import { placeOnBoard } from './place-on-board.ts';
import { calibration, gluedThermocouple, RUN_HOURS, STEADY_NOISE, usualMeasurements } from './usual-measurements.ts';

/** A measurement that the study could do. Effort is in hours. */
export interface StudyCandidate extends Candidate {
  /** What is to be done: "measure …", "read … at step …". */
  readonly title: string;
  readonly by: string;
  /** Standard uncertainty of the result where it isn't `u` alone: a reading with the error of its instrument [SI]. */
  readonly attains?: number;
  /** Whose word the uncertainty and the effort are: the study's, or common practice. */
  readonly source: 'study' | 'common practice, no source';
}

/** Everything that could be measured before a step: its uncertain numbers, and what the board of the present step shows. */
export function candidatesOf(
  study: Study,
  next: BoardModel,
  present: BoardModel,
  both: Model,
): readonly StudyCandidate[] {
  const stated = statedMeasurements(study, both);
  const told = new Set([...stated.map(({ of }) => of), ...neverMeasured(study, both)]);
  return [
    ...stated.map(({ candidate }) => candidate),
    ...both.inputs
      .filter(({ id }) => !told.has(id) && !isInstrument(id))
      .flatMap((input) => numberCandidates(input, next, present, both)),
    ...instrumentCandidates(study, present, told),
    ...placeCandidates(study, present, told),
  ];
}

const isInstrument = (id: string) => id.startsWith('instruments.');

const commonPractice = 'common practice, no source' as const;

/** The usual way to measure a number, where it would say more than is stated. */
function numberCandidates(input: Input, next: BoardModel, present: BoardModel, both: Model): StudyCandidate[] {
  const usual = usualMeasurements[input.kind];
  if (!usual || input.spread === null) return [];
  const u = Math.hypot(usual.share * input.value, usual.fixed);
  if (u >= standardUncertainty(input.spread, input.value)) return [];
  const title = `measure ${titleOf(next.step, input.id) ?? titleOf(present.step, input.id) ?? input.id}`;
  const { by, hours: effort } = usual;
  return [{ id: input.id, what: whatOf(input.id, both), u, effort, title, by, source: commonPractice }];
}

/** Each instrument read at the present step as it is, with the error that all its readings share, and after a calibration. */
function instrumentCandidates(study: Study, present: BoardModel, told: ReadonlySet<string>): StudyCandidate[] {
  return Object.entries(study.instruments).flatMap(([id, entry]) => {
    if (told.has(entry.shows)) return [];
    const { title, u: shared, repeatability } = readInstrument(present, id, entry);
    const noise = repeatability > 0 ? repeatability : shared * STEADY_NOISE;
    return [
      {
        id: `instruments.${id}`,
        what: { output: `${READING}${id}` },
        u: noise,
        attains: Math.hypot(shared, noise),
        effort: RUN_HOURS,
        title: `read "${title}" at step ${present.step.id}`,
        by: 'as it is',
        source: commonPractice,
        oneOf: id,
      },
      {
        id: `instruments.${id}.calibrated`,
        what: { output: `${PRESENT}${entry.shows}` },
        u: Math.hypot(shared * calibration.left, noise),
        effort: RUN_HOURS + calibration.hours,
        title: `calibrate "${title}" and read it at step ${present.step.id}`,
        by: 'compared with a better one',
        source: commonPractice,
        oneOf: id,
      },
    ];
  });
}

/** A thermocouple on every place that no instrument watches. */
function placeCandidates(study: Study, present: BoardModel, told: ReadonlySet<string>): StudyCandidate[] {
  const watched = new Set(Object.values(study.instruments).map(({ shows }) => shows));
  return Object.entries(present.step.board.heat.nodes).flatMap(([node, { title = node }]) => {
    const shows = `heat.nodes.${node}.temperature`;
    if (watched.has(shows) || told.has(shows)) return [];
    return [
      {
        id: shows,
        what: { output: `${PRESENT}${shows}` },
        u: gluedThermocouple.u,
        effort: gluedThermocouple.hours + RUN_HOURS,
        title: `glue a thermocouple to "${title}" and read it at step ${present.step.id}`,
        by: 'thermocouple',
        source: commonPractice,
      },
    ];
  });
}

/** What the study itself says could be measured. Throws a Refusal for a name or a number that can't be understood. */
function statedMeasurements(study: Study, both: Model): { of: string; candidate: StudyCandidate }[] {
  return (study.advice?.measurements ?? []).map(({ of, by, uncertainty, effort }) => {
    const target = targetOf(of, both);
    const candidate = {
      id: of,
      what: target.what,
      u: uncertaintyOf(uncertainty, target.found),
      effort: effort.value / 3600,
      title: 'value' in target.found ? `measure ${of}` : `read ${of} at the present step`,
      by,
      source: 'study' as const,
    };
    return { of, candidate };
  });
}

function neverMeasured(study: Study, both: Model): readonly string[] {
  const never = study.advice?.never ?? [];
  for (const of of never) targetOf(of, both);
  return never;
}

function targetOf(of: string, both: Model): { what: Candidate['what']; found: Input | Output } {
  const input = both.inputs.find(({ id }) => id === of);
  if (input) return { what: whatOf(of, both), found: input };
  const output = both.outputs.find(({ id }) => id === `${PRESENT}${of}`);
  if (output) return { what: { output: output.id }, found: output };
  const known = [...both.inputs, ...both.outputs].map(({ id }) => id);
  throw new Refusal(refuse('advice/no-such-number', { of, near: nearest(of, known) }));
}

/** A number itself; where others have a part in it, what comes of all of them. */
function whatOf(id: string, both: Model): Candidate['what'] {
  const output = `${NUMBER}${id}`;
  return both.outputs.some((each) => each.id === output) ? { output } : { input: id };
}

/** "0.3 %" of the value of an input, or a number with its unit. */
function uncertaintyOf(text: string, found: Input | Output): number {
  const kind = found.kind === 'temperature' ? 'temperature-difference' : found.kind;
  const share = /^\s*([\d.]+)\s*%\s*$/.exec(text);
  if (share && kind !== 'ratio' && 'value' in found) return (Number(share[1]) / 100) * Math.abs(found.value);
  const read = readQuantity(text, kind);
  if (!read.ok) throw new Refusal(read.fault);
  if (read.quantity.value > 0) return read.quantity.value;
  throw new Refusal(refuse('advice/no-uncertainty', { text }));
}

/** A number by the titles of what it belongs to: "Sense resistor of the core, R2: resistance". Null where the step has no such number. */
function titleOf({ board, quantities }: Step, path: string): string | null {
  if (![...quantities.values()].includes(path)) return null;
  const { title, rest } = placeOnBoard(board, path.split('#')[0]);
  const name = rest.filter((key) => !/^\d+$/.test(key) && key !== 'through').join(' ');
  return title === '' ? path : `${title}: ${name}`;
}
