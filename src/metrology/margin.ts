import { type Budget, budget } from './budget.ts';
import { coverageFactor, effectiveDegreesOfFreedom, statedDegreesOfFreedom } from './effective-degrees-of-freedom.ts';
import { outputIndex } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Hold, Model } from './model.ts';
import type { MonteCarlo } from './monte-carlo.ts';
import type { Sample } from './sample.ts';
import { secondOrder } from './second-order.ts';
import type { Sensitivities } from './sensitivity.ts';
import { studentAbove } from './student-t.ts';

export type Method = 'first-order' | 'second-order' | 'monte-carlo';

/**
 * Why a method is used. `alone`: nothing to compare it with; `confirmed`: the draws give the same interval; `bends`: first order gives another interval,
 * and so does second order where there is one; `shape`: second order has nothing to add, but an input whose distribution isn't normal decides;
 * `lost-draws`: some draws have no solution; `no-slopes`: no solution beside the best values.
 */
export type MethodReason = 'alone' | 'confirmed' | 'bends' | 'shape' | 'lost-draws' | 'no-slopes';

/** How far one limit is away, and how sure that is. */
export interface Margin {
  /** Output id of the margin. */
  readonly id: string;
  readonly hold: Hold;
  /** The value held, at the inputs' best values [SI]. */
  readonly value: number;
  /** The limit, at the inputs' best values [SI]. */
  readonly limit: number;
  /** Distance on the good side [SI]; negative beyond the limit. */
  readonly margin: number;
  readonly u: number;
  /** 95 % coverage interval [SI]; `low` is −∞ where too many draws have no solution. */
  readonly interval: Interval;
  /** The shortest 95 % interval [SI]; of a symmetric distribution the same. */
  readonly shortest: Interval;
  /** Probability that the limit is exceeded, or that there is no solution at all [1]. */
  readonly exceed: number;
  /** 95 % bounds of `exceed` from the finite number of draws; null where it isn't counted. */
  readonly exceedBounds: { readonly low: number; readonly high: number } | null;
  readonly method: Method;
  readonly why: MethodReason;
  /** Whether first order and Monte Carlo disagree; null where only one of them has an answer. */
  readonly disagree: boolean | null;
  /** Effective degrees of freedom of u [1]; ∞ where no input has few of them, NaN without a first order. */
  readonly degreesOfFreedom: number;
  /** Inputs along which the margin bends, so that first order isn't to be trusted. */
  readonly bent: readonly string[];
}

/**
 * Margins of a model at one point, in the model's order. Null where the model has no solution at its best values: no margin is known then.
 *
 * First order (GUM 5.1.2) alone when there is no Monte Carlo run; its distribution is normal, or Student's with the effective degrees of freedom where inputs have
 * few (GUM G.4). With a run it is judged as JCGM 101:2008 clause 8 lays down: accepted if both ends of the 95 % interval differ by no more than half a
 * unit of the one digit that u is written with (7.9.2), plus what the number of draws leaves uncertain. Else second order (GUM 5.1.2, note) is judged
 * likewise; else, or when a draw had no solution, the Monte Carlo run's figures are given.
 */
export function margins(model: Model, sens: Sensitivities, run?: MonteCarlo, joint?: Joint): readonly Margin[] | null {
  if (sens.start !== 'solved') return null;
  const degreesOf = statedDegreesOfFreedom(model);
  const judged = model.outputs.flatMap((output, o) => {
    const { hold, id } = output;
    if (!hold) return [];
    const margin = sens.y0[o];
    const parts = budget(model, id, sens, joint);
    const first = parts && firstOrder(margin, parts, effectiveDegreesOfFreedom(parts, degreesOf));
    const sample = run?.outputs.get(id);
    return [{ id, hold, margin, first, sample, disagree: sample && first ? !confirms(sample, first) : null, o }];
  });
  const refused = judged.filter(({ disagree, sample }) => disagree && sample?.lost === 0).map(({ id }) => id);
  const seconds = refused.length > 0 ? secondOrder(model, refused, joint) : null;
  return judged.map(({ id, hold, margin, first, sample, disagree, o }) => {
    const degreesOfFreedom = first?.degreesOfFreedom ?? Number.NaN;
    const bend = seconds?.get(id);
    const second = bend ? { ...bend, degreesOfFreedom } : null;
    return {
      id,
      hold,
      value: sens.y0[outputIndex(model, hold.valueOutput)],
      limit: sens.y0[outputIndex(model, hold.thresholdOutput)],
      margin,
      disagree,
      degreesOfFreedom,
      bent: sens.bent[o].map((i) => model.inputs[i].id),
      ...chosen(margin, first, second, sample),
    };
  });
}

/** A margin as a normal or Student's distribution. */
interface Distribution {
  readonly expectation: number;
  readonly u: number;
  readonly degreesOfFreedom: number;
}

function firstOrder(margin: number, { u }: Budget, degreesOfFreedom: number): Distribution | null {
  return Number.isNaN(margin) ? null : { expectation: margin, u, degreesOfFreedom };
}

type Figures = Pick<Margin, 'u' | 'interval' | 'shortest' | 'exceed' | 'exceedBounds' | 'method' | 'why'>;

function chosen(
  margin: number,
  first: Distribution | null,
  second: Distribution | null,
  sample: Sample | undefined,
): Figures {
  if (!sample) return first ? { ...calculated(first), method: 'first-order', why: 'alone' } : unknown(margin);
  if (!first) return { ...counted(sample), why: 'no-slopes' };
  if (confirms(sample, first))
    return { ...withTail(calculated(first), sample), method: 'first-order', why: 'confirmed' };
  if (second && confirms(sample, second))
    return { ...withTail(calculated(second), sample), method: 'second-order', why: 'confirmed' };
  if (sample.lost > 0) return { ...counted(sample), why: 'lost-draws' };
  const straight = second !== null && agree(intervalOf(first), intervalOf(second), numericalTolerance(sample.u));
  return { ...counted(sample), why: straight ? 'shape' : 'bends' };
}

/** No solution beside the best values, or no number at all: nothing is known, and unknown is not safe. */
function unknown(margin: number): Figures {
  const interval = { low: Number.NEGATIVE_INFINITY, high: margin };
  const u = Number.POSITIVE_INFINITY;
  return { u, interval, shortest: interval, exceed: 1, exceedBounds: null, method: 'first-order', why: 'no-slopes' };
}

type Calculated = Omit<Figures, 'method' | 'why'>;

function calculated(distribution: Distribution): Calculated {
  const { expectation, u, degreesOfFreedom } = distribution;
  const exceed = u > 0 ? studentAbove(expectation / u, degreesOfFreedom) : expectation < 0 ? 1 : 0;
  const interval = intervalOf(distribution);
  return { u, interval, shortest: interval, exceed, exceedBounds: null };
}

/** So many draws beyond a limit count its probability to a third. */
const COUNTED = 10;

/**
 * The probability of exceeding is what the draws count where enough of them exceed and what was calculated is outside the count's 95 % bounds. That the ends
 * of a 95 % interval agree says nothing of what lies farther out: a distribution that leans may be there several times as likely as a normal one.
 */
function withTail(figures: Calculated, sample: Sample): Calculated {
  const { probability, low, high } = sample.below(0);
  const contradicted = figures.exceed < low || figures.exceed > high;
  return contradicted && probability * sample.values.length >= COUNTED
    ? { ...figures, exceed: probability, exceedBounds: { low, high } }
    : figures;
}

function counted(sample: Sample): Omit<Figures, 'why'> {
  const { probability, low, high } = sample.below(0);
  return {
    // Of draws without a solution nothing is known.
    u: Number.isNaN(sample.u) ? Number.POSITIVE_INFINITY : sample.u,
    interval: sample.interval(0.95),
    shortest: sample.shortestInterval(0.95),
    exceed: probability,
    exceedBounds: { low, high },
    method: 'monte-carlo',
  };
}

function confirms(sample: Sample, calculated: Distribution): boolean {
  if (sample.lost > 0) return false;
  // The ends of the run's own interval are only known to about √(0.025·0.975/n)/φ(1.96) = 2.7/√n of u; twice that is no disagreement.
  const allowed = numericalTolerance(sample.u) + (5.4 * sample.u) / Math.sqrt(sample.values.length);
  return agree(intervalOf(calculated), sample.interval(0.95), allowed);
}

interface Interval {
  readonly low: number;
  readonly high: number;
}

function agree(a: Interval, b: Interval, allowed: number): boolean {
  return Math.abs(a.low - b.low) <= allowed && Math.abs(a.high - b.high) <= allowed;
}

/** Half a unit of the only digit of u when written with one: u = c·10ˡ gives δ = 10ˡ/2. Source: JCGM 101:2008, 7.9.2. */
export function numericalTolerance(u: number): number {
  if (!(u > 0)) return 0;
  // Rounded first: 0.097 is written 0.1, so its digit is the tenth.
  return 0.5 * 10 ** Number(u.toExponential(0).split('e')[1]);
}

/** 95 % interval. */
function intervalOf({ expectation, u, degreesOfFreedom }: Distribution): Interval {
  const half = u > 0 ? coverageFactor(0.95, degreesOfFreedom) * u : 0;
  return { low: expectation - half, high: expectation + half };
}
