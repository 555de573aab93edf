import { prettyUnit } from '../quantity/unit.ts';
import type { Step, StepChange } from '../study/study.ts';
import { placeOnBoard } from './place-on-board.ts';
import { numberText, textsAt, type Work, workOf } from './work.ts';

/** One number, word or name that a change touches; texts as written, null where there is none. */
export interface ChangedField {
  /** '' for the content itself. */
  readonly name: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** A change of a step in words. */
export interface DescribedChange extends Omit<StepChange, 'before' | 'after' | 'undo'> {
  /** `change-1` is the first change of the step. */
  readonly id: string;
  readonly work: Work;
  /** Where it is on the board, by the titles of the study. */
  readonly title: string;
  /** What differs. */
  readonly fields: readonly ChangedField[];
  /** What the heat passes at that place afterwards, where the study names the materials. */
  readonly materials: readonly string[];
  /** What is done. */
  readonly does: string;
  /** How it is taken back. */
  readonly undo: string;
}

/** A step's changes in words, in the order they are made; `before` is the step that they come on top of. */
export function changesOf(step: Step, before: Step): readonly DescribedChange[] {
  return step.changes.map((change, i) => describeChange(change, `change-${i + 1}`, before, step));
}

/** One change in words; the steps are those that its contents before and after belong to. */
export function describeChange(change: StepChange, id: string, beforeIt: Step, afterIt: Step): DescribedChange {
  const { before, after, undo, ...record } = change;
  const work = workOf(change);
  // What a change brings has its title only afterwards, what it removes only before.
  const place = placeOnBoard((before === undefined ? afterIt : beforeIt).board, change.at);
  const fields = fieldsBetween(before, after);
  const title = place.title || (change.at.split('.')[1] ?? change.at);
  const keys = place.rest.filter((key) => !/^\d+$/.test(key) && key !== 'through' && key !== 'fitted');
  const name = place.title ? keys.join(' ') : '';
  const does = sayWork({ work, title, name, fields });
  const backwards = fields.map((each) => ({ ...each, before: each.after, after: each.before }));
  const back = sayWork({ work: inverse(work), title, name, fields: backwards });
  const taken = undo ?? (work === 'interface' ? `${back} ${FRESH}` : back);
  const [section, kind, link] = change.at.split('.');
  const materials = section === 'heat' && kind === 'links' ? textsAt('material')(afterIt.board.heat.links[link]) : [];
  return { ...record, id, work, title, fields, materials, does, undo: taken };
}

/** What has dried, or has been pressed, doesn't come back. */
const FRESH = 'A fresh layer isn’t the old one: learn its numbers anew.';

function inverse(work: Work): Work {
  if (work === 'resistor-added') return 'resistor-removed';
  return work === 'resistor-removed' ? 'resistor-added' : work;
}

interface Said {
  readonly work: Work;
  readonly title: string;
  readonly name: string;
  readonly fields: readonly ChangedField[];
}

function sayWork({ work, title, name, fields }: Said): string {
  const resistance = fields.find((field) => field.name === 'resistance' || field.name === '');
  const old = resistance?.before ?? 'unknown resistance';
  const now = resistance?.after ?? 'unknown resistance';
  const what = name ? `${title}: ${name}` : title;
  const differences = fields.map(sayField).join(', ') || 'the figures stay the same';
  switch (work) {
    case 'resistor-added':
      return `Solder a resistor of ${now} at "${title}".`;
    case 'resistor-removed':
      return `Take off the resistor of ${old} at "${title}"; the others stay.`;
    case 'resistor-replaced':
      return resistance && resistance.before !== resistance.after
        ? `At "${title}", take off the resistor of ${old} and solder one of ${now} in its place.`
        : `Replace the resistors at "${title}": ${differences}.`;
    case 'divider':
      return `Change the divider on the sense lines of "${title}": ${differences}.`;
    case 'part':
      return `Change the part "${what}": ${differences}.`;
    case 'interface':
      return `Renew the interface "${what}": ${differences}.`;
    case 'pad':
      return `Change the gap pad "${what}": ${differences}.`;
    case 'fan':
      return `Change what moves the air, "${what}": ${differences}.`;
    case 'cooling':
      return `Change the cooling at "${what}": ${differences}.`;
    case 'setting':
      return `Set "${what}": ${differences}.`;
    case 'number':
      return `Nothing is done to the board: for "${what}" the study now says ${differences}.`;
  }
}

function sayField({ name, before, after }: ChangedField): string {
  const of = name ? `${name} ` : '';
  if (before === null) return `${of}${after} is new`;
  return after === null ? `${of}${before} goes` : `${of}${before} → ${after}`;
}

/** The numbers and words that differ; what people call a thing and where its numbers come from isn't a difference. */
function fieldsBetween(before: unknown, after: unknown): ChangedField[] {
  const [old, now] = [leaves(before), leaves(after)];
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((name) => {
    const field = { name, before: old.get(name) ?? null, after: now.get(name) ?? null };
    return field.before === field.after ? [] : [field];
  });
}

function leaves(value: unknown, path = ''): Map<string, string> {
  if (value === undefined || value === null) return new Map();
  const text = numberText(value);
  if (text !== null) return new Map([[path, withPrettyUnits(text)]]);
  if (typeof value !== 'object') return new Map([[path, String(value)]]);
  return new Map(
    Object.entries(value).flatMap(([key, inner]) =>
      ['title', 'source', 'note'].includes(key) ? [] : [...leaves(inner, path ? `${path} ${key}` : key)],
    ),
  );
}

/** "22 mohm ± 1 %" as "22 mΩ ± 1 %": what a person reads beside computed figures looks like them. */
function withPrettyUnits(text: string): string {
  return /^[-+]?[\d.]/.test(text) ? prettyUnit(text) : text;
}
