import type { DrawnMargin } from '../charts/margin-axis.ts';
import type { Margin } from '../steps/step-plan.ts';

/**
 * A margin in the common unit of the bars: % of its limit; for a temperature, which has no share, K.
 * null where neither has a meaning (a limit of zero).
 */
export function drawnMargin({ margin, interval, limit, share }: Margin): DrawnMargin | null {
  const scale = share === null ? 1 : 100 / Math.abs(limit.value);
  const drawn = { value: margin.value * scale, low: interval.low.value * scale, high: interval.high.value * scale };
  return Object.values(drawn).every(Number.isFinite) ? drawn : null;
}
