import type { BoardModel } from '../board/assemble.ts';
import type { Margin as BareMargin } from '../metrology/margin.ts';
import { figure } from './figure.ts';
import type { Margin } from './step-plan.ts';

/** A margin's bare numbers with their words, units and digits. */
export function writeMargin(board: BoardModel, bare: BareMargin, samples: number): Margin {
  const limit = board.limits.find(({ marginOutput }) => board.outputs[marginOutput].id === bare.id)!;
  const { kind, unit } = board.outputs[limit.valueOutput];
  const margin = board.outputs[limit.marginOutput];
  const difference = (value: number, u: number | null = null) => figure(value, u, margin.kind, margin.unit);
  return {
    id: limit.id,
    title: limit.title,
    of: limit.of,
    side: limit.side,
    limit: figure(bare.limit, null, kind, unit),
    value: figure(bare.value, bare.u, kind, unit),
    margin: difference(bare.margin, bare.u),
    share: kind === 'temperature' ? null : bare.margin / bare.limit,
    u: difference(bare.u),
    interval: { low: difference(bare.interval.low), high: difference(bare.interval.high), level: 0.95 },
    exceed: writeExceed(bare, samples),
    state: bare.margin < 0 ? 'exceeded' : bare.interval.low > 0 ? 'kept' : 'close',
    method: bare.method,
    disagree: bare.disagree === true,
    consequence: limit.consequence,
  };
}

/** A probability as people read it; a count of none is an upper bound, never "0". */
function writeExceed(bare: BareMargin, samples: number): Margin['exceed'] {
  const { exceed: value, exceedBounds: bounds } = bare;
  const error = bounds ? (bounds.high - bounds.low) / 2 : 0;
  if (bounds && value === 0) return { value, error, text: `< ${percent(bounds.high)} (none of ${samples} draws)` };
  if (value < 1e-6) return { value, error, text: '< 0.0001 %' };
  if (value > 1 - 1e-6) return { value, error, text: '> 99.9999 %' };
  return { value, error, text: percent(value) };
}

function percent(share: number): string {
  const value = 100 * share;
  return `${value >= 10 ? value.toFixed(0) : value.toPrecision(2)} %`;
}
