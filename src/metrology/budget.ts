import { outputIndex } from './evaluate.ts';
import { correlationsOf, type Joint } from './joint.ts';
import type { Model } from './model.ts';
import type { Sensitivities } from './sensitivity.ts';

/** One input's part in the uncertainty of an output. */
export interface BudgetRow {
  readonly input: string;
  /** ∂output/∂input [SI/SI]. */
  readonly sensitivity: number;
  /** Standard uncertainty of the input [SI]. */
  readonly u: number;
  /** What the input alone would do to the output [SI of the output], with its sign. */
  readonly contribution: number;
  /** Part of the output's variance [1]; the shares add up to 1. Negative only where correlated inputs cancel. */
  readonly share: number;
}

/** What the correlation of two inputs adds to the output's variance, as a part of it [1]; negative where they cancel. */
export interface BudgetCovariance {
  readonly inputs: readonly [string, string];
  readonly share: number;
}

/** Why an output is uncertain. */
export interface Budget {
  readonly output: string;
  /** Combined standard uncertainty [SI]. */
  readonly u: number;
  /** Largest share first. */
  readonly rows: readonly BudgetRow[];
  /** Pairs of correlated inputs; half of each is in the share of either input already. */
  readonly covariances: readonly BudgetCovariance[];
}

/**
 * Combined standard uncertainty of one output and what each input adds to it, to first order:
 * u² = Σᵢ Σⱼ cᵢ cⱼ uᵢ uⱼ rᵢⱼ, with rᵢⱼ = 0 between different inputs unless `joint` correlates them.
 * An input that enters twice is one input with one sensitivity, so a difference of equal things has no uncertainty.
 *
 * Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2. Returns null where there are no sensitivities.
 */
export function budget(model: Model, outputId: string, sens: Sensitivities, joint?: Joint): Budget | null {
  const slopes = sens.c[outputIndex(model, outputId)];
  if (sens.ending !== 'solved') return null;
  const contributions = slopes.map((slope, i) => slope * sens.u[i]);
  const variances = contributions.map((contribution) => contribution ** 2);
  const correlations = correlationsOf(model, joint);
  for (const { i, j, r } of correlations) variances[i] += contributions[i] * contributions[j] * r;
  const total = variances.reduce((sum, variance) => sum + variance, 0);
  const rows = model.inputs.flatMap((input, i) => {
    if (sens.u[i] === 0) return [];
    const share = total > 0 ? variances[i] / total : 0;
    return [{ input: input.id, sensitivity: slopes[i], u: sens.u[i], contribution: contributions[i], share }];
  });
  rows.sort((a, b) => b.share - a.share);
  const covariances = correlations.flatMap(({ i, j, r }): BudgetCovariance[] => {
    if (i > j || !(total > 0)) return [];
    const inputs = [model.inputs[i].id, model.inputs[j].id] as const;
    return [{ inputs, share: (2 * contributions[i] * contributions[j] * r) / total }];
  });
  return { output: outputId, u: Math.sqrt(Math.max(0, total)), rows, covariances };
}
