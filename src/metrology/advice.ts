import { outputIndex } from './evaluate.ts';
import { correlationsOf, type Joint } from './joint.ts';
import type { Model } from './model.ts';
import type { Sensitivities } from './sensitivity.ts';

/** Something that could be measured: an input, or an output of the model. */
export interface Candidate {
  readonly id: string;
  readonly what: { readonly input: string } | { readonly output: string };
  /** Standard uncertainty the measurement would have [SI of what is measured]. */
  readonly u: number;
  /** What it costs, in any unit that is the same for all candidates. */
  readonly effort: number;
}

/** What a measurement would do for the output that was asked about. */
export interface Advice {
  readonly candidate: Candidate;
  /** Standard uncertainty of the output now and after the measurement [SI]. */
  readonly uNow: number;
  readonly uAfter: number;
  /** Part of the output's variance that goes away [1]. */
  readonly reduction: number;
}

/**
 * Candidates by what they take off an output's variance, per effort, best first; null where there are no sensitivities.
 * Reduction = (cᵀ·P·Hᵀ)² / (H·P·Hᵀ + u²), whatever the reading turns out to be.
 *
 * c, H: sensitivities of the output and of what is measured to the inputs; P: covariance of the inputs; u: uncertainty of the measurement.
 * Linear around the point of `sens`. Source: the linear Gaussian update, A. Tarantola, "Inverse Problem Theory" (SIAM 2005), section 3.2.
 * Ranked by the variance of the output, not by information: a measurement may tell much, but about something else.
 */
export function advise(
  model: Model,
  outputId: string,
  candidates: readonly Candidate[],
  sens: Sensitivities,
  joint?: Joint,
): readonly Advice[] | null {
  if (sens.ending !== 'solved') return null;
  const covarianceOf = covariances(model, sens, joint);
  const slopes = sens.c[outputIndex(model, outputId)];
  const variance = covarianceOf(slopes, slopes);
  const list = candidates.map((candidate) => {
    const looked = slopesOf(model, sens, candidate);
    const known = covarianceOf(looked, looked) + candidate.u ** 2;
    const taken = known > 0 ? covarianceOf(slopes, looked) ** 2 / known : 0;
    return {
      candidate,
      uNow: Math.sqrt(variance),
      uAfter: Math.sqrt(Math.max(0, variance - taken)),
      reduction: variance > 0 ? Math.min(1, taken / variance) : 0,
    };
  });
  return list.sort((a, b) => b.reduction / b.candidate.effort - a.reduction / a.candidate.effort);
}

function slopesOf(model: Model, sens: Sensitivities, { what }: Candidate): Float64Array {
  if ('output' in what) return sens.c[outputIndex(model, what.output)];
  const index = model.inputs.findIndex((input) => input.id === what.input);
  if (index < 0) throw new Error(`no input "${what.input}"`);
  const slopes = new Float64Array(model.inputs.length);
  slopes[index] = 1;
  return slopes;
}

/** Covariance of two linear functions of the inputs, a·P·bᵀ. */
function covariances(model: Model, sens: Sensitivities, joint?: Joint) {
  const pairs = correlationsOf(model, joint);
  const { u } = sens;
  return (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < u.length; i++) sum += a[i] * b[i] * u[i] ** 2;
    for (const { i, j, r } of pairs) sum += a[i] * b[j] * u[i] * u[j] * r;
    return sum;
  };
}
