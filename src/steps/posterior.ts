import { bending } from '../metrology/bending.ts';
import { posteriorSample } from '../metrology/posterior-sample.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { type Learnt, quantityAt } from './learn.ts';
import type { Figure } from './step-plan.ts';

/** A learnt number whose fitted uncertainty isn't to be trusted, because the posterior bends along it. */
export interface BentInput {
  readonly path: string;
  /** Standard uncertainties towards lower and higher values, from the profile; null where there's no solution. */
  readonly below: Figure | null;
  readonly above: Figure | null;
}

/** The learnt numbers along which the posterior bends. */
export function bentInputs(study: Study, { problem, fit }: Learnt): readonly BentInput[] {
  const wanted = new Set(study.learning?.learn);
  return bending(problem, fit, (id) => wanted.has(id)).map(({ id, low, high }) => {
    const { kind, unit } = quantityAt(study, id)!;
    const { u } = fit.inputs.find((input) => input.id === id)!;
    const side = (share: number) =>
      share > 0 && Number.isFinite(share)
        ? figure(
            Number((share * u).toPrecision(2)),
            null,
            kind === 'temperature' ? 'temperature-difference' : kind,
            kind === 'temperature' ? 'K' : unit,
          )
        : null;
    return { path: id, below: side(low), above: side(high) };
  });
}

/** What a sample of the posterior says about the numbers that were learnt. */
export interface SampledInputs {
  readonly seed: number;
  readonly samples: number;
  /** Independent draws that the sample is worth; below 100 its intervals aren't to be used. */
  readonly effective: number;
  readonly inputs: readonly {
    readonly path: string;
    readonly mean: Figure;
    /** 95 % interval. */
    readonly low: Figure;
    readonly high: Figure;
  }[];
}

/** Draws from what is known after the fit, whatever its shape. */
export function samplePosterior(
  study: Study,
  { problem, fit }: Learnt,
  options: { readonly seed: number; readonly samples: number },
): SampledInputs {
  const { inputs, effective } = posteriorSample(problem, fit, options);
  return {
    ...options,
    effective,
    inputs: (study.learning?.learn ?? []).flatMap((path) => {
      const quantity = quantityAt(study, path);
      const sample = inputs.get(path);
      if (!quantity || !sample) return [];
      const { kind, unit } = quantity;
      const { low, high } = sample.interval(0.95);
      const written = (value: number, u: number | null) => figure(value, u, kind, unit);
      // The ends have the digits that the spread of the sample gives them.
      const end = (value: number) => ({ ...written(value, null), text: written(value, sample.u).text.split(' ± ')[0] });
      return [{ path, mean: written(sample.mean, sample.u), low: end(low), high: end(high) }];
    }),
  };
}
