import { readAnyKind } from '../quantity/read-any-kind.ts';
import { endsOf, standardUncertainty } from '../quantity/spread.ts';
import type { StepChange } from '../study/study.ts';

/** What a change is for whoever makes it. */
export type Work =
  | 'resistor-added'
  | 'resistor-replaced'
  | 'resistor-removed'
  | 'divider'
  | 'part'
  | 'interface'
  | 'pad'
  | 'fan'
  | 'cooling'
  | 'setting'
  | 'number';

/** Work with a soldering iron on the path of the current. */
export function isElectrical(work: Work): boolean {
  return ['resistor-added', 'resistor-replaced', 'resistor-removed', 'divider', 'part'].includes(work);
}

/** Work for which the cooler comes off, or is touched. */
export function isCooling(work: Work): boolean {
  return ['interface', 'pad', 'fan', 'cooling'].includes(work);
}

/** Whether anybody touches the board. */
export function isByHand(work: Work): boolean {
  return isElectrical(work) || isCooling(work);
}

/**
 * What kind of work a change is, by where it stands and what it brings. A single number that stays within what was known of it and is now known better,
 * not from the data sheet of another part, is a `number`: nothing is done to the board.
 */
export function workOf({ at, before, after }: StepChange): Work {
  const keys = at.split('.');
  const [section, second, third] = keys;
  if (section === 'limiters') return 'setting';
  if (!['parts', 'heat', 'plate'].includes(section)) return 'number';
  if (section === 'heat' && (second === 'ambient' || second === 'nodes')) return 'number';
  if (isKnownBetter(before, after)) return 'number';
  if (section === 'heat') return second === 'streams' ? 'fan' : elementWork(keys, before, after);
  if (section === 'plate') return second === 'pads' ? 'pad' : 'cooling';
  if (third === 'fitted') {
    if (keys.length === 4 && before === undefined) return 'resistor-added';
    if (keys.length === 4 && after === undefined) return 'resistor-removed';
    if (keys.length < 5 || keys[4] === 'resistance') return 'resistor-replaced';
    // What else is said about a resistor is a figure about the one that is there.
    return 'number';
  }
  if (third === 'divider') return 'divider';
  return third === 'title' || third === 'source' || third === 'note' ? 'number' : 'part';
}

/** What lies between two places: an interface, a pad, or anything else that carries heat. */
function elementWork(keys: readonly string[], before: unknown, after: unknown): Work {
  const said = [...keys, ...keysOf(before), ...keysOf(after)];
  const materials = [before, after].flatMap(textsAt('material'));
  if (materials.includes('pad') || materials.includes('putty') || keys[2]?.split('-').includes('pad')) return 'pad';
  const isInterface = materials.length > 0 || said.includes('bond-line') || said.includes('contact');
  return isInterface ? 'interface' : 'cooling';
}

function keysOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...keysOf(inner)]);
}

/** Every text under a key, at whatever depth. */
export const textsAt =
  (wanted: string) =>
  (value: unknown): string[] => {
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]) => [
      ...(key === wanted && typeof inner === 'string' ? [inner] : []),
      ...textsAt(wanted)(inner),
    ]);
  };

/** The text of a number as written, `{ value, source }` included; null for anything else. */
export function numberText(value: unknown): string | null {
  const text = typeof value === 'object' && value !== null && 'value' in value ? value.value : value;
  return typeof text === 'string' || typeof text === 'number' ? String(text) : null;
}

function isKnownBetter(before: unknown, after: unknown): boolean {
  if (textsAt('source')(after).some((source) => /data sheet/i.test(source))) return false;
  const [old, now] = [before, after].map((value) => {
    const text = numberText(value);
    const read = text === null ? null : readAnyKind(text);
    return read?.ok ? read.quantity : null;
  });
  if (!old?.spread || !now?.spread || old.kind !== now.kind) return false;
  const ends = endsOf(old.spread);
  const u = standardUncertainty(old.spread, old.value);
  const low = ends?.low ?? old.value - 2 * u;
  const high = ends?.high ?? old.value + 2 * u;
  return now.value >= low && now.value <= high && standardUncertainty(now.spread, now.value) < u;
}
