import { element } from './svg-text.ts';

/**
 * How a limit, or a step as a whole, stands: `open` where a limit has no data, `none` where there is no operating point to judge.
 */
export type ChartState = 'kept' | 'close' | 'exceeded' | 'open' | 'none';

const INK = 'currentColor';
const ALARM = 'var(--limit, currentColor)';

/** The sign of a state around the origin, 14 px high. Each has a shape of its own, so that no colour is needed to tell them apart. */
export function stateMark(state: ChartState): string {
  const outline = { fill: 'none', stroke: INK, 'stroke-width': 1.75 };
  switch (state) {
    case 'kept':
      return element('circle', { r: 5.5, ...outline });
    case 'close':
      return (
        element('circle', { r: 5.5, ...outline }) + element('path', { d: 'M0 -5.5A5.5 5.5 0 0 0 0 5.5Z', fill: INK })
      );
    case 'exceeded':
      return element('path', { d: 'M0 -7L7 0L0 7L-7 0Z', fill: ALARM });
    case 'open':
      return element('rect', { x: -5.5, y: -5.5, width: 11, height: 11, ...outline, 'stroke-dasharray': '3 2.5' });
    case 'none':
      return element('path', { d: 'M-5 -5L5 5M-5 5L5 -5', fill: 'none', stroke: ALARM, 'stroke-width': 2.5 });
  }
}

/** The sign alone, as a small picture beside the word it stands for (and therefore silent for a screen reader). */
export function stateIcon(state: ChartState): string {
  return element(
    'svg',
    { viewBox: '-8 -8 16 16', width: 16, height: 16, class: 'state-icon', 'aria-hidden': 'true' },
    stateMark(state),
  );
}
