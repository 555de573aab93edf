import { outputIndex } from './evaluate.ts';
import { correlation, type Joint } from './joint.ts';
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
  const uncertain = model.inputs.map((input, i) => ({ id: input.id, i })).filter(({ i }) => sens.u[i] > 0);
  const correlated = new Set(joint?.ids);

  const parts = uncertain.map(({ id, i }) => ({ id, i, contribution: slopes[i] * sens.u[i] }));
  const variances = parts.map((part) => {
    let variance = part.contribution ** 2;
    if (joint && correlated.has(part.id)) {
      for (const other of parts) {
        if (other === part || !correlated.has(other.id)) continue;
        variance += part.contribution * other.contribution * correlation(joint, part.id, other.id);
      }
    }
    return variance;
  });
  const total = variances.reduce((sum, variance) => sum + variance, 0);
  const rows = parts.map(({ id, i, contribution }, k) => ({
    input: id,
    sensitivity: slopes[i],
    u: sens.u[i],
    contribution,
    share: total > 0 ? variances[k] / total : 0,
  }));
  rows.sort((a, b) => b.share - a.share);
  return { output: outputId, u: Math.sqrt(Math.max(0, total)), rows };
}
