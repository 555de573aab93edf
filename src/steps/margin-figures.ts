import type { BoardModel } from '../board/assemble.ts';
import type { Margin as BareMargin } from '../metrology/margin.ts';
import { normalBelow } from '../metrology/probability.ts';
import { LEAST_TAIL, type TailProbability } from '../metrology/tail.ts';
import { showValue } from '../quantity/write.ts';
import { figure } from './figure.ts';
import type { Margin } from './step-plan.ts';

/**
 * From so many degrees of freedom on, Student's 95 % interval is the normal one to two per cent (JCGM 100:2008, table G.2: 2.01 at 50, 1.98 at 100).
 */
const WELL_KNOWN = 60;

/** Why a method is used. */
function reasonOf({ why, method }: BareMargin): string {
  switch (why) {
    case 'alone':
      return 'first order, not compared with draws';
    case 'confirmed':
      return method === 'first-order'
        ? 'first order, as the draws confirm'
        : 'second order, as the draws confirm; first order gives another interval, because the board bends here';
    case 'bends':
      return 'Monte Carlo; first order gives another interval, because the board bends here';
    case 'shape':
      return 'Monte Carlo; first order gives another interval, because an input that is not normally distributed decides';
    case 'lost-draws':
      return 'Monte Carlo; some draws have no solution';
    case 'no-slopes':
      return method === 'monte-carlo'
        ? 'Monte Carlo; beside its best values the board has no solution'
        : 'nothing is known: beside its best values the board has no solution';
  }
}

/**
 * A margin's bare numbers with their words, units and digits. `u`: standard uncertainty of an output; `rare`: where too few draws exceeded it to be
 * counted.
 */
export function writeMargin(
  board: Pick<BoardModel, 'limits' | 'outputs'>,
  bare: BareMargin,
  u: (id: string) => number | null,
  rare: TailProbability | 'remote' | null = null,
): Margin {
  const limit = board.limits.find(({ marginOutput }) => board.outputs[marginOutput].id === bare.id)!;
  const { kind, unit } = board.outputs[limit.valueOutput];
  const margin = board.outputs[limit.marginOutput];
  const difference = (value: number, own: number | null = null) => figure(value, own, margin.kind, margin.unit);
  // The ends of an interval have the digits that the uncertainty gives them, and none of their own.
  const end = (value: number) => {
    const shown = Number.isFinite(value) ? showValue(value, bare.u, margin.unit, margin.kind) : null;
    return {
      ...difference(value),
      text: shown ? `${shown.value} ${shown.unit}` : 'no end: some draws have no solution',
    };
  };
  return {
    id: limit.id,
    title: limit.title,
    of: limit.of,
    side: limit.side,
    limit: figure(bare.limit, u(bare.hold.thresholdOutput), kind, unit),
    value: figure(bare.value, u(bare.hold.valueOutput), kind, unit),
    margin: difference(bare.margin, bare.u),
    share: kind === 'temperature' || bare.limit === 0 ? null : bare.margin / bare.limit,
    u: difference(bare.u),
    interval: { low: end(bare.interval.low), high: end(bare.interval.high), level: 0.95 },
    shortest: { low: end(bare.shortest.low), high: end(bare.shortest.high) },
    exceed: rare ? writeRare(bare, rare) : writeExceed(bare),
    state: bare.margin < 0 ? 'exceeded' : bare.interval.low > 0 ? 'kept' : 'close',
    method: bare.method,
    why: reasonOf(bare),
    disagree: bare.disagree === true,
    degreesOfFreedom: bare.degreesOfFreedom < WELL_KNOWN ? bare.degreesOfFreedom : null,
    consequence: limit.consequence,
  };
}

/**
 * A probability as people read it. Where no draw has exceeded the limit, it isn't 0: it is taken as what a normal distribution of the same
 * uncertainty would give, and at most the upper bound that the number of draws leaves.
 */
function writeExceed(bare: BareMargin): Margin['exceed'] {
  const bounds = bare.exceedBounds;
  const error = bounds ? (bounds.high - bounds.low) / 2 : 0;
  if (bounds && bare.exceed === 0) {
    const value = bare.u > 0 ? Math.min(bounds.high, normalBelow(-bare.margin / bare.u)) : 0;
    return { value, error, text: `< ${percent(bounds.high)}` };
  }
  const value = bare.exceed;
  if (value < 1e-6) return { value, error, text: '< 0.0001 %' };
  if (value > 1 - 1e-6) return { value, error, text: '> 99.9999 %' };
  return { value, error, text: percent(value) };
}

/** A small probability with its standard uncertainty. What lies too far away to be estimated stays above 0, in the order of its distance. */
function writeRare(bare: BareMargin, rare: TailProbability | 'remote'): Margin['exceed'] {
  if (rare === 'remote' || rare.ending === 'out-of-reach' || rare.probability < LEAST_TAIL) {
    const value = Math.min(LEAST_TAIL, normalBelow(-bare.margin / bare.u));
    return { value, error: LEAST_TAIL, text: '< 1e-9' };
  }
  const { probability, u, low, high, ending } = rare;
  const error = (high - low) / 2;
  if (ending === 'disputed' || u > probability / 2)
    return { value: probability, error, text: `< ${high.toExponential(0)}` };
  return { value: probability, error, text: withUncertainty(probability, u) };
}

/** "1.3e-5 ± 0.2e-5": the uncertainty with one digit, the probability to the same place and with two digits at least. */
function withUncertainty(probability: number, u: number): string {
  const power = Number(probability.toExponential(1).split('e')[1]);
  const digits = Math.min(2, Math.max(1, power - Number(u.toExponential(0).split('e')[1])));
  const write = (value: number) => `${(value / 10 ** power).toFixed(digits)}e${power}`;
  return `${write(probability)} ± ${write(Math.max(u, 10 ** (power - digits)))}`;
}

function percent(share: number): string {
  const value = 100 * share;
  return `${value >= 10 ? value.toFixed(0) : value.toPrecision(2)} %`;
}
