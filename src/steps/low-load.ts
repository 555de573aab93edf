import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import { type Sensitivities, sensitivities } from '../metrology/sensitivity.ts';
import type { Step, Study } from '../study/study.ts';
import { atDigitsOf, type ExpectedReading, expectedReadings } from './expected-readings.ts';
import { figure } from './figure.ts';
import { readInstrument } from './instrument.ts';
import { boardDial } from './plan.ts';
import type { Figure } from './step-plan.ts';
import { usualMeasurements } from './usual-measurements.ts';

/** What a limiter must read at a small, truly measured power. */
export interface LimiterReading {
  readonly limiter: string;
  readonly title: string;
  /** Power that really flows past it. */
  readonly real: Figure;
  /** By which the real power is known: an instrument's title, or the usual measurement. */
  readonly measuredBy: string;
  /** Reading over real power, without the meter's part. */
  readonly ratio: Figure;
  /** ± is the standard uncertainty of prediction, true power and display together. */
  readonly expected: Figure;
  /** Pass band: two of these to either side. */
  readonly low: Figure;
  readonly high: Figure;
  /** What it would read if nothing had been changed. */
  readonly unchanged: Figure;
  /** Whether that lies outside the pass band; null where the step isn't to change the reading. */
  readonly tells: boolean | null;
}

/** A first check at a load that can't harm anything. */
export interface LowLoad {
  /** Limiter whose real power is set. */
  readonly limiter: string;
  readonly power: Figure;
  readonly readings: readonly LimiterReading[];
  readonly instruments: readonly ExpectedReading[];
}

export interface LowLoadOptions {
  /** Power at the limiter that holds the processor [W]; when left out, 15 % of what the step lets through, or the least that its rest allows. */
  readonly power?: number;
  /** Last digit of what the firmware shows [W]. */
  readonly resolution: number;
  /** Sense points that the step changes. */
  readonly changed: ReadonlySet<string>;
}

/** Shares of full power, the first that the board can be at: what it takes at rest may be more than the smallest (common practice, no source). */
const SHARES = [0.15, 0.25, 0.4];

/** The check at a low load. Null: no limiter holds by power, or the board has no operating point at that load. */
export function lowLoad(study: Study, step: Step, before: Step, options: LowLoadOptions): LowLoad | null {
  const limiters = Object.entries(step.board.limiters);
  const holding = limiters.flatMap(([id, each]) => ('reads' in each && each.acts === 'regulate' ? [{ id, each }] : []));
  const touched = holding.find(({ each }) => each.reads.some(({ sense }) => options.changed.has(sense)));
  const held = (touched ?? holding[0])?.id;
  if (held === undefined) return null;
  const full = options.power === undefined ? fullPower(step, held) : null;
  const powers = options.power !== undefined ? [options.power] : SHARES.map((share) => twoDigits(share * (full ?? 0)));
  const found = powers.flatMap((power) => {
    const [now, then] = power > 0 ? [step, before].map((each) => operatingAt(each, held, power)) : [];
    return now && then ? [{ power, now, then }] : [];
  });
  if (found.length === 0) return null;
  const [{ power, now, then }] = found;
  const readings = limiters.flatMap(([id, limiter]) => {
    if (!('reads' in limiter)) return [];
    const changes = limiter.reads.some(({ sense }) => options.changed.has(sense));
    // Where the step changes no reading, the limiter that holds must read as before.
    if (!changes && (options.changed.size > 0 || id !== held)) return [];
    return [readingOf(study, id, limiter.title ?? id, now, then, options.resolution, changes)];
  });
  return {
    limiter: held,
    power: figure(power, null, 'power', 'W'),
    readings,
    instruments: expectedReadings(study, now.board, now.sens),
  };
}

interface Operating {
  readonly board: BoardModel;
  readonly sens: Sensitivities;
}

/** What flows past a limiter at the step's own operating point [W]. */
function fullPower(step: Step, limiter: string): number | null {
  const assembly = assembleBoard(step);
  if (!assembly.ok) return null;
  const { board } = assembly;
  const { y, status } = evaluateAt(board, startValues(board));
  return status.ending === 'solved' ? y[board.indexOfOutput(`limiters.${limiter}.real`)] : null;
}

const twoDigits = (value: number) => Number(value.toPrecision(2));

function operatingAt(step: Step, limiter: string, realPower: number): Operating | null {
  const assembly = assembleBoard(step, boardDial({ limiter, realPower }));
  if (!assembly.ok) return null;
  const { board } = assembly;
  const sens = sensitivities(board);
  if (sens.ending !== 'solved') return null;
  // A power that the demand can't reach, or below what is taken at rest, isn't met.
  const real = sens.y0[board.indexOfOutput(`limiters.${limiter}.real`)];
  return Math.abs(real - realPower) < 1e-6 * realPower ? { board, sens } : null;
}

function readingOf(
  study: Study,
  id: string,
  title: string,
  now: Operating,
  then: Operating,
  resolution: number,
  changes: boolean,
): LimiterReading {
  const { real, ratio, uRatio } = limiterRatio(now, id);
  const meter = trueMeter(study, now.board, id, real);
  const expected = ratio * real;
  // A display's last digit is a rectangle of its own width.
  const u = Math.hypot(real * uRatio, ratio * meter.u, resolution / Math.sqrt(12));
  const rounded = (value: number) => atDigitsOf(figure(value, u, 'power', 'W'));
  const unchanged = limiterRatio(then, id).ratio * real;
  return {
    limiter: id,
    title,
    real: figure(real, null, 'power', 'W'),
    measuredBy: meter.by,
    ratio: figure(ratio, uRatio, 'ratio', ''),
    expected: figure(expected, u, 'power', 'W'),
    low: rounded(expected - 2 * u),
    high: rounded(expected + 2 * u),
    unchanged: rounded(unchanged),
    tells: changes ? Math.abs(unchanged - expected) > 2 * u : null,
  };
}

/** What a limiter reads over what really flows, and how sure that is: the errors both have in common cancel. */
export function limiterRatio(
  { board, sens }: Operating,
  limiter: string,
): { real: number; ratio: number; uRatio: number } {
  const real = board.indexOfOutput(`limiters.${limiter}.real`);
  const reads = board.indexOfOutput(`limiters.${limiter}.reads`);
  const ratio = sens.y0[reads] / sens.y0[real];
  let variance = 0;
  for (let i = 0; i < sens.u.length; i++)
    variance += (((sens.c[reads][i] - ratio * sens.c[real][i]) / sens.y0[real]) * sens.u[i]) ** 2;
  return { real: sens.y0[real], ratio, uRatio: Math.sqrt(variance) };
}

/** How well the true power is known: by an instrument of the study that shows it, or the usual way. */
function trueMeter(study: Study, board: BoardModel, limiter: string, power: number): { by: string; u: number } {
  const shown = Object.entries(study.instruments).find(([, { shows }]) => shows === `limiters.${limiter}.real`);
  if (shown) {
    const { title, u } = readInstrument(board, ...shown);
    return { by: title, u };
  }
  const { by, share, fixed } = usualMeasurements.power!;
  return { by, u: Math.hypot(share * power, fixed) };
}
