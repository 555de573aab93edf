import type { Step, Study } from '../study/study.ts';
import { atDigitsOf } from './expected-readings.ts';
import { figure } from './figure.ts';
import { type Resistance, senseAtRest } from './sense-at-rest.ts';
import type { Figure } from './step-plan.ts';
import { usualMeasurements } from './usual-measurements.ts';

/** What a sense point must measure after it has been changed, with four wires, the board without power. */
export interface SenseCheck {
  readonly part: string;
  readonly title: string;
  /** ± is the standard uncertainty of prediction and meter together. */
  readonly expected: Figure;
  /** 95 % interval of the reading. */
  readonly low: Figure;
  readonly high: Figure;
  /** What it measured before the change, and measures still where a new joint is open. */
  readonly before: Figure | null;
  /** Whether that lies outside the interval. */
  readonly tells: boolean;
  readonly meter: string;
}

/** The check of one sense point at a step; `before` is the step it is compared with. Null: it has no resistance. */
export function senseCheck(part: string, step: Step, before: Step): SenseCheck | null {
  const now = senseAtRest(step, part, meterU);
  if (!now) return null;
  const was = before.board.parts[part]?.kind === 'sense' ? senseAtRest(before, part, meterU) : null;
  const written = (value: number, u: number) => figure(value, u, 'resistance', 'mΩ');
  const rounded = (value: number) => atDigitsOf(written(value, now.u));
  return {
    part,
    title: step.board.parts[part].title ?? part,
    expected: written(now.value, now.u),
    low: rounded(now.low),
    high: rounded(now.high),
    before: was && rounded(was.value),
    tells: was !== null && isOutside(was, now),
    meter: usualMeasurements.resistance!.by,
  };
}

function isOutside({ value }: Resistance, { low, high }: Resistance): boolean {
  return value < low || value > high;
}

const { share, fixed } = usualMeasurements.resistance!;

/** A milliohm meter of the usual kind [Ω]. */
const meterU = (value: number) => Math.hypot(share * value, fixed);

/** Sense points whose resistors or divider any of these paths touch. */
export function sensePointsAt(paths: readonly string[], step: Study['steps'][number]): string[] {
  const found = paths.flatMap((path) => {
    const [section, id, what] = path.split('.');
    const isSense = section === 'parts' && step.board.parts[id]?.kind === 'sense';
    return isSense && (what === undefined || what === 'fitted' || what === 'divider') ? [id] : [];
  });
  return [...new Set(found)];
}
