import type { Budget } from './budget.ts';

/** What a group of inputs adds to the uncertainty of an output. */
export interface BudgetGroup {
  readonly group: string;
  /** Ids, largest share first. */
  readonly inputs: readonly string[];
  /** What the group alone would do to the output: its standard uncertainty with every other input known [SI of the output]. */
  readonly u: number;
  /** Part of the output's variance, with the covariances inside the group [1]. */
  readonly share: number;
}

export interface GroupedBudget {
  /** Largest share first. */
  readonly groups: readonly BudgetGroup[];
  /** Part of the variance that belongs to no group: covariances between inputs of different groups [1]. With the shares of the groups it makes 1. */
  readonly between: number;
}

/**
 * A budget by groups of inputs: by the part they belong to, or by where they come from.
 * Inside a group variances and covariances add up, Σᵢ Σⱼ cᵢ cⱼ uᵢ uⱼ rᵢⱼ over its inputs; what correlates two groups belongs to neither.
 */
export function budgetByGroup(budget: Budget, groupOf: (inputId: string) => string): GroupedBudget {
  const total = budget.u ** 2;
  const variances = new Map<string, number>();
  const inputs = new Map<string, string[]>();
  for (const { input, contribution } of budget.rows) {
    const group = groupOf(input);
    variances.set(group, (variances.get(group) ?? 0) + contribution ** 2);
    inputs.set(group, [...(inputs.get(group) ?? []), input]);
  }
  let between = 0;
  for (const { inputs: pair, share } of budget.covariances) {
    const [group, other] = pair.map(groupOf);
    if (group === other) variances.set(group, variances.get(group)! + share * total);
    else between += share;
  }
  const groups = [...variances].map(([group, variance]): BudgetGroup => {
    // Less than nothing only by rounding, where a group's inputs cancel.
    const u = Math.sqrt(Math.max(0, variance));
    return { group, inputs: inputs.get(group)!, u, share: total > 0 ? variance / total : 0 };
  });
  return { groups: groups.sort((a, b) => b.share - a.share), between };
}
