import { bending } from '../metrology/bending.ts';
import { posteriorSample } from '../metrology/posterior-sample.ts';
import type { Study } from '../study/study.ts';
import { figure } from './figure.ts';
import { type Learnt, quantityAt } from './learn.ts';
import type { Figure } from './step-plan.ts';

/** Numbers that were learnt whose fitted uncertainty isn't to be trusted, because the posterior bends along them. */
export function bentInputs(study: Study, { problem, fit }: Learnt): readonly string[] {
  const wanted = new Set(study.learning?.learn);
  return bending(problem, fit, (id) => wanted.has(id)).map(({ id }) => id);
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
