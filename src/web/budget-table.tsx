import { useComputed, useSignal } from '@preact/signals';
import { budgetOfMargin } from '../steps/budget-of-margin.ts';
import type { BudgetRow } from '../steps/step-plan.ts';
import { DataTable } from './data-table.tsx';
import { dial, shownPlan, study } from './plans.ts';
import { tableText } from './table-text.ts';
import { bindingMargin } from './words.ts';

const COLUMNS = [
  { name: 'Number in the study' },
  { name: 'Value', figure: true },
  { name: 'Source' },
  { name: 'Adds', figure: true },
  { name: 'Share', figure: true },
];
/** Numbers shown: what comes after them hardly matters. */
const FIRST = 10;

/** Why a margin is uncertain: which numbers of the study contribute how much. Worked out only when asked for, and when the dial rests. */
export function UncertaintyBudget() {
  const open = useSignal(false);
  const wanted = useSignal<string | null>(null);
  const plan = shownPlan.value;
  const margin = plan?.margins.find(({ id }) => id === wanted.value) ?? (plan && bindingMargin(plan));
  const rows = useComputed(() => {
    const [read, at] = [study.value, shownPlan.value];
    if (!open.value || !read || !at?.sampling) return null;
    const limit = at.margins.some(({ id }) => id === wanted.value) ? wanted.value : at.binding;
    return limit && budgetOfMargin(read, at.id, limit, dial.value ?? undefined);
  });
  if (!plan || !margin) return null;
  return (
    <details
      class="budget"
      onToggle={(event) => {
        open.value = event.currentTarget.open;
      }}
    >
      <summary>
        <h2>Why a margin is uncertain</h2>
      </summary>
      <label>
        Margin of{' '}
        <select
          value={margin.id}
          onChange={(event) => {
            wanted.value = event.currentTarget.value;
          }}
        >
          {plan.margins.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </label>
      {rows.value ? <BudgetRows rows={rows.value} /> : <p class="about">Worked out when the figures are sampled.</p>}
    </details>
  );
}

function BudgetRows({ rows }: { rows: readonly BudgetRow[] }) {
  const text = () =>
    tableText(
      COLUMNS.map(({ name }) => name),
      rows.map((row) => [row.input, row.value.text, row.source, row.contribution.text, percent(row.share)]),
    );
  return (
    <>
      <p class="about">
        By first order. The numbers at the top are worth measuring; “adds” is the standard uncertainty that a number
        brings.
      </p>
      <DataTable
        name="Uncertainty budget"
        columns={COLUMNS}
        rows={rows.slice(0, FIRST).map((row) => ({
          key: row.input,
          cells: [
            <code>{row.input}</code>,
            row.value.text,
            row.source || 'no source given',
            row.contribution.text,
            percent(row.share),
          ],
        }))}
        text={text}
      />
    </>
  );
}

function percent(share: number): string {
  return share < 0.005 ? '< 1 %' : `${Math.round(100 * share)} %`;
}
