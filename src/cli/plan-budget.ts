import { coverageFactor } from '../metrology/effective-degrees-of-freedom.ts';
import {
  bendsOfMargin,
  budgetGroupsOfMargin,
  budgetOfMargin,
  globalBudgetOfMargin,
} from '../steps/budget-of-margin.ts';
import type {
  BendBudget,
  BudgetGroups,
  BudgetRow,
  GlobalBudget,
  Grouping,
  SampledShare,
  StepPlan,
} from '../steps/step-plan.ts';
import type { Study } from '../study/study.ts';
import { plural, writeTable } from './text-table.ts';

/** How a budget is asked for. */
export interface BudgetQuestion {
  readonly limit: string;
  readonly by: Grouping | 'input';
  /** Over whole distributions instead of straight lines. */
  readonly global: boolean;
  readonly seed: number;
}

/** Why the margin of one limit is uncertain at each step, for people and for programs. */
export function explainBudget(study: Study, plans: readonly StepPlan[], question: BudgetQuestion) {
  const { limit, by, global, seed } = question;
  const parts = plans.map((plan) => {
    const margin = plan.margins.find(({ id }) => id === limit);
    const head = `── ${plan.id}: ${margin?.title ?? limit}\nmargin ${margin?.margin.text ?? 'not known at this step'}`;
    const heading = { step: plan.id, limit };
    if (global) {
      const made = globalBudgetOfMargin(study, plan.id, limit, seed);
      return { text: `${head}\n${made ? globalTable(made) : noBudget}`, json: { ...heading, global: made } };
    }
    const bend = margin?.disagree ? bendsOfMargin(study, plan.id, limit) : null;
    const bends = margin?.disagree ? `\n  ${margin.why}${bend ? `\n  ${bendText(bend)}` : ''}\n  ${seeGlobal}` : '';
    if (by === 'input') {
      const rows = budgetOfMargin(study, plan.id, limit) ?? [];
      const degrees = margin?.degreesOfFreedom ?? null;
      const text = `${head}\n${budgetTable(rows)}${fewDegrees(degrees)}${bends}`;
      return { text, json: { ...heading, rows, degreesOfFreedom: degrees, secondOrder: bend } };
    }
    const made = budgetGroupsOfMargin(study, plan.id, limit, by);
    return {
      text: `${head}\n${made ? groupTable(made) : noBudget}${bends}`,
      json: { ...heading, groups: made, secondOrder: bend },
    };
  });
  return { text: parts.map(({ text }) => text).join('\n\n'), budgets: parts.map(({ json }) => json) };
}

const noBudget = '  no budget: the board has no solution beside its best values';

const seeGlobal = '--global shows the parts without straight lines';

/** The largest terms of second order. */
function bendText({ u, mean, terms }: BendBudget): string {
  const listed = terms.slice(0, 3).filter(({ share }) => Math.abs(share) > 5e-4);
  const parts = listed.map(({ inputs, share }) => `${inputs.join(' with ')} ${percent(share)}`);
  const added = parts.length > 0 ? `adds ${parts.join(', ')}` : 'adds nothing to the variance';
  return `second order ${added}; mean ${mean.text}, u ${u.text}`;
}

/** Where readings were few, what that makes of the interval. */
function fewDegrees(degrees: number | null): string {
  if (degrees === null) return '';
  const factor = coverageFactor(0.95, degrees).toFixed(2);
  return `\n  ${degrees.toFixed(1)} effective degrees of freedom: to first order the 95 % interval is ${factor} u to each side, not 1.96`;
}

function budgetTable(rows: readonly BudgetRow[]): string {
  const shown = rows.filter(({ share }) => share > 5e-4);
  const few = shown.some(({ degreesOfFreedom }) => degreesOfFreedom !== null);
  const table = writeTable(
    [
      { heading: 'input' },
      { heading: 'value', align: 'right' },
      ...(few ? [{ heading: 'dof', align: 'right' } as const] : []),
      { heading: 'source' },
      { heading: 'alone gives', align: 'right' },
      { heading: 'share', align: 'right' },
    ],
    shown.map((row) => [
      row.input,
      row.value.text,
      ...(few ? [row.degreesOfFreedom?.toFixed(0) ?? ''] : []),
      row.source || 'not said',
      row.contribution.text,
      percent(row.share),
    ]),
    '  ',
  );
  const left = rows.length - shown.length;
  return left > 0 ? `${table}\n  and ${plural(left, 'input')} with less than 0.05 % each` : table;
}

function groupTable({ by, groups, between }: BudgetGroups): string {
  const shown = groups.filter(({ share }) => share > 5e-4);
  const left = groups.length - shown.length;
  const table = writeTable(
    [
      { heading: by },
      { heading: 'inputs', align: 'right' },
      { heading: 'alone gives', align: 'right' },
      { heading: 'share', align: 'right' },
    ],
    [
      ...shown.map((row) => [row.group, String(row.inputs.length), row.contribution.text, percent(row.share)]),
      ...(between === 0 ? [] : [['covariance between them', '', '', percent(between)]]),
    ],
    '  ',
  );
  return left > 0 ? `${table}\n  and ${plural(left, 'group')} with less than 0.05 % each` : table;
}

function globalTable({ rows, interaction, u, evaluations, lost, seed }: GlobalBudget): string {
  const table = writeTable(
    [{ heading: 'input' }, { heading: 'first', align: 'right' }, { heading: 'total', align: 'right' }],
    rows.map(({ group, inputs, first, total }) => [
      inputs.length > 1 ? `${group} (${inputs.length})` : group,
      withError(first),
      withError(total),
    ]),
    '  ',
  );
  return [
    table,
    '  first: what the variance loses on average when the input is known; total: what is left of it when all others are known',
    `  only together: ${withError(interaction)} of the variance; u ${u.text}, ${evaluations} evaluations with seed ${seed}`,
    ...(lost > 0 ? [`  ${plural(lost, 'evaluation')} without a steady state left out`] : []),
  ].join('\n');
}

function withError({ share, u }: SampledShare): string {
  return `${percent(share)} ± ${Math.max(0.1, 100 * u).toFixed(1)} %`;
}

function percent(share: number): string {
  // Never "-0.0 %".
  return `${(100 * share).toFixed(1).replace(/^-(0\.0)$/, '$1')} %`;
}
