import { sobol } from '../numeric/sobol.ts';
import { type DesignPoint, designPoint, dot, fallingDimensions } from './design-point.ts';
import type { DrawOptions } from './draws.ts';
import { importanceSampling, type SampledProbability, weightAt } from './importance-sampling.ts';
import type { Model } from './model.ts';
import { monteCarlo } from './monte-carlo.ts';
import { normalQuantile } from './normal-quantile.ts';
import { type LimitState, limitState, normalSpace } from './normal-space.ts';
import { normalBelow } from './probability.ts';
import { counted, type Sample } from './sample.ts';
import { subsetSimulation } from './subset-simulation.ts';

export interface TailOptions extends DrawOptions {
  /** The margin's values in a Monte Carlo run that was made with the same `DrawOptions`; without it a small run is made first. */
  readonly run?: Sample;
  /** Evaluations that importance sampling may use; 3000 by default. */
  readonly evaluations?: number;
  /** Relative standard uncertainty at which importance sampling stops [1]; 0.05 by default. */
  readonly target?: number;
}

/** A small probability of exceeding a limit, with its own sampling error. */
export interface TailProbability extends SampledProbability {
  readonly method: 'importance-sampling' | 'subset-simulation' | 'certain';
  /** Evaluations of the model in all. */
  readonly evaluations: number;
  /**
   * `settled`: the error is a tenth of the probability or less, or was confirmed; `coarse`: it is larger; `disputed`: two methods differ by more than
   * their errors, the larger probability is given and u covers the other; `out-of-reach`: nothing exceeds the limit down to probabilities of 1e-9.
   */
  readonly ending: 'settled' | 'coarse' | 'disputed' | 'out-of-reach';
  /** Reliability indices of the design points found, nearest first [1]. */
  readonly distances: readonly number[];
}

/** Draws of the small run that is made where none is given. */
const PILOT = 512;
/** The least probability that is told apart from none [1]. */
export const LEAST_TAIL = 1e-9;
/** Design points looked for beside the first. */
const MORE = 2;
/** Design points looked for from draws of the subset simulation. */
const DISCOVERED = 3;
/** Draws a level of the subset simulation that confirms. */
const CONFIRMING = 400;

/**
 * Probability that a margin is negative, or that the model has no solution, where too few draws of a Monte Carlo run would show it.
 *
 * Design points are searched from the best values, and from those draws of the run that lie nearer to the limit than the points already found
 * explain. Importance sampling around them gives the probability. It is trusted where it agrees with the run's count, with the points' own
 * first-order probability within a factor of 10, and where a single point was found; otherwise subset simulation, which needs no design point, has to
 * confirm it.
 */
export function tailProbability(model: Model, marginOutputId: string, options: TailOptions): TailProbability {
  const space = normalSpace(model, options.joint);
  const state = limitState(model, marginOutputId, space);
  const origin = new Float64Array(state.dimensions);
  if (state.dimensions === 0) {
    const probability = state.at(origin) < 0 ? 1 : 0;
    const bounds = { probability, u: 0, low: probability, high: probability };
    return { ...bounds, method: 'certain', evaluations: 1, ending: 'settled', distances: [] };
  }
  const { seed, evaluations: most = 3000, target = 0.05 } = options;
  const importance = { seed, most, target, least: LEAST_TAIL };
  const pilot = options.run
    ? null
    : monteCarlo(model, { ...options, samples: PILOT, outputs: [marginOutputId] }).outputs.get(marginOutputId)!;
  const run = options.run ?? pilot!;
  const search = searchOf(state);
  const found = designPoints(search, run, pointOf(space.ids, options));
  let points = nearEnough(found);
  let shifted = points.some(({ settled }) => settled) ? importanceSampling(state, points, importance) : null;
  const result = (is: SampledProbability, method: TailProbability['method'], ending: TailProbability['ending']) => {
    const { probability, u, low, high } = is;
    const evaluations = state.evaluations + (pilot ? PILOT : 0);
    const distances = points.map(({ distance }) => distance).sort((a, b) => a - b);
    return { probability, u, low, high, method, evaluations, ending, distances };
  };
  if (shifted && isPlain(shifted, points) && agreesWithRun(shifted, run))
    return result(shifted, 'importance-sampling', shifted.high < LEAST_TAIL ? 'out-of-reach' : 'settled');

  const followed = subsetSimulation(state, { seed: seed + 1, draws: CONFIRMING, least: LEAST_TAIL / 2 });
  const more = [...found];
  discover(search, more, followed.exceeding);
  if (more.length > found.length || (!shifted && more.length > 0)) {
    points = nearEnough(more);
    shifted = importanceSampling(state, points, importance);
  }
  if (!shifted || shifted.probability === 0) {
    if (followed.probability < LEAST_TAIL) return result(followed, 'subset-simulation', 'out-of-reach');
    return result(followed, 'subset-simulation', agreesWithRun(followed, run) ? 'coarse' : 'disputed');
  }
  if (followed.probability === 0 && shifted.probability < LEAST_TAIL)
    return result(shifted, 'importance-sampling', 'out-of-reach');
  const apart = Math.abs(Math.log(shifted.probability / followed.probability));
  const allowed = 3 * Math.hypot(shifted.u / shifted.probability, followed.u / followed.probability);
  if (apart <= allowed && agreesWithRun(shifted, run))
    return result(shifted, 'importance-sampling', shifted.u <= 0.1 * shifted.probability ? 'settled' : 'coarse');
  const byShift = shifted.probability > followed.probability;
  const { probability, u } = byShift ? shifted : followed;
  const wider = {
    probability,
    u: Math.max(u, Math.abs(shifted.probability - followed.probability) / 2),
    low: Math.min(shifted.low, followed.low),
    high: Math.max(shifted.high, followed.high),
  };
  return result(wider, byShift ? 'importance-sampling' : 'subset-simulation', 'disputed');
}

/** Whether importance sampling is what a single design point on an almost straight limit would give. */
function isPlain({ probability, u }: SampledProbability, points: readonly DesignPoint[]): boolean {
  const [point] = points;
  const ratio = Math.log(probability / normalBelow(-point.distance));
  const known = u <= 0.1 * probability || probability + 3 * u < LEAST_TAIL;
  return points.length === 1 && point.settled && known && Math.abs(ratio) < Math.log(10);
}

/** The normal numbers that a draw of a Monte Carlo run came from. */
function pointOf(ids: readonly string[], { seed, dimensionOf, dimensions }: DrawOptions) {
  const sequence = sobol(dimensions ?? ids.length, seed);
  const single = new Float64Array(1);
  return (draw: number): Float64Array =>
    Float64Array.from(ids, (id, d) => {
      sequence.column(dimensionOf?.(id) ?? d, draw, single);
      return normalQuantile(single[0]);
    });
}

/** Searches a design point from a draw, or from the origin. */
type Search = (start: Float64Array | null) => DesignPoint | null;

/** A search along the dimensions that matter; where none does by itself, along all. */
function searchOf(state: LimitState): Search {
  const falling = fallingDimensions(state);
  const along = falling.length > 0 ? falling : [...new Float64Array(state.dimensions).keys()];
  return (draw) => {
    const start = new Float64Array(state.dimensions);
    if (draw) for (const d of along) start[d] = draw[d];
    return designPoint(state, start, along);
  };
}

/** Design points from the origin, and from those of the run's lowest draws that lie nearer to the limit than the points so far let expect. */
function designPoints(search: Search, run: Sample, pointOfDraw: (draw: number) => Float64Array): DesignPoint[] {
  const points: DesignPoint[] = [];
  add(points, search(null));
  const lowest = Array.from(run.values.keys())
    .sort((a, b) => worst(run.values[a]) - worst(run.values[b]))
    .slice(0, 40)
    .map((draw) => ({ margin: worst(run.values[draw]), z: pointOfDraw(draw) }));
  for (let more = 0; more < MORE; more++) {
    const settled = points.filter((point) => point.settled);
    const surprise = lowest.map(({ margin, z }) => {
      const expected = settled.map(({ steepness, distance, direction }) => steepness * (distance - dot(direction, z)));
      return settled.length === 0 ? Number.POSITIVE_INFINITY : (Math.min(...expected) - margin) / settled[0].steepness;
    });
    const most = surprise.indexOf(Math.max(...surprise));
    // Half a standard deviation is what curvature alone may do.
    if (!(surprise[most] > 0.5)) break;
    const [start] = lowest.splice(most, 1);
    add(points, search(start.z));
  }
  return points;
}

/** Looks for design points from draws beyond the limit that the points so far would seldom reach. */
function discover(search: Search, points: DesignPoint[], exceeding: readonly Float64Array[]): void {
  const starts = [...exceeding];
  for (let more = 0; more < DISCOVERED && starts.length > 0; more++) {
    const centres = nearEnough(points);
    const weights = starts.map((z) => weightAt(z, centres));
    const most = weights.indexOf(Math.max(...weights));
    // At a point of a straight limit, and everywhere beyond it, the weight is exp(−β²/2) at most.
    const usual = Math.max(0, ...centres.map(({ distance }) => Math.exp(-(distance ** 2) / 2)));
    if (!(weights[most] > Math.E * usual)) break;
    const [start] = starts.splice(most, 1);
    add(points, search(start));
  }
}

function add(points: DesignPoint[], found: DesignPoint | null): void {
  if (!found || !(found.distance > 0)) return;
  const known = ({ settled, direction, z }: DesignPoint) => {
    const apart = Math.hypot(...z.map((each, d) => each - found.z[d]));
    return settled && (dot(direction, found.direction) > 0.95 || apart < 1);
  };
  if (!points.some(known)) points.push(found);
}

/**
 * The points worth drawing around: settled ones where there are any, and none that is so far away that it adds less than a hundredth and
 * would still take its share of the draws.
 */
function nearEnough(points: readonly DesignPoint[]): readonly DesignPoint[] {
  const settled = points.filter((point) => point.settled);
  const usable = settled.length > 0 ? settled : points;
  const nearest = Math.min(...usable.map(({ distance }) => distance));
  return usable.filter(({ distance }) => normalBelow(-distance) > 0.01 * normalBelow(-nearest));
}

function worst(margin: number): number {
  return Number.isNaN(margin) ? -1e300 : margin;
}

/** Whether the run's count could have come from this probability: its 99.9 % bounds reach the sampled interval. */
function agreesWithRun(found: SampledProbability, run: Sample): boolean {
  const n = run.values.length;
  const count = Math.round(run.below(0).probability * n);
  const { low, high } = counted(count, n);
  const [widerLow, widerHigh] = [count - 1.7 * (count - low * n), count + 1.7 * (high * n - count)];
  return found.high * n >= widerLow && found.low * n <= widerHigh;
}
