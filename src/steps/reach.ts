import { assembleBoard, type BoardModel } from '../board/assemble.ts';
import { type Fault, refuse } from '../fault/fault.ts';
import { numericalTolerance } from '../metrology/margin.ts';
import type { Ending } from '../metrology/model.ts';
import { findRoot } from '../numeric/root.ts';
import type { PowerLimiter } from '../study/schema/limiters.ts';
import type { Step, Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { boardDial, drawsOf, planStep, stepOf } from './plan.ts';
import { type Cooling, coolingsOf, placesMissing, stepToReach } from './reach-board.ts';
import { changedBy, type Lifting, liftingOf } from './reach-lifting.ts';
import { drawPowers, type PowerRange, type PowerScan, powerRange, scanPowers } from './reach-scan.ts';
import type { Figure, StepPlan } from './step-plan.ts';

/** How far the power may go as far as one limit is concerned. */
export interface LimitReach {
  readonly id: string;
  readonly title: string;
  /** Output id of the value that is held. */
  readonly of: string;
  readonly consequence: string;
  /** `binds`: at `power`; `kept`: over the whole range; `nowhere`: not even at its lowest power. All with the confidence asked for. */
  readonly ending: 'binds' | 'kept' | 'nowhere';
  /** Highest real power at which the limit is kept with the confidence asked for; null where it doesn't bind in the range. */
  readonly power: Figure | null;
  /** The same at the best values: as likely passed as not. */
  readonly best: Figure | null;
  /** `monte-carlo` where first order gives another power, because the board bends. */
  readonly method: 'first-order' | 'monte-carlo';
  /** Whether the margin falls all the way as the power grows; where it doesn't, `power` is where it is first passed. */
  readonly falls: boolean;
  readonly lifting: Lifting | null;
}

/** The limits of a step's power path on one heat path. */
export interface CoolingReach {
  readonly cooling: Cooling;
  /** Whether the step has this heat path itself. */
  readonly own: boolean;
  /** The range of real power that was looked at; null without any operating point. */
  readonly range: { readonly low: Figure; readonly high: Figure; readonly end: PowerRange['end'] } | null;
  /** Highest power at which there is an operating point with the confidence asked for; null where that is the whole range, or isn't drawn. */
  readonly settles: Figure | null;
  /** What binds first, then what binds next if that were lifted, and so on; at the end those that don't bind in the range. */
  readonly limits: readonly LimitReach[];
  /** Limits without data: unknown, at any power. */
  readonly open: readonly { readonly id: string; readonly title: string }[];
  /** Why there are no limits here. */
  readonly faults: readonly Fault[];
}

export interface Reach {
  readonly step: string;
  readonly limiter: { readonly id: string; readonly title: string };
  /** Real power at this limiter as the step stands. */
  readonly present: Figure | null;
  readonly confidence: number;
  readonly samples: number;
  readonly seed: number;
  /** One for each heat path that occurs in the study. */
  readonly coolings: readonly CoolingReach[];
}

export interface ReachOptions {
  /** Where the power is set: the one that holds when left out. */
  readonly limiter?: string;
  /** One-sided, between ½ and 1. */
  readonly confidence: number;
  /** Draws; 0: first order only. */
  readonly samples: number;
  readonly seed: number;
}

export type ReachResult =
  | { readonly ok: true; readonly reach: Reach }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The highest real power that each limit allows a step's power path, on every heat path of the study. Refuses a limiter at which no power can be set. */
export function reachOf(study: Study, stepId: string, options: ReachOptions): ReachResult {
  const step = stepOf(study, stepId);
  const plan = planStep(study, stepId, { samples: 0, seed: options.seed });
  const limiter = limiterFor(step, plan, options.limiter);
  if (typeof limiter !== 'string') return { ok: false, faults: [limiter] };
  const state = plan.limiters.find(({ id }) => id === limiter);
  const { confidence, samples, seed } = options;
  return {
    ok: true,
    reach: {
      step: step.id,
      limiter: { id: limiter, title: state?.title ?? limiter },
      present: plan.operating && state ? state.real : null,
      confidence,
      samples,
      seed,
      coolings: coolingsOf(study).map((cooling) =>
        reachOn(study, step, cooling, limiter, state?.real.value || 0, options),
      ),
    },
  };
}

/** The limiter at which the power is set, or why there is none. */
function limiterFor(step: Step, plan: StepPlan, wanted: string | undefined): string | Fault {
  const entries = Object.entries(step.board.limiters);
  const known = entries.filter(([, entry]) => 'reads' in entry && entry.acts === 'regulate').map(([id]) => id);
  if (wanted !== undefined)
    return known.includes(wanted) ? wanted : refuse('reach/no-such-limiter', { limiter: wanted, known });
  // The one that holds, or the one that is nearest to holding.
  const nearness = ({ reads, allowed, holds }: StepPlan['limiters'][number]) =>
    holds ? Number.POSITIVE_INFINITY : reads.value / allowed.value || 0;
  const states = plan.limiters.filter(({ id }) => known.includes(id)).sort((a, b) => nearness(b) - nearness(a));
  return states[0]?.id ?? known[0] ?? refuse('reach/no-power-limiter', { step: step.id });
}

function reachOn(
  study: Study,
  step: Step,
  cooling: Cooling,
  limiter: string,
  present: number,
  options: ReachOptions,
): CoolingReach {
  const source = stepOf(study, cooling.step);
  const own = cooling.steps.includes(step.id);
  const none = (faults: readonly Fault[]): CoolingReach => {
    return { cooling, own, range: null, settles: null, limits: [], open: [], faults };
  };
  const missing = placesMissing(step, source);
  if (missing.length > 0) return none([refuse('reach/other-places', { step: step.id, cooling: source.id, missing })]);
  const changed = stepToReach(step, source, limiter);
  // A board evaluates fastest near the power that it was assembled at.
  const first = boardAt(changed, limiter, present);
  if (!first.ok) return none(first.faults);
  const range = rangeOf(first.board, limiter);
  if (typeof range === 'string')
    return none([refuse('reach/no-operating-point', { cooling: source.id, ending: range })]);
  const assembly = boardAt(changed, limiter, (range.low + range.high) / 2);
  if (!assembly.ok) return none(assembly.faults);
  const { board } = assembly;
  const dial = board.indexOfInput('dial');

  const { confidence, samples, seed } = options;
  const scan = scanPowers(board, dial, range, confidence);
  const drawn =
    samples >= 2 ? drawPowers(board, dial, scan.powers.slice(scan.from), samples, drawsOf(study, board, seed)) : null;
  const found = board.limits.map((_, l) => powersOf(scan, l, confidence, drawn?.[l] ?? null));
  const order = [...found.keys()].sort((a, b) => byPower(found[a], found[b]));
  const stepsThatChange = changedBy(study, step, source);
  const limits = order.map((l, rank): LimitReach => {
    const { sure, best, u, method, falls } = found[l];
    const next = order.slice(rank + 1).find((other) => found[other].sure > 1.001 * Math.max(sure, range.low));
    const target = next === undefined ? range.high : Math.min(range.high, found[next].sure);
    return {
      ...wordsOf(step, board, l),
      ending: endingOf(sure),
      power: powerFigure(sure, u),
      best: powerFigure(best, u),
      method,
      falls,
      lifting: sure === Infinity ? null : liftingOf(board, scan, dial, l, sure, target, stepsThatChange),
    };
  });
  const settles = drawn ? quantileOf(drawn[board.limits.length], confidence) : Infinity;
  return {
    cooling,
    own,
    range: { low: powerFigure(range.low, null)!, high: powerFigure(range.high, null)!, end: range.end },
    settles: settles === Infinity ? null : powerFigure(Math.max(settles, range.low), null),
    limits,
    open: board.open.map(({ id, title }) => ({ id, title })),
    faults: [],
  };
}

function boardAt(step: Step, limiter: string, power: number) {
  const { allowed } = step.board.limiters[limiter] as PowerLimiter;
  return assembleBoard(step, boardDial({ limiter, realPower: power > 0 ? power : allowed.value }));
}

function rangeOf(board: BoardModel, limiter: string): PowerRange | Ending {
  const { realOutput, allowedSlot } = board.limiters.find(({ id }) => id === limiter)!;
  return powerRange(board, board.indexOfInput('dial'), realOutput, board.inputs[allowedSlot].value);
}

/** Powers that a limit allows [W]: −∞ where it isn't kept at the lowest one, ∞ where it is kept over the whole range. */
interface Powers {
  /** With the confidence asked for. */
  readonly sure: number;
  readonly best: number;
  /** Standard uncertainty of the power at which it is passed [W]; null where it isn't. */
  readonly u: number | null;
  readonly method: LimitReach['method'];
  readonly falls: boolean;
  /** Margin over its uncertainty at the end of the range: an order for those that are kept. */
  readonly distance: number;
}

function powersOf(scan: PowerScan, limit: number, confidence: number, drawn: Float64Array | null): Powers {
  const { powers } = scan;
  const margins = scan.margins[limit];
  const largest = margins.reduce((most, margin) => Math.max(most, Math.abs(margin)), 0);
  const falls = margins.every((margin, k) => k === 0 || !(margin > margins[k - 1] + 1e-9 * largest));
  const best = firstPassed(powers, (power) => scan.margin(limit, power));
  const straight = firstPassed(powers, (power) => scan.margin(limit, power) - scan.allowance(limit, power));
  const high = powers[powers.length - 1];
  const distance = scan.margin(limit, high) / scan.uncertainty(limit, high);
  const common = { best, falls, distance };
  const near = Number.isFinite(straight) ? straight : best;
  const u = Number.isFinite(near) ? powerUncertainty(scan, limit, near) : null;
  if (drawn === null) return { ...common, sure: straight, u, method: 'first-order' };
  const counted = quantileOf(drawn, confidence);
  // Random draws know their own quantile to √(p(1 − p)/n)/density, for a normal distribution at 5 % 2.1/√n of u; a low-discrepancy sequence knows it better. That
  // and half a unit of the last of two digits of u (JCGM 101:2008, 7.9.2) is no disagreement.
  const allowed = u === null ? 0 : numericalTolerance(u) / 10 + (2.1 * u) / Math.sqrt(drawn.length);
  const agree = counted === straight || Math.abs(counted - straight) <= allowed;
  return agree
    ? { ...common, sure: straight, u, method: 'first-order' }
    : { ...common, sure: counted, u, method: 'monte-carlo' };
}

/** Where a margin first falls below 0 on the way up [W]. */
function firstPassed(powers: readonly number[], margin: (power: number) => number): number {
  const k = powers.findIndex((power) => !(margin(power) >= 0));
  if (k < 0) return Infinity;
  if (k === 0) return -Infinity;
  const root = findRoot(margin, powers[k - 1], powers[k], 1e-7 * powers[k]);
  return root.ending === 'solved' ? root.x : powers[k - 1];
}

/** Standard uncertainty of the power at which a limit is passed, by the margin's slope there [W]. */
function powerUncertainty(scan: PowerScan, limit: number, power: number): number | null {
  const half = (scan.range.high - scan.range.low) / 200;
  const fall = (scan.margin(limit, power - half) - scan.margin(limit, power + half)) / (2 * half);
  const u = scan.uncertainty(limit, power) / Math.abs(fall);
  return u > 0 && Number.isFinite(u) ? u : null;
}

/** Power that a draw passes with no more than the probability left by the confidence; `sorted`. */
function quantileOf(sorted: Float64Array, confidence: number): number {
  // The rounding of 1 − 0.95 must not cost a draw.
  return sorted[Math.min(sorted.length - 1, Math.floor((1 - confidence) * sorted.length + 1e-9))];
}

function byPower(a: Powers, b: Powers): number {
  return a.sure === b.sure ? (a.best === b.best ? a.distance - b.distance : a.best - b.best) : a.sure - b.sure;
}

function endingOf(power: number): LimitReach['ending'] {
  if (power === Infinity) return 'kept';
  return power === -Infinity ? 'nowhere' : 'binds';
}

/** A power with the digits that its uncertainty gives it. */
function powerFigure(power: number, u: number | null): Figure | null {
  return Number.isFinite(power) ? figure(power, u, 'power', 'W') : null;
}

/** A limiter that holds is told as what it does: here it only watches. */
function wordsOf(step: Step, board: BoardModel, limit: number) {
  const { id, title, of, consequence } = board.limits[limit];
  const limiter = board.limiters.find((each) => `limiters.${each.id}` === id);
  if (limiter && step.board.limiters[limiter.id].acts === 'regulate')
    return { id, title: `${limiter.title}: holds`, of, consequence: 'the processor gives way: more is never reached' };
  return { id, title, of, consequence };
}
