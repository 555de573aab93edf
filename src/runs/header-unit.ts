import type { KindName } from '../quantity/kind.ts';
import { readUnit } from '../quantity/unit.ts';

/** What a column's heading says about its numbers. */
export interface HeadingUnit {
  /** The heading without its unit. */
  readonly name: string;
  readonly unit: string;
  readonly kind: KindName;
}

/** Endings of headings that aren't units by their spelling. */
const endings: Readonly<Record<string, readonly [unit: string, kind: KindName]>> = {
  C: ['degC', 'temperature'],
  degC: ['degC', 'temperature'],
  '°C': ['degC', 'temperature'],
  F: ['degF', 'temperature'],
  K: ['K', 'temperature'],
  pct: ['%', 'ratio'],
  '%': ['%', 'ratio'],
  percent: ['%', 'ratio'],
  sec: ['s', 'time'],
  seconds: ['s', 'time'],
};

/** Kinds that a recording's column is tried for, in this order. */
const recorded: readonly KindName[] = [
  'power',
  'voltage',
  'current',
  'time',
  'frequency',
  'energy',
  'resistance',
  'pressure',
  'volume-flow',
  'force',
  'length',
  'mass',
];

/** Reads `power_W`, `Temp [°C]`, `Power (W)` or `time_unix_s`; null when the heading states no unit that is known. */
export function unitOfHeading(heading: string): HeadingUnit | null {
  const bracketed = /^(.*?)\s*[[(]([^\])]+)[\])]\s*$/.exec(heading);
  const tailed = /^(.*)[_\s]([^_\s]+)$/.exec(heading);
  const [, name, written] = bracketed ?? tailed ?? [];
  if (name === undefined || name === '') return null;
  return headingUnit(name, written);
}

/** A unit that a heading states or that is given for it; null when it is none that is known. */
export function headingUnit(name: string, written: string): HeadingUnit | null {
  if (Object.hasOwn(endings, written)) {
    const [unit, kind] = endings[written];
    return { name, unit, kind };
  }
  const kind = recorded.find((each) => readUnit(written, each));
  return kind ? { name, unit: written, kind } : null;
}
