import { cholesky } from '../numeric/dense.ts';
import { randomStream } from '../numeric/random.ts';
import type { Candidate } from './advice.ts';
import { budget } from './budget.ts';
import { drawsOf } from './draws.ts';
import { outputIndex, startValues } from './evaluate.ts';
import { fit as fitInputs } from './fit.ts';
import type { Joint } from './joint.ts';
import type { Input, Model, Output } from './model.ts';
import { withPosterior } from './posterior.ts';
import { sensitivities } from './sensitivity.ts';

/** What a measurement did for an output, tried on boards of which the truth is known. */
export interface AdviceTrial {
  /** Boards on which the measurement was made and learnt from. */
  readonly trials: number;
  /** Boards without a solution or without a fit; they count in nothing. */
  readonly failed: number;
  /** Root mean square of the standard uncertainty that the output has after the fit [SI]. */
  readonly uAfter: number;
  /** Root mean square of the output's true error before and after [SI]. */
  readonly errorBefore: number;
  readonly errorAfter: number;
}

/**
 * Tries a candidate by brute force: draws a true board from what is stated, draws a reading from it with the candidate's uncertainty, fits the
 * stated board to the reading, and looks how uncertain the output then is and how far off it really is. Nothing in it is linear, so it shows
 * whether `advise` can be trusted.
 */
export function tryAdvice(
  model: Model,
  outputId: string,
  candidate: Candidate,
  options: { readonly seed: number; readonly trials: number },
  joint?: Joint,
): AdviceTrial {
  const looking = independent(withReading(model, candidate), joint);
  const place = outputIndex(looking, outputId);
  const readingPlace = looking.outputs.length - 1;
  const draws = drawsOf(looking, { seed: options.seed }, options.trials);
  draws.fill(0);
  const noise = randomStream(options.seed);
  const y = new Float64Array(looking.outputs.length);
  looking.evaluate(startValues(looking), y);
  const before = y[place];
  let trials = 0;
  let variance = 0;
  let squareBefore = 0;
  let squareAfter = 0;
  for (let s = 0; s < options.trials; s++) {
    const truth = startValues(looking);
    draws.inputs.forEach((input, k) => {
      truth[input] = draws.columns[k][s];
    });
    const error = candidate.u * noise.normal();
    if (looking.evaluate(truth, y).ending !== 'solved') continue;
    const wanted = y[place];
    const observation = {
      id: 'reading',
      model: looking,
      output: READING,
      value: y[readingPlace] + error,
      u: candidate.u,
    };
    const learnt = fitInputs({ inputs: looking.inputs, observations: [observation] });
    if (learnt.ending !== 'converged') continue;
    const after = withPosterior(looking, learnt);
    const sens = sensitivities(after);
    const known = budget(after, outputId, sens, learnt.joint);
    if (!known) continue;
    trials++;
    variance += known.u ** 2;
    squareBefore += (before - wanted) ** 2;
    squareAfter += (sens.y0[place] - wanted) ** 2;
  }
  return {
    trials,
    failed: options.trials - trials,
    uAfter: Math.sqrt(variance / trials),
    errorBefore: Math.sqrt(squareBefore / trials),
    errorAfter: Math.sqrt(squareAfter / trials),
  };
}

const READING = 'reading of the candidate';

/** The model with what is measured as an output of its own. */
function withReading(model: Model, { what }: Candidate): Model {
  const from = 'output' in what ? outputIndex(model, what.output) : -1;
  const input = 'input' in what ? model.inputs.findIndex(({ id }) => id === what.input) : -1;
  if (from < 0 && input < 0) throw new Error('what is to be measured is neither an input nor an output');
  const { kind, unit } = from < 0 ? model.inputs[input] : model.outputs[from];
  const reading: Output = { id: READING, kind, unit, title: READING };
  const inner = new Float64Array(model.outputs.length);
  return {
    inputs: model.inputs,
    outputs: [...model.outputs, reading],
    evaluate(x, y) {
      const status = model.evaluate(x, inner);
      y.set(inner);
      y[inner.length] = from < 0 ? x[input] : inner[from];
      return status;
    },
  };
}

/** The same model with independent inputs: those of the joint distribution are made from standard normal numbers. */
function independent(model: Model, joint?: Joint): Model {
  if (!joint) return model;
  const n = joint.ids.length;
  // One that is singular to rounding gets the least variance that makes it a covariance again.
  const widened = joint.covariance.map((value, k) => (k % (n + 1) === 0 ? value * (1 + 1e-9) : value));
  const factor = cholesky(joint.covariance, n) ?? cholesky(widened, n);
  if (!factor) throw new Error(`no covariance: ${joint.ids.join(', ')}`);
  const places = joint.ids.map((id) => model.inputs.findIndex((input) => input.id === id));
  const own = model.inputs.map((input) => (joint.ids.includes(input.id) ? { ...input, spread: null } : input));
  const normals = joint.ids.map((id): Input => {
    const source = `one of ${n} correlated numbers`;
    return { id: `normal of ${id}`, kind: 'ratio', unit: '', value: 0, spread: { shape: 'normal', u: 1 }, source };
  });
  const inner = startValues(model);
  return {
    inputs: [...own, ...normals],
    outputs: model.outputs,
    evaluate(x, y) {
      inner.set(x.subarray(0, inner.length));
      places.forEach((place, k) => {
        if (place < 0) return;
        let coordinate = joint.mean[k];
        for (let j = 0; j <= k; j++) coordinate += factor[k * n + j] * x[inner.length + j];
        inner[place] = joint.logarithmic[k] ? Math.exp(coordinate) : coordinate;
      });
      return model.evaluate(inner, y);
    },
  };
}
