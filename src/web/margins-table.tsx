import { useSignal } from '@preact/signals';
import { type MarginScale, marginScale } from '../charts/margin-axis.ts';
import { marginCell } from '../charts/margin-bar.ts';
import type { Margin, StepPlan } from '../steps/step-plan.ts';
import { drawnMargin } from './drawn-margin.ts';
import { Picture } from './picture.tsx';
import { StateWord } from './state-word.tsx';
import { TableFrame } from './table-frame.tsx';
import { tableText } from './table-text.ts';

const BAR = { left: 10, right: 210 };
/** Margins shown before the person asks for the rest. */
const FIRST = 12;

/** All margins of a step, the one that binds first. */
export function MarginsTable({ plan: { margins } }: { plan: StepPlan }) {
  const all = useSignal(false);
  if (margins.length === 0) return <p>No limit of this step has data. Nothing can be said about its margins.</p>;
  const drawn = margins.flatMap((margin) => drawnMargin(margin) ?? []);
  const scale = marginScale(drawn, BAR.left, BAR.right);
  const [low, high] = scale.domain();
  const shown = all.value ? margins : margins.slice(0, FIRST);
  return (
    <>
      <h3>Margins</h3>
      <p class="about">
        Most likely exceeded first. Bars: best value and 95 % interval against the limit, from {signed(low!)} to{' '}
        {signed(high!)} % of the limit (temperatures: K); solid is beyond it, an arrow goes on.
        {margins.some(({ disagree }) => disagree) && ' ≠ first order and samples disagree; samples are shown.'}
      </p>
      <TableFrame name="Margins" text={() => marginsText(margins)}>
        <thead>
          <tr>
            {HEAD.map((name, at) => (
              <th key={name} scope="col" class={FIGURES.has(at) ? 'figure' : undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((margin) => (
            <MarginRow key={margin.id} margin={margin} scale={scale} />
          ))}
        </tbody>
      </TableFrame>
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
    </>
  );
}

const HEAD = ['Limit of', 'State', 'Value', 'Limit', 'Margin', 'Drawn', '95 % interval', 'Exceeded with'];
const FIGURES = new Set([2, 3, 4, 6, 7]);

function MarginRow({ margin, scale }: { margin: Margin; scale: MarginScale }) {
  const drawn = drawnMargin(margin);
  return (
    <tr>
      <th scope="row">
        {margin.title}
        <small>{margin.consequence}</small>
      </th>
      <td>
        <StateWord state={margin.state} word={margin.state} />
      </td>
      <td class="figure">{margin.value.text}</td>
      <td class="figure">
        {margin.side} {margin.limit.text}
      </td>
      <td class="figure strong">{margin.margin.text}</td>
      <td>{drawn && <Picture svg={marginCell(drawn, scale, spoken(margin))} inline />}</td>
      <td class="figure">
        {margin.disagree && (
          <span title="First order and samples disagree; samples are shown." class="disagree">
            ≠{' '}
          </span>
        )}
        {interval(margin)}
      </td>
      <td class="figure" title={margin.exceed.text}>
        {margin.exceed.text.split(' (')[0]}
      </td>
    </tr>
  );
}

function interval({ interval: { low, high } }: Margin): string {
  return `${low.text} … ${high.text}`;
}

function spoken(margin: Margin): string {
  return `margin ${margin.margin.text}, 95 % interval ${interval(margin)}`;
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
      margin.method,
      margin.consequence,
    ]),
  );
}
