import type { LimiterState } from '../steps/step-plan.ts';
import { DataTable } from './data-table.tsx';
import { tableText } from './table-text.ts';

const COLUMNS = [
  { name: 'Limiter' },
  { name: 'It' },
  { name: 'Real', figure: true },
  { name: 'Reads', figure: true },
  { name: 'Allowed', figure: true },
  { name: 'Real over read', figure: true },
  { name: 'Holds' },
];

/** What each limiter sees against what is really there. */
export function LimitersTable({ limiters }: { limiters: readonly LimiterState[] }) {
  if (limiters.length === 0) return null;
  const rows = limiters.map((limiter) => ({
    key: limiter.id,
    cells: [
      limiter.title,
      { regulate: 'regulates', trip: 'trips', warn: 'warns' }[limiter.acts],
      limiter.real.text,
      limiter.reads.text,
      limiter.allowed.text,
      Number.isFinite(limiter.ratio) ? limiter.ratio.toFixed(3) : '',
      limiter.holds ? 'holds' : '',
    ],
  }));
  const text = () =>
    tableText(
      COLUMNS.map(({ name }) => name),
      rows.map(({ cells }) => cells),
    );
  return (
    <section>
      <h2>Limiters: real against read</h2>
      <DataTable name="Limiters" columns={COLUMNS} rows={rows} text={text} />
    </section>
  );
}
