import { numericalTolerance } from './margin.ts';
import type { Ending, Model } from './model.ts';
import { type MonteCarlo, type MonteCarloOptions, monteCarlo } from './monte-carlo.ts';
import { Sample } from './sample.ts';

export interface AdaptiveOptions extends Omit<MonteCarloOptions, 'samples' | 'outputs'> {
  /** Outputs whose figures have to be accurate; all others keep the draws of the first blocks. */
  readonly accurate: readonly string[];
  /** Draws a block; by default 4096. */
  readonly block?: number;
  /** Most draws in all; by default 200 000. */
  readonly most?: number;
  /** Part of the numerical tolerance of u's one digit that the figures have to keep [1]; a fifth by default. */
  readonly part?: number;
}

/** How accurate the figures of one output are. */
export interface Accuracy {
  /** Tolerance asked for [SI]. */
  readonly tolerance: number;
  /** Twice the standard error of estimate, standard uncertainty and both ends of the 95 % interval [SI]; the largest of the four. */
  readonly reached: number;
}

/** A Monte Carlo run that went on until its figures were accurate, or as far as it may. */
export interface AdaptiveMonteCarlo extends MonteCarlo {
  readonly blocks: number;
  /** Why it ended: every figure accurate, the most draws made, or cancelled. */
  readonly ended: 'accurate' | 'most' | 'cancelled';
  /** By id of the outputs that have to be accurate. */
  readonly accuracy: ReadonlyMap<string, Accuracy>;
  /** The first block alone: a plain run under the same seed. */
  readonly firstBlock: MonteCarlo;
}

/** With fewer blocks than this, the spread of their results says too little. */
const FEWEST_BLOCKS = 4;

/**
 * Monte Carlo in blocks until the figures are accurate: JCGM 101:2008, 7.9. After every block, s is the standard deviation of the mean of the blocks' results for the
 * estimate, its standard uncertainty and both ends of the 95 % interval; done when 2s is below the tolerance for each of them.
 *
 * The tolerance is a fifth of half a unit of u's one digit, as is wanted of a run that judges first order (8.2, note, from memory). A block is one scrambled sequence,
 * and each has a scrambling of its own: their results are independent although the draws in one are not (A. B. Owen, J. Complexity 14 (1998) 466–489), so
 * s is an honest standard error. Where a block has no figure (lost draws leave an interval without an end), the output counts as not accurate.
 */
export function adaptiveMonteCarlo(model: Model, options: AdaptiveOptions): AdaptiveMonteCarlo {
  const { accurate, block = 4096, most = 200_000, part = 0.2, seed, progress, cancelled } = options;
  const runs: MonteCarlo[] = [];
  const figures = new Map(accurate.map((id) => [id, [] as number[][]]));
  let accuracy: ReadonlyMap<string, Accuracy> = new Map();
  let ended: AdaptiveMonteCarlo['ended'] = 'most';
  for (let done = 0; runs.length < FEWEST_BLOCKS || done + block <= most; done += block) {
    const run = monteCarlo(model, {
      ...options,
      samples: block,
      seed: blockSeed(seed, runs.length),
      outputs: runs.length < FEWEST_BLOCKS ? undefined : accurate,
      progress: (ofBlock) => progress?.(done + ofBlock, Math.max(most, FEWEST_BLOCKS * block)),
    });
    if (run.cancelled && runs.length > 0) {
      ended = 'cancelled';
      break;
    }
    runs.push(run);
    for (const [id, rows] of figures) rows.push(figuresOf(run.outputs.get(id)!));
    if (run.cancelled || cancelled?.()) {
      ended = 'cancelled';
      break;
    }
    if (runs.length < FEWEST_BLOCKS) continue;
    accuracy = new Map([...figures].map(([id, rows]) => [id, accuracyOf(rows, part)]));
    if ([...accuracy.values()].every(({ tolerance, reached }) => reached <= tolerance)) {
      ended = 'accurate';
      break;
    }
  }
  return {
    ...joined(model, runs, seed, ended === 'cancelled'),
    blocks: runs.length,
    ended,
    accuracy,
    firstBlock: runs[0],
  };
}

/** Seed of a block: the first block has the run's own, so that it is the plain run under that seed. */
function blockSeed(seed: number, block: number): number {
  return block === 0 ? seed : (seed ^ Math.imul(block, 0x9e3779b1)) >>> 0;
}

function figuresOf(sample: Sample): number[] {
  const { low, high } = sample.interval(0.95);
  return [sample.mean, sample.u, low, high];
}

function accuracyOf(rows: readonly number[][], part: number): Accuracy {
  const h = rows.length;
  const means = rows[0].map((_, k) => rows.reduce((sum, row) => sum + row[k], 0) / h);
  const errors = means.map((mean, k) =>
    Math.sqrt(rows.reduce((sum, row) => sum + (row[k] - mean) ** 2, 0) / (h * (h - 1))),
  );
  const reached = 2 * Math.max(...errors);
  return {
    // What has no uncertainty beyond rounding is as accurate as it gets.
    tolerance: Math.max(part * numericalTolerance(means[1]), 1e-12 * Math.abs(means[0])),
    reached: Number.isFinite(reached) ? reached : Number.POSITIVE_INFINITY,
  };
}

/** Several runs as one: the draws one after another. */
function joined(model: Model, runs: readonly MonteCarlo[], seed: number, cancelled: boolean): MonteCarlo {
  const endings: Record<Ending, number> = { solved: 0, runaway: 0, infeasible: 0, unsettled: 0 };
  for (const run of runs) for (const ending of Object.keys(endings) as Ending[]) endings[ending] += run.endings[ending];
  const held = new Set(model.outputs.filter(({ hold }) => hold !== undefined).map(({ id }) => id));
  const outputs = new Map(
    [...runs[0].outputs.keys()].map((id) => {
      const parts = runs.flatMap((run) => run.outputs.get(id)?.values ?? []);
      const values = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
      let from = 0;
      for (const each of parts) {
        values.set(each, from);
        from += each.length;
      }
      return [id, new Sample(values, held.has(id))];
    }),
  );
  return { seed, samples: runs.reduce((sum, run) => sum + run.samples, 0), cancelled, endings, outputs };
}
