import { marginScale } from '../charts/margin-axis.ts';
import { marginCell } from '../charts/margin-bar.ts';
import type { Margin, StepPlan } from '../steps/step-plan.ts';
import { drawnMargin } from './drawn-margin.ts';
import { Picture } from './picture.tsx';
import { StateWord } from './state-word.tsx';
import { TableFrame } from './table-frame.tsx';
import { tableText } from './table-text.ts';

const BAR = { left: 10, right: 210 };

/** All margins of a step, the one that binds first. */
export function MarginsTable({ plan }: { plan: StepPlan }) {
  const drawn = plan.margins.map(drawnMargin);
  const scale = marginScale(
    drawn.flatMap((margin) => (margin ? [margin] : [])),
    BAR.left,
    BAR.right,
  );
  const [low, high] = scale.domain();
  if (plan.margins.length === 0) return <p>No limit of this step has data. Nothing can be said about its margins.</p>;
  return (
    <>
      <h3>Margins</h3>
      <p class="about">
        Most likely exceeded first. Bars: best value and 95 % interval against the limit, from {signed(low!)} to{' '}
        {signed(high!)} % of the limit (temperatures: K); solid is beyond it, an arrow goes on.
      </p>
      <TableFrame name="Margins" text={() => marginsText(plan.margins)}>
        <thead>
          <tr>
            <th scope="col">Limit of</th>
            <th scope="col">State</th>
            <th scope="col" class="figure">
              Value
            </th>
            <th scope="col" class="figure">
              Limit
            </th>
            <th scope="col" class="figure">
              Margin
            </th>
            <th scope="col">Margin, drawn</th>
            <th scope="col" class="figure">
              95 % interval
            </th>
            <th scope="col" class="figure">
              Exceeded with
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.margins.map((margin, at) => (
            <tr key={margin.id}>
              <th scope="row">
                {margin.title}
                <small>
                  {margin.consequence}
                  {margin.disagree && ' First order and samples disagree; samples are shown.'}
                </small>
              </th>
              <td>
                <StateWord state={margin.state} word={margin.state} />
              </td>
              <td class="figure">{margin.value.text}</td>
              <td class="figure">
                {margin.side} {margin.limit.text}
              </td>
              <td class="figure strong">{margin.margin.text}</td>
              <td>{drawn[at] && <Picture svg={marginCell(drawn[at], scale, spoken(margin))} inline />}</td>
              <td class="figure">{interval(margin)}</td>
              <td class="figure">{margin.exceed.text}</td>
            </tr>
          ))}
        </tbody>
      </TableFrame>
    </>
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
