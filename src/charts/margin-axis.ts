import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { element, textElement } from './svg-text.ts';

/** A margin for drawing, in one unit throughout: negative is beyond the limit. */
export interface DrawnMargin {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Maps margins to horizontal places [px]. */
export type MarginScale = ScaleLinear<number, number>;

/** Beyond these a bar ends in an arrow: one huge margin must not flatten the small ones that matter. */
const REACH = { beyond: -50, left: 60 };

/** The scale that shows all margins and always some of both sides of the limit, so that near and far look the same everywhere. */
export function marginScale(margins: readonly DrawnMargin[], left: number, right: number): MarginScale {
  const low = Math.max(REACH.beyond, Math.min(-10, ...margins.map((margin) => margin.low)));
  const high = Math.min(REACH.left, Math.max(25, ...margins.map((margin) => margin.high)));
  return scaleLinear([low, high], [left, right]).nice(5).clamp(true);
}

/** The rule at every tick. */
export function tickRules(scale: MarginScale, top: number, bottom: number): string {
  return ticksOf(scale)
    .map((value) => {
      const x = scale(value);
      return element('line', { x1: x, x2: x, y1: top, y2: bottom, stroke: 'currentColor', 'stroke-opacity': 0.14 });
    })
    .join('');
}

/** The numbers of the ticks, signed: plus is room that is left. */
export function tickNumbers(scale: MarginScale, y: number): string {
  return ticksOf(scale)
    .map((value) =>
      textElement(signed(value), { x: scale(value), y, class: 'chart-tick', 'font-size': 12, 'text-anchor': 'middle' }),
    )
    .join('');
}

function ticksOf(scale: MarginScale): readonly number[] {
  const [left, right] = scale.range();
  return scale.ticks(Math.max(2, Math.round((right - left) / 90)));
}

/** The limit itself. */
export function limitLine(scale: MarginScale, top: number, bottom: number): string {
  const x = scale(0);
  return element('line', {
    x1: x,
    x2: x,
    y1: top,
    y2: bottom,
    stroke: 'var(--limit, currentColor)',
    'stroke-width': 2,
  });
}

function signed(value: number): string {
  if (value === 0) return '0';
  return value > 0 ? `+${value}` : `−${-value}`;
}
