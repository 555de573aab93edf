import { outputIndex } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';
import { normalBelow } from './probability.ts';
import type { Sensitivities } from './sensitivity.ts';

/** Something that could be measured: an input, or an output of the model. */
export interface Candidate {
  readonly id: string;
  readonly what: { readonly input: string } | { readonly output: string };
  /** Standard uncertainty the measurement would have [SI of what is measured]. */
  readonly u: number;
  /** What it costs, in any unit that is the same for all candidates. */
  readonly effort: number;
  /** Of several with the same word here only one is made: the same reading by a better instrument, say. */
  readonly oneOf?: string;
}

/** What a measurement would do for the output that was asked about. */
export interface Advice<C extends Candidate = Candidate> {
  readonly candidate: C;
  /** Standard uncertainty of the output now and after the measurement [SI]. */
  readonly uNow: number;
  readonly uAfter: number;
  /** Part of the output's variance that goes away [1]. */
  readonly reduction: number;
  /** For a margin; null for any other output. */
  readonly exceed: ExceedAdvice | null;
}

/** What a measurement would do for the probability that a limit is exceeded, for normal distributions [1]. */
export interface ExceedAdvice {
  /** Before; this is also what it will be on average over all readings that may come: a measurement makes nothing safer by itself. */
  readonly now: number;
  /** After a reading that bears out the best values. */
  readonly borneOut: number;
  /** Chance that the reading leaves the probability of exceeding below `CLEAR`. */
  readonly clears: number;
}

/** A probability of exceeding below this counts as clear [1]: the lower end of a 95 % interval is on the good side. */
const CLEAR = 0.025;
const CLEAR_SIGMAS = 1.959963984540054;

/**
 * Candidates by what they take off an output's variance, per effort, best first; null where there are no sensitivities.
 * Reduction = (cᵀ·P·Hᵀ)² / (H·P·Hᵀ + u²), whatever the reading turns out to be.
 *
 * c, H: sensitivities of the output and of what is measured to the inputs; P: covariance of the inputs; u: uncertainty of the measurement.
 * Linear around the point of `sens`. Source: the linear Gaussian update, A. Tarantola, "Inverse Problem Theory" (SIAM 2005), section 3.2.
 * Ranked by the variance of the output, not by information: a measurement may tell much, but about something else.
 */
export function advise<C extends Candidate>(
  model: Model,
  outputId: string,
  candidates: readonly C[],
  sens: Sensitivities,
  joint?: Joint,
): readonly Advice<C>[] | null {
  if (sens.ending !== 'solved') return null;
  return ranked(model, outputId, candidates, sens, gramOf(model, outputId, candidates, sens, joint));
}

/**
 * Several measurements together, each the best after those before it (greedy), and each with what it does after them; fewer where nothing
 * more helps. Null where there are no sensitivities.
 */
export function adviseTogether<C extends Candidate>(
  model: Model,
  outputId: string,
  candidates: readonly C[],
  sens: Sensitivities,
  count: number,
  joint?: Joint,
): readonly Advice<C>[] | null {
  if (sens.ending !== 'solved') return null;
  const gram = gramOf(model, outputId, candidates, sens, joint);
  const chosen: Advice<C>[] = [];
  while (chosen.length < count) {
    const [best] = ranked(model, outputId, candidates, sens, gram).filter(
      ({ candidate }) => !chosen.some((each) => excludes(each.candidate, candidate)),
    );
    if (!best || best.reduction < 1e-6) break;
    chosen.push(best);
    measure(gram, candidates.indexOf(best.candidate) + 1, best.candidate.u);
  }
  return chosen;
}

function excludes(made: Candidate, other: Candidate): boolean {
  return made === other || (made.oneOf !== undefined && made.oneOf === other.oneOf);
}

/** Covariances between the output (first) and everything that could be measured, each row a list. */
type Gram = Float64Array[];

function ranked<C extends Candidate>(
  model: Model,
  outputId: string,
  candidates: readonly C[],
  sens: Sensitivities,
  gram: Gram,
): Advice<C>[] {
  const output = outputIndex(model, outputId);
  const margin = model.outputs[output].hold ? sens.y0[output] : null;
  const variance = Math.max(0, gram[0][0]);
  const list = candidates.map((candidate, k): Advice<C> => {
    const known = gram[k + 1][k + 1] + candidate.u ** 2;
    const taken = known > 0 ? Math.min(variance, gram[0][k + 1] ** 2 / known) : 0;
    const uNow = Math.sqrt(variance);
    const uAfter = Math.sqrt(variance - taken);
    const exceed = margin === null ? null : exceedAdvice(margin, uNow, uAfter);
    return { candidate, uNow, uAfter, reduction: variance > 0 ? taken / variance : 0, exceed };
  });
  return list.sort((a, b) => b.reduction / b.candidate.effort - a.reduction / a.candidate.effort);
}

/** The margin's best value after the reading is normal around the present one with variance u² − u′²; clear when it is above 1.96·u′. */
function exceedAdvice(margin: number, uNow: number, uAfter: number): ExceedAdvice {
  const moves = Math.sqrt(Math.max(0, uNow ** 2 - uAfter ** 2));
  const ahead = margin - CLEAR_SIGMAS * uAfter;
  return {
    now: below(margin, uNow),
    borneOut: below(margin, uAfter),
    clears: moves > 0 ? normalBelow(ahead / moves) : below(margin, uNow) < CLEAR ? 1 : 0,
  };
}

function below(margin: number, u: number): number {
  return u > 0 ? normalBelow(-margin / u) : margin < 0 ? 1 : 0;
}

function gramOf(
  model: Model,
  outputId: string,
  candidates: readonly Candidate[],
  sens: Sensitivities,
  joint?: Joint,
): Gram {
  const covariance = covarianceOf(model, sens, joint);
  const rows = [sens.c[outputIndex(model, outputId)], ...candidates.map((each) => slopesOf(model, sens, each))];
  return rows.map((row) => {
    const through = covariance(row);
    return Float64Array.from(rows, (other) => {
      let sum = 0;
      for (let i = 0; i < other.length; i++) sum += other[i] * through[i];
      return sum;
    });
  });
}

/** Covariances as they are once number k is measured. */
function measure(gram: Gram, k: number, u: number): void {
  const known = gram[k][k] + u ** 2;
  const row = gram[k].slice();
  for (let i = 0; i < gram.length; i++) {
    for (let j = 0; j < gram.length; j++) gram[i][j] -= (row[i] * row[j]) / known;
  }
}

function slopesOf(model: Model, sens: Sensitivities, { what }: Candidate): Float64Array {
  if ('output' in what) return sens.c[outputIndex(model, what.output)];
  const index = model.inputs.findIndex((input) => input.id === what.input);
  if (index < 0) throw new Error(`no input "${what.input}"`);
  const slopes = new Float64Array(model.inputs.length);
  slopes[index] = 1;
  return slopes;
}

/** P·a for a list of slopes a; uncertainties are those of the sensitivities, correlations those of `joint`. */
function covarianceOf(model: Model, { u }: Sensitivities, joint?: Joint) {
  const places = new Map(model.inputs.map((input, i) => [input.id, i]));
  const members = (joint?.ids ?? []).flatMap((id, k) => (places.has(id) ? [{ k, i: places.get(id)! }] : []));
  const n = joint?.ids.length ?? 0;
  const { covariance } = joint ?? { covariance: new Float64Array(0) };
  const perDeviation = members.map(({ k, i }) => {
    const variance = covariance[k * (n + 1)];
    return variance > 0 ? u[i] / Math.sqrt(variance) : 0;
  });
  return (a: Float64Array): Float64Array => {
    const result = a.map((slope, i) => slope * u[i] ** 2);
    members.forEach((first, p) => {
      let sum = 0;
      members.forEach((second, q) => {
        if (p !== q) sum += covariance[first.k * n + second.k] * perDeviation[q] * a[second.i];
      });
      result[first.i] += perDeviation[p] * sum;
    });
    return result;
  };
}
