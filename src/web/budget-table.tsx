import { useComputed, useSignal } from '@preact/signals';
import { budgetGroupsOfMargin, budgetOfMargin } from '../steps/budget-of-margin.ts';
import type { BudgetGroups, BudgetRow, Grouping } from '../steps/step-plan.ts';
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
/** What the rows of the table are. */
const BY = ['input', 'part', 'source'] as const;

/** Numbers shown: what comes after them hardly matters. */
const FIRST = 10;

/** Why a margin is uncertain: which numbers of the study contribute how much. Worked out only when asked for, and when the dial rests. */
export function UncertaintyBudget() {
  const open = useSignal(false);
  const wanted = useSignal<string | null>(null);
  const by = useSignal<Grouping | 'input'>('input');
  const plan = shownPlan.value;
  const margin = plan?.margins.find(({ id }) => id === wanted.value) ?? (plan && bindingMargin(plan));
  const table = useComputed(() => {
    const [read, at] = [study.value, shownPlan.value];
    if (!open.value || !read || !at?.sampling) return null;
    const limit = at.margins.some(({ id }) => id === wanted.value) ? wanted.value : at.binding;
    if (!limit) return null;
    const turned = dial.value ?? undefined;
    if (by.value === 'input') {
      const rows = budgetOfMargin(read, at.id, limit, turned);
      return rows && <BudgetRows rows={rows} />;
    }
    const groups = budgetGroupsOfMargin(read, at.id, limit, by.value, turned);
    return groups && <GroupRows made={groups} />;
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
      <label>
        by{' '}
        <select
          value={by.value}
          onChange={(event) => {
            by.value = event.currentTarget.value as Grouping | 'input';
          }}
        >
          {BY.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      </label>
      {table.value ?? <p class="about">Worked out when the figures are sampled.</p>}
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

const GROUPED: Readonly<Record<Grouping, string>> = { part: 'Part', source: 'Source' };

function GroupRows({ made: { by, groups, between } }: { made: BudgetGroups }) {
  const columns = [
    { name: GROUPED[by] },
    { name: 'Numbers', figure: true },
    { name: 'Adds', figure: true },
    { name: 'Share', figure: true },
  ];
  const rows = groups.map((row) => [row.group, String(row.inputs.length), row.contribution.text, percent(row.share)]);
  const all = between === 0 ? rows : [...rows, ['correlations between them', '', '', `${Math.round(100 * between)} %`]];
  return (
    <>
      <p class="about">By first order, all numbers of a {by} together.</p>
      <DataTable
        name="Uncertainty budget"
        columns={columns}
        rows={all
          .slice(0, FIRST)
          .map(([group, ...cells]) => ({ key: group!, cells: [<code>{group}</code>, ...cells] }))}
        text={() =>
          tableText(
            columns.map(({ name }) => name),
            all,
          )
        }
      />
    </>
  );
}

function percent(share: number): string {
  return share < 0.005 ? '< 1 %' : `${Math.round(100 * share)} %`;
}
