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

/** Why an output is uncertain. */
export interface Budget {
  readonly output: string;
  /** Combined standard uncertainty [SI]. */
  readonly u: number;
  /** Largest share first. */
  readonly rows: readonly BudgetRow[];
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
  for (const { i, j, r } of correlationsOf(model, joint)) variances[i] += contributions[i] * contributions[j] * r;
  const total = variances.reduce((sum, variance) => sum + variance, 0);
  const rows = model.inputs.flatMap((input, i) => {
    if (sens.u[i] === 0) return [];
    const share = total > 0 ? variances[i] / total : 0;
    return [{ input: input.id, sensitivity: slopes[i], u: sens.u[i], contribution: contributions[i], share }];
  });
  rows.sort((a, b) => b.share - a.share);
  return { output: outputId, u: Math.sqrt(Math.max(0, total)), rows };
}
