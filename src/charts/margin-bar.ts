import type { DrawnMargin, MarginScale } from './margin-axis.ts';
import { limitLine } from './margin-axis.ts';
import { element, escapeText } from './svg-text.ts';

const THICK = 9;

/** Interval and best value of one margin around the height `y` [px]; what lies beyond the limit is solid, what is left of it is outlined. */
export function marginBar({ value, low, high }: DrawnMargin, scale: MarginScale, y: number): string {
  const [lowest, highest] = scale.domain();
  const [left, right] = scale.range();
  if (high < lowest) return arrow(left, y, -1);
  if (low > highest) return arrow(right, y, 1);
  const [from, to] = [scale(low), scale(high)];
  const zero = Math.min(Math.max(scale(0), from), to);
  const parts: string[] = [];
  if (zero > from) {
    parts.push(
      element('rect', {
        x: from,
        y: y - THICK / 2,
        width: zero - from,
        height: THICK,
        fill: 'var(--limit, currentColor)',
      }),
    );
  }
  if (to > zero || to === from) {
    parts.push(
      element('rect', {
        x: zero,
        y: y - THICK / 2,
        width: Math.max(to - zero, 1),
        height: THICK,
        fill: 'currentColor',
        'fill-opacity': 0.22,
        stroke: 'currentColor',
      }),
    );
  }
  const best = scale(value);
  parts.push(
    element('line', {
      x1: best,
      x2: best,
      y1: y - THICK,
      y2: y + THICK,
      stroke: 'currentColor',
      'stroke-width': 3,
      class: 'chart-best',
    }),
  );
  if (low < lowest) parts.push(arrow(left, y, -1));
  if (high > highest) parts.push(arrow(right, y, 1));
  return parts.join('');
}

/** The bar as a picture of its own, for a table's cell; `title` says it in words. */
export function marginCell(margin: DrawnMargin, scale: MarginScale, title: string): string {
  const [, right] = scale.range();
  const height = 26;
  return element(
    'svg',
    { viewBox: `0 0 ${right + 10} ${height}`, width: right + 10, height, role: 'img', class: 'chart chart-cell' },
    element('title', {}, escapeText(title)) + limitLine(scale, 0, height) + marginBar(margin, scale, height / 2),
  );
}

/** Says that the bar goes on beyond the picture. */
function arrow(x: number, y: number, direction: 1 | -1): string {
  const d = `M${x + 2 * direction} ${y - 6}L${x + 8 * direction} ${y}L${x + 2 * direction} ${y + 6}Z`;
  return element('path', { d, fill: 'currentColor', class: 'chart-beyond' });
}
