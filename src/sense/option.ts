import { deratedRating } from '../physics/electrical/derating.ts';
import type { PowerLimiter } from '../study/schema/limiters.ts';
import type { SensePart } from '../study/schema/parts.ts';
import type { Step } from '../study/study.ts';
import { type Failed, fail, failuresOf, passedAt } from './failures.ts';
import { type PointFit, untouched, type Work, workBetween } from './fit.ts';
import { checkAtLowLoad, type LowLoadCheck } from './low-load.ts';
import { offsetsOf, readsOf } from './options.ts';
import { branchesOf, shownBy } from './reading.ts';
import { asFound, type Change, resolder, type Soldered, solder } from './soldered.ts';
import type { Stock } from './stock.ts';
import {
  boardOf,
  heldOnlyBy,
  lifted,
  type PointAtPower,
  pointsAtPower,
  solveAtLimit,
  solveWith,
} from './working-point.ts';

/** What everything about an option is reckoned from. */
export interface Setting {
  readonly step: Step;
  readonly limiter: string;
  readonly stock: Stock;
  /** Real power past the limiter where it holds now [W]. */
  readonly present: number;
  /** Standard uncertainty of the person's meter at a real power [W]. */
  readonly meter: (real: number) => number;
}

/** What is soldered at every point of the limiter. */
export type Points = ReadonlyMap<string, { readonly fit: PointFit; readonly soldered: Soldered }>;

/** A part at a sense point, at the limit. */
export interface Dissipation {
  readonly sense: string;
  readonly part: string;
  readonly power: number;
  /** Derated at its temperature [W]; null: not known. */
  readonly rating: number | null;
}

/** By what to multiply what is logged afterwards. */
export interface Correction {
  readonly sense: string;
  readonly factor: number;
  readonly u: number;
}

/** What another limiter makes of the change. */
export interface OtherLimiter {
  readonly id: string;
  readonly title: string;
  readonly acts: 'regulate' | 'trip' | 'warn';
  readonly allowed: number;
  /** What it reads while the option's limiter is at its limit, without and with the change [W]; null where the board doesn't get there. */
  readonly before: number | null;
  readonly after: number | null;
  /** Real power at its own points at which it acts, without and with the change [W]; null where the board doesn't get there. */
  readonly actedAt: number | null;
  readonly actsAt: number | null;
}

/** A step of an option, in full. */
export interface OptionStep {
  readonly target: number;
  /** Real power at the limit if nothing else holds before [W], and its standard uncertainty. */
  readonly real: number;
  readonly u: number;
  /** Real power over target, less 1. */
  readonly error: number;
  readonly work: Work;
  readonly changes: readonly Change[];
  readonly dissipations: readonly Dissipation[];
  readonly failures: readonly Failed[];
  readonly check: LowLoadCheck | null;
  readonly corrections: readonly Correction[];
  /** Of the limiter's whole reading, at its limit. */
  readonly correction: { readonly factor: number; readonly u: number };
  readonly others: readonly OtherLimiter[];
  /** Limits without data: whether a failure passes them isn't known. */
  readonly open: readonly string[];
  /** With every limiter acting: what really flows, what holds, and which trips and ratings are passed. Null: no steady state. */
  readonly whole: { readonly real: number; readonly holder: string; readonly passed: readonly string[] } | null;
}

/** The points of a limiter as its step finds them. */
export function found(step: Step, limiter: string): Points {
  const { reads } = step.board.limiters[limiter] as PowerLimiter;
  return new Map(
    reads.map(({ sense }) => [sense, { fit: untouched, soldered: asFound(step.board.parts[sense] as SensePart) }]),
  );
}

/** Everything about one step of an option. `before`: what is soldered when the step begins. */
export function describeStep(
  setting: Setting,
  target: number,
  before: Points,
  fits: ReadonlyMap<string, PointFit>,
  name: string,
): { described: OptionStep; points: Points } {
  const { step, limiter: id, stock, present, meter } = setting;
  const limiter = step.board.limiters[id] as PowerLimiter;
  const changes: Change[] = [];
  const points = new Map<string, { fit: PointFit; soldered: Soldered }>();
  let soldered = 0;
  let removed = 0;
  for (const [sense, was] of before) {
    const part = step.board.parts[sense] as SensePart;
    const fit = fits.get(sense) ?? was.fit;
    const made = solder(sense, part, was.soldered, fit, stock);
    const work = workBetween(was.fit, fit, part.fitted.length);
    soldered += work.soldered;
    removed += work.removed;
    changes.push(...made.changes);
    points.set(sense, { fit, soldered: made.after });
  }
  const after = resolder(step, points, stock, name);
  const atLimit = solveAtLimit(after, id);
  const real = atLimit.ending === 'solved' ? atLimit.of(`limiters.${id}.real`) : Number.NaN;
  const there = pointsAtPower(after, limiter, atLimit);
  const told = readingOf(setting, points, there);
  const board = boardOf(after);
  const whole = solveWith(board, new Map());
  const failures = failuresOf(step, after, points);
  const dialled = boardOf(heldOnlyBy(after, id), { limiter: id, watts: target });
  const original = boardOf(heldOnlyBy(step, id), { limiter: id, watts: target });
  const atLow = (watts: number) =>
    pointsAtPower(after, limiter, solveWith(dialled, new Map([...lifted(after), ['dial', watts]])));
  return {
    points,
    described: {
      target,
      real,
      u: real * told.u,
      error: real / target - 1,
      work: { soldered, removed },
      changes,
      dissipations: [...points].flatMap(([sense, { fit, soldered }], i) =>
        dissipations(setting, sense, fit, soldered, there[i]),
      ),
      failures: failures.map((failure) => fail(board, id, whole, failure)),
      check: checkAtLowLoad(
        { dialled, original },
        id,
        present,
        failures,
        (watts, reads) => reads * readingOf(setting, points, atLow(watts)).u,
        meter,
        lifted(step),
      ),
      corrections: told.corrections,
      correction: { factor: real / limiter.allowed.value, u: (real / limiter.allowed.value) * told.u },
      others: otherLimiters(setting, after, real),
      open: board.open.map(({ id: limit }) => limit),
      whole:
        whole.ending === 'solved'
          ? { real: whole.of(`limiters.${id}.real`), holder: whole.holder, passed: passedAt(whole) }
          : null,
    },
  };
}

/** Relative standard uncertainty of the limiter's reading, and what each point's share of it must be multiplied by. */
function readingOf({ step, limiter: id, stock }: Setting, points: Points, there: readonly PointAtPower[]) {
  const limiter = step.board.limiters[id] as PowerLimiter;
  const crest = limiter.takes === 'peak' ? step.board.demand.crest.value : 1;
  const offsets = offsetsOf(limiter, crest, there);
  let reading = 0;
  let variance = offsets.variance;
  const corrections = [...points].map(([sense, { fit }], i): Correction => {
    const part = step.board.parts[sense] as SensePart;
    const shown = shownBy(branchesOf(part, fit, stock, there[i].temperature), part.divider, fit.across);
    const { perOhm, variance: ofGain } = readsOf(limiter, sense);
    const shows = shown.resistance * shown.gain * perOhm;
    reading += there[i].power * shows;
    variance += (there[i].power * shows) ** 2 * (shown.variance + ofGain);
    return { sense, factor: 1 / shows, u: Math.sqrt(shown.variance + ofGain) / shows };
  });
  return { u: Math.sqrt(variance) / reading, corrections };
}

function dissipations(
  { step, stock }: Setting,
  sense: string,
  fit: PointFit,
  soldered: Soldered,
  at: PointAtPower,
): Dissipation[] {
  const part = step.board.parts[sense] as SensePart;
  const branches = branchesOf(part, fit, stock, at.temperature);
  const { resistance: all } = shownBy(branches, undefined, null);
  const originals = fit.original ? part.fitted.map(({ title }, i) => title ?? `resistor ${i + 1}`) : [];
  const names = [...originals, ...fit.added.map(({ name }) => name)];
  if (names.length !== soldered.entries.length)
    throw new Error(`${sense}: ${names.length} parts, ${soldered.entries.length} soldered`);
  return branches.map(({ resistance, body, rating }, i) => {
    const derating = rating?.derating;
    return {
      sense,
      part: names[i],
      power: ((at.current * all) / resistance) ** 2 * body,
      rating:
        rating && (derating ? deratedRating(rating.power, at.temperature, derating.from, derating.end) : rating.power),
    };
  });
}

function otherLimiters({ step, limiter: id }: Setting, after: Step, real: number): OtherLimiter[] {
  const points = new Set((step.board.limiters[id] as PowerLimiter).reads.map(({ sense }) => sense));
  return Object.entries(step.board.limiters).flatMap(([other, limiter]): OtherLimiter[] => {
    if (other === id || !('reads' in limiter) || !limiter.reads.some(({ sense }) => points.has(sense))) return [];
    const reads = (at: Step) => {
      const board = boardOf(heldOnlyBy(at, id), { limiter: id, watts: real });
      const solved = solveWith(board, lifted(at));
      return solved.ending === 'solved' ? solved.of(`limiters.${other}.reads`) : null;
    };
    const acts = (at: Step) => {
      const solved = solveAtLimit(at, other);
      return solved.ending === 'solved' && solved.holder === other ? solved.of(`limiters.${other}.real`) : null;
    };
    const { title = other, acts: does, allowed } = limiter;
    return [
      {
        id: other,
        title,
        acts: does,
        allowed: allowed.value,
        before: reads(step),
        after: reads(after),
        actedAt: acts(step),
        actsAt: acts(after),
      },
    ];
  });
}

/** Failures of an option that lift real power over a trip or a rating. */
export function dangerous(failures: readonly Failed[]): Failed[] {
  return failures.filter(
    ({ direction, passed }) => direction === 'gives in' || (direction === 'rises' && passed.length > 0),
  );
}
