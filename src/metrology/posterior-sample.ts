import { cholesky } from '../numeric/dense.ts';
import { randomStream } from '../numeric/random.ts';
import { autocorrelationTime } from './autocorrelation.ts';
import { fittedSpace } from './bending.ts';
import { naturalValue } from './coordinates.ts';
import type { Fit, FitProblem } from './fit.ts';
import { scaledLimits } from './limits.ts';
import { lossOf } from './minimise.ts';
import { predictionOf } from './prediction.ts';
import { Sample } from './sample.ts';

export interface PosteriorSampleOptions {
  readonly seed: number;
  /** States kept; as many again go before them, to find the step. */
  readonly samples: number;
}

/** Draws from what is known about the inputs after the fit, whatever shape that has. */
export interface PosteriorSample {
  readonly seed: number;
  /** Values by input id [SI]. */
  readonly inputs: ReadonlyMap<string, Sample>;
  /** Independent draws that the chain is worth, for the input with the fewest. Below 100 its intervals aren't to be used. */
  readonly effective: number;
  /** Part of the proposals that were taken [1]. */
  readonly accepted: number;
}

/**
 * Markov chain over the inputs by preconditioned Crank–Nicolson proposals: z′ = √(1 − β²)·z + β·ξ, with z the coordinate in units of the fitted
 * normal distribution (widened by a fifth) and ξ standard normal. It is taken with probability exp(Δ), where Δ is only what the true posterior
 * differs by from the fitted one; so many inputs cost no more than few. β is set in the first half, which isn't kept. Here a rectangle is
 * a rectangle, not a normal distribution.
 *
 * Source: S. L. Cotter, G. O. Roberts, A. M. Stuart, D. White, "MCMC methods for functions", Statistical Science 28 (2013) 424–446, from memory.
 */
export function posteriorSample(problem: FitProblem, fit: Fit, options: PosteriorSampleOptions): PosteriorSample {
  const { coordinates, best, covariance } = fittedSpace(problem, fit);
  const limits = scaledLimits(coordinates, problem.limits ?? {}, true);
  const n = best.length;
  const factor = cholesky(covariance, n);
  if (!factor) throw new Error('the covariance of the fit is none');
  const predictor = predictionOf(problem, coordinates, limits);
  const rectangles = coordinates.inputs.flatMap(({ spread }, i) => (spread?.shape === 'rectangular' ? [i] : []));
  const stream = randomStream(options.seed);
  const point = new Float64Array(n);

  /** −log of the true posterior over the fitted normal one; +∞ where there's no solution. Leaves the coordinates in `point`. */
  function surplus(z: Float64Array): number {
    let square = 0;
    for (let i = 0; i < n; i++) {
      square += z[i] ** 2;
      point[i] = best[i];
      for (let j = 0; j <= i; j++) point[i] += WIDER * factor![i * n + j] * z[j];
      if (point[i] < limits.low[i] || point[i] > limits.high[i]) return Number.POSITIVE_INFINITY;
    }
    const there = predictor.at(point);
    if (there.ending !== 'solved') return Number.POSITIVE_INFINITY;
    let loss = lossOf(problem, coordinates, point, there);
    for (const i of rectangles) loss -= point[i] ** 2;
    return (loss - square) / 2;
  }

  let z: Float64Array = new Float64Array(n);
  let proposal: Float64Array = new Float64Array(n);
  let now = surplus(z);
  const state = best.slice();
  const columns = coordinates.ids.map(() => new Float64Array(options.samples));
  let beta = 0.5;
  let accepted = 0;
  for (let s = -options.samples; s < options.samples; s++) {
    // One proposal in four is made anew: it finds what lies apart, such as a second hump.
    const anew = stream.uniform() < 0.25;
    const step = anew ? 1 : beta;
    const kept = Math.sqrt(1 - step ** 2);
    for (let i = 0; i < n; i++) proposal[i] = kept * z[i] + step * stream.normal();
    const then = surplus(proposal);
    const taken = Math.log(stream.uniform()) < now - then;
    if (taken) {
      [z, proposal] = [proposal, z];
      now = then;
      state.set(point);
    }
    // Towards one of three taken, by ever smaller changes; then left alone, or the chain would not keep its distribution.
    const change = (Number(taken) - 1 / 3) / Math.sqrt(options.samples + s + 1);
    if (s < 0 && !anew) beta = Math.min(1, Math.max(1e-3, beta * Math.exp(2 * change)));
    if (s >= 0) {
      if (taken) accepted++;
      for (let i = 0; i < n; i++) columns[i][s] = naturalValue(coordinates, i, state[i]);
    }
  }
  const effective = Math.min(...columns.map((column) => options.samples / autocorrelationTime(column)));
  return {
    seed: options.seed,
    inputs: new Map(coordinates.ids.map((id, i) => [id, new Sample(columns[i], false)])),
    effective,
    accepted: accepted / options.samples,
  };
}

/** The fitted distribution is made a fifth wider, so that it reaches into the longer side of a bent one. */
const WIDER = 1.2;
