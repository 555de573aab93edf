import { prettyUnit } from '../quantity/unit.ts';
import type { Step } from '../study/study.ts';
import { atDigitsOf } from './expected-readings.ts';
import { figure } from './figure.ts';
import { type ExpectedResistance, resistanceAtRest, senseAtRest } from './sense-at-rest.ts';
import type { Figure } from './step-plan.ts';
import { usualMeasurements } from './usual-measurements.ts';

/** Something that can have gone wrong at a sense point. */
export interface Mistake {
  readonly what: string;
  readonly measured: Figure;
  /** Whether that lies outside the interval of what is expected. */
  readonly tells: boolean;
}

/** What a sense point must measure after it has been changed, with four wires, the board without power. */
export interface SenseCheck {
  readonly part: string;
  readonly title: string;
  /** ± is the standard uncertainty of prediction and meter together. */
  readonly expected: Figure;
  /** 95 % interval of the reading. */
  readonly low: Figure;
  readonly high: Figure;
  /** What it measured before. */
  readonly before: Figure | null;
  /** What else could be there, and what would then be measured. */
  readonly mistakes: readonly Mistake[];
  readonly meter: string;
}

/** The check of one sense point at a step; `before` is the step it is compared with. Null: it has no resistance. */
export function senseCheck(part: string, step: Step, before: Step): SenseCheck | null {
  const now = senseAtRest(step, part, meterU);
  if (!now) return null;
  const was = before.board.parts[part]?.kind === 'sense' ? resistanceAtRest(before, part) : null;
  const written = (value: number, u: number) => figure(value, u, 'resistance', 'mΩ');
  const rounded = (value: number) => atDigitsOf(written(value, now.u));
  const mistake = (what: string, value: number | null): Mistake[] =>
    value === null ? [] : [{ what, measured: rounded(value), tells: isOutside(value, now) }];
  const entry = step.board.parts[part];
  const fitted = entry.kind === 'sense' ? entry.fitted : [];
  const open = fitted.flatMap(({ title, resistance }, i) =>
    mistake(`"${title ?? prettyUnit(resistance.text)}" not connected`, resistanceAtRest(step, part, i)),
  );
  return {
    part,
    title: step.board.parts[part].title ?? part,
    expected: written(now.value, now.u),
    low: rounded(now.low),
    high: rounded(now.high),
    before: was === null ? null : rounded(was),
    mistakes: [...mistake('nothing changed', was), ...open],
    meter: usualMeasurements.resistance!.by,
  };
}

function isOutside(value: number, { low, high }: ExpectedResistance): boolean {
  return value < low || value > high;
}

const { share, fixed } = usualMeasurements.resistance!;

/** A milliohm meter of the usual kind [Ω]. */
const meterU = (value: number) => Math.hypot(share * value, fixed);

/** Sense points that any of these paths touch: `resistance` what is soldered there, `reading` the divider on their lines as well. */
export function sensePointsAt(paths: readonly string[], step: Step, of: 'resistance' | 'reading'): string[] {
  const found = paths.flatMap((path) => {
    const [section, id, what] = path.split('.');
    if (section !== 'parts' || step.board.parts[id]?.kind !== 'sense') return [];
    return what === undefined || what === 'fitted' || (what === 'divider' && of === 'reading') ? [id] : [];
  });
  return [...new Set(found)];
}
