import { budget } from './budget.ts';
import { outputIndex } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Hold, Model } from './model.ts';
import type { MonteCarlo } from './monte-carlo.ts';
import { normalBelow } from './probability.ts';
import type { Sample } from './sample.ts';
import type { Sensitivities } from './sensitivity.ts';

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
  readonly interval: { readonly low: number; readonly high: number };
  /** Probability that the limit is exceeded, or that there is no solution at all [1]. */
  readonly exceed: number;
  /** 95 % bounds of `exceed` from the finite number of draws; null for first order, which is not counted. */
  readonly exceedBounds: { readonly low: number; readonly high: number } | null;
  readonly method: 'first-order' | 'monte-carlo';
  /** Whether the two methods disagree; null where only one of them has an answer. */
  readonly disagree: boolean | null;
  /** Inputs along which the margin bends, so that first order isn't to be trusted. */
  readonly bent: readonly string[];
}

/**
 * Margins of a model at one point, in the model's order. Null where the model has no solution at its best values: no margin is known then.
 *
 * First order (GUM 5.1.2, normal distribution) alone when there is no Monte Carlo run. With one, the two are compared as JCGM 101:2008
 * clause 8 lays down: they agree if both ends of the 95 % interval differ by no more than half a unit of the one digit that u is
 * written with (7.9.2), plus what the number of draws leaves uncertain; beyond that, or when a draw had no solution, the Monte Carlo run's
 * figures are given.
 */
export function margins(model: Model, sens: Sensitivities, run?: MonteCarlo, joint?: Joint): readonly Margin[] | null {
  if (sens.start !== 'solved') return null;
  return model.outputs.flatMap((output, o) => {
    const { hold, id } = output;
    if (!hold) return [];
    const margin = sens.y0[o];
    const u = budget(model, id, sens, joint)?.u ?? null;
    const sample = run?.outputs.get(id);
    const disagree = sample && u !== null ? methodsDisagree(margin, u, sample) : null;
    const common = {
      id,
      hold,
      value: sens.y0[outputIndex(model, hold.valueOutput)],
      limit: sens.y0[outputIndex(model, hold.thresholdOutput)],
      margin,
      disagree,
      bent: sens.bent[o].map((i) => model.inputs[i].id),
    };
    return [{ ...common, ...(sample && disagree !== false ? counted(sample) : firstOrder(margin, u)) }];
  });
}

type Figures = Pick<Margin, 'u' | 'interval' | 'exceed' | 'exceedBounds' | 'method'>;

function firstOrder(margin: number, u: number | null): Figures {
  const method = 'first-order';
  const exceedBounds = null;
  if (u === null || Number.isNaN(margin)) {
    // No solution beside the best values, or no number at all: nothing is known, and unknown is not safe.
    const interval = { low: Number.NEGATIVE_INFINITY, high: margin };
    return { u: Number.POSITIVE_INFINITY, interval, exceed: 1, exceedBounds, method };
  }
  const exceed = u > 0 ? normalBelow(-margin / u) : margin < 0 ? 1 : 0;
  return { u, interval: normalInterval(margin, u), exceed, exceedBounds, method };
}

function counted(sample: Sample): Figures {
  const { probability, low, high } = sample.below(0);
  return {
    // Of draws without a solution nothing is known.
    u: Number.isNaN(sample.u) ? Number.POSITIVE_INFINITY : sample.u,
    interval: sample.interval(0.95),
    exceed: probability,
    exceedBounds: { low, high },
    method: 'monte-carlo',
  };
}

function methodsDisagree(margin: number, u: number, sample: Sample): boolean {
  if (sample.lost > 0) return true;
  const first = normalInterval(margin, u);
  const run = sample.interval(0.95);
  // The ends of the run's own interval are only known to about √(0.025·0.975/n)/φ(1.96) = 2.7/√n of u; twice that is no disagreement.
  const allowed = numericalTolerance(sample.u) + (5.4 * sample.u) / Math.sqrt(sample.values.length);
  return Math.abs(first.low - run.low) > allowed || Math.abs(first.high - run.high) > allowed;
}

/** Half a unit of the only digit of u when written with one: u = c·10ˡ gives δ = 10ˡ/2. Source: JCGM 101:2008, 7.9.2. */
export function numericalTolerance(u: number): number {
  if (!(u > 0)) return 0;
  // Rounded first: 0.097 is written 0.1, so its digit is the tenth.
  return 0.5 * 10 ** Number(u.toExponential(0).split('e')[1]);
}

function normalInterval(margin: number, u: number): { low: number; high: number } {
  return { low: margin - 1.959963984540054 * u, high: margin + 1.959963984540054 * u };
}
