import { useSignal } from '@preact/signals';
import { type MarginScale, marginScale } from '../charts/margin-axis.ts';
import { marginCell } from '../charts/margin-bar.ts';
import type { Margin, StepPlan } from '../steps/step-plan.ts';
import { DataTable, type Row } from './data-table.tsx';
import { drawnMargin } from './drawn-margin.ts';
import { Picture } from './picture.tsx';
import { StateWord } from './state-word.tsx';
import { tableText } from './table-text.ts';
import { intervalOf, withMinus } from './words.ts';

const BAR = { left: 10, right: 210 };
/** Margins shown before the person asks for the rest. */
const FIRST = 12;

const COLUMNS = [
  { name: 'Limit of' },
  { name: 'State' },
  { name: 'Value', figure: true },
  { name: 'Limit', figure: true },
  { name: 'Margin', figure: true },
  { name: 'Drawn' },
  { name: '95 % interval', figure: true },
  { name: 'Exceeded with', figure: true },
];

/** All margins of a step, the one that binds first. */
export function MarginsTable({ plan: { margins, title } }: { plan: StepPlan }) {
  const all = useSignal(false);
  const drawn = margins.flatMap((margin) => drawnMargin(margin) ?? []);
  const scale = marginScale(drawn, BAR.left, BAR.right);
  const [low, high] = scale.domain();
  return (
    <section aria-labelledby="margins-heading">
      <h2 id="margins-heading">Margins: {title}</h2>
      {margins.length === 0 ? (
        <p class="about">No limit of this step has data, so that nothing can be said about its margins.</p>
      ) : (
        <>
          <p class="about">
            Most likely exceeded first. Bars: best value and 95 % interval against the limit, from {signed(low!)} to{' '}
            {signed(high!)} % of it (temperatures: K); solid is beyond the limit, an arrow goes on.
          </p>
          <DataTable
            name="Margins"
            columns={COLUMNS}
            rows={margins.map((margin, at) => marginRow(margin, scale, at >= FIRST && !all.value))}
            text={() => marginsText(margins)}
          >
            {margins.length > FIRST && (
              <button
                type="button"
                class="quiet"
                aria-expanded={all.value}
                onClick={() => {
                  all.value = !all.value;
                }}
              >
                {all.value ? `Show only the first ${FIRST}` : `Show all ${margins.length} margins`}
              </button>
            )}
          </DataTable>
          {margins.some(({ disagree }) => disagree) && (
            <p class="about">
              * by samples, + by second order, as the samples confirm: first order gives another interval, because the
              board bends there or an input decides that is not normally distributed.
            </p>
          )}
        </>
      )}
    </section>
  );
}

function marginRow(margin: Margin, scale: MarginScale, folded: boolean): Row {
  const drawn = drawnMargin(margin);
  const distance = withMinus(margin.margin.text);
  const interval = withMinus(intervalOf(margin));
  return {
    key: margin.id,
    folded,
    cells: [
      <>
        {margin.title}
        <small>{margin.consequence}</small>
      </>,
      <StateWord state={margin.state} word={margin.state} />,
      margin.value.text,
      `${margin.side} ${margin.limit.text}`,
      <strong>{distance}</strong>,
      drawn && <Picture svg={marginCell(drawn, scale, `margin ${distance}, 95 % interval ${interval}`)} inline />,
      <>
        {interval}
        {margin.disagree && (
          <span class="mark-note" title={margin.why}>
            {margin.method === 'second-order' ? '+' : '*'}
          </span>
        )}
        {margin.degreesOfFreedom !== null && <small>{margin.degreesOfFreedom.toFixed(1)} degrees of freedom</small>}
      </>,
      margin.exceed.text,
    ],
  };
}

function signed(value: number): string {
  return value > 0 ? `+${value}` : `−${Math.abs(value)}`;
}

function marginsText(margins: readonly Margin[]): string {
  return tableText(
    ['Limit of', 'State', 'Value', 'Side', 'Limit', 'Margin', 'Low', 'High', 'Exceeded with', 'Method', 'Consequence'],
    margins.map((margin) => [
      margin.title,
      margin.state,
      margin.value.text,
      margin.side,
      margin.limit.text,
      margin.margin.text,
      margin.interval.low.text,
      margin.interval.high.text,
      margin.exceed.text,
      margin.why,
      margin.consequence,
    ]),
  );
}
