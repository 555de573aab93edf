import type { LimiterState } from '../steps/step-plan.ts';
import { TableFrame } from './table-frame.tsx';
import { tableText } from './table-text.ts';

const HEAD = ['Limiter', 'It', 'Real', 'Reads', 'Allowed', 'Real over read', 'Holds'];

/** What each limiter sees against what is really there. */
export function LimitersTable({ limiters }: { limiters: readonly LimiterState[] }) {
  const rows = limiters.map((limiter) => [
    limiter.title,
    { regulate: 'regulates', trip: 'trips', warn: 'warns' }[limiter.acts],
    limiter.real.text,
    limiter.reads.text,
    limiter.allowed.text,
    Number.isFinite(limiter.ratio) ? limiter.ratio.toFixed(3) : '',
    limiter.holds ? 'holds' : '',
  ]);
  return (
    <>
      <h3>Limiters: real against read</h3>
      <TableFrame name="Limiters" text={() => tableText(HEAD, rows)}>
        <thead>
          <tr>
            {HEAD.map((name, at) => (
              <th key={name} scope="col" class={at >= 2 && at <= 5 ? 'figure' : undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([title, ...cells], row) => (
            <tr key={limiters[row]!.id}>
              <th scope="row">{title}</th>
              {cells.map((cell, at) => (
                <td key={HEAD[at + 1]} class={at >= 1 && at <= 4 ? 'figure' : undefined}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </TableFrame>
    </>
  );
}
