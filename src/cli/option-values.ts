import { InvalidArgumentError } from 'commander';
import { isDay } from '../study/schema/gate.ts';

/** Seeds are whole numbers of 32 bits. */
export const greatestSeed = 2 ** 32 - 1;

/** What every verb's first argument is. */
export const STUDY = "the study's folder, or its study.yaml";

/** What stands below a verb's options. */
export function examples(...lines: string[]): string {
  return `\nExamples:\n${lines.map((line) => `  $ ${line}`).join('\n')}`;
}

/** An option that may be given several times. */
export function collect(value: string, before: readonly string[] = []): string[] {
  return [...before, value];
}

/** A number from `least` to `most`. */
export function numberBetween(least: number, most: number): (text: string) => number {
  return (text) => {
    const number = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    if (number >= least && number <= most) return number;
    throw new InvalidArgumentError(`A number from ${least} to ${most} is expected.`);
  };
}

/** A day of the calendar, year first. */
export function calendarDay(text: string): string {
  if (isDay(text)) return text;
  throw new InvalidArgumentError('Year, month and day are expected, such as 2026-03-01.');
}

/** A share between two ends, both allowed. */
export function shareFrom(least: number, most: number) {
  return (text: string) => {
    const value = Number(text);
    if (text.trim() === '' || !(value >= least && value <= most))
      throw new InvalidArgumentError(`It has to be from ${least} to ${most}.`);
    return value;
  };
}

/** A whole number from `least` to `most`, or `other`. */
export function wholeNumber(least: number, most: number, other = least): (text: string) => number {
  return (text) => {
    const number = /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
    if ((number >= least && number <= most) || number === other) return number;
    const or = other === least ? '' : `, or ${other}`;
    throw new InvalidArgumentError(`A whole number from ${least} to ${most}${or} is expected.`);
  };
}
