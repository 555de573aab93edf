import { fitLabel, labelWidth } from './fit-label.ts';
import { type DrawnMargin, limitLine, type MarginScale, marginScale, marginTicks } from './margin-axis.ts';
import { marginBar } from './margin-bar.ts';
import { type ChartState, stateMark } from './state-mark.ts';
import { element, escapeText, textElement } from './svg-text.ts';

/** One step of the ladder. */
export interface LadderRow {
  readonly id: string;
  readonly title: string;
  /** Real power with its unit, or '' when there is none. */
  readonly power: string;
  /** Second line under the title. */
  readonly note: string;
  /** The binding margin, as % of its limit (temperatures in K); null when nothing can be said. */
  readonly margin: DrawnMargin | null;
  /** What binds, or why nothing can be said. */
  readonly binding: string;
  readonly state: ChartState;
  /** The state in a word. */
  readonly stateWord: string;
  /** How much is unknown ("2 open"), or ''. */
  readonly openWord: string;
  readonly chosen: boolean;
}

export interface LadderOptions {
  /** [px] */
  readonly width: number;
  readonly title: string;
}

interface Layout {
  readonly rowHeight: number;
  readonly plot: readonly [number, number];
  readonly head: number;
  row(row: LadderRow, y: number, scale: MarginScale): string;
}

const TITLE = 16;
const SMALL = 13;
const FIGURE = 22;
const TICK = 12;

/** The steps from the first on, each with its real power and its binding margin against the limit. SVG text; height follows the rows. */
export function ladderChart(rows: readonly LadderRow[], { width, title }: LadderOptions): string {
  const layout = width >= 640 ? wide(width) : narrow(width);
  const [left, right] = layout.plot;
  const drawn = rows.flatMap((row) => (row.margin ? [row.margin] : []));
  const scale = marginScale(drawn, left, right);
  const { head, rowHeight } = layout;
  const bottom = head + rows.length * rowHeight;
  const height = bottom + 42;

  const content = [
    element('title', {}, escapeText(title)),
    element('desc', {}, escapeText(rows.map(describeRow).join(' '))),
    ...rows.map((row, at) => frame(row, head + at * rowHeight, width, rowHeight)),
    marginTicks(scale, head, bottom),
    ...rows.map((row, at) => layout.row(row, head + at * rowHeight, scale)),
    limitLine(scale, head - 6, bottom),
    textElement('limit', {
      x: scale(0),
      y: head - 12,
      class: 'chart-limit',
      'font-size': TICK,
      'text-anchor': 'middle',
    }),
    textElement('room left →', { x: scale(0) + 26, y: head - 12, class: 'chart-tick', 'font-size': TICK }),
    textElement('binding margin, % of limit (temperatures: K)', {
      x: right,
      y: bottom + 36,
      class: 'chart-tick',
      'font-size': TICK,
      'text-anchor': 'end',
    }),
  ];
  return element(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', class: 'chart ladder-chart' },
    content.join(''),
  );
}

function describeRow(row: LadderRow): string {
  return `${[row.title, row.power, row.note, row.binding, row.stateWord, row.openWord].filter(Boolean).join(', ')}.`;
}

/** The row's ground: what a pointer can choose, and the rule under it. */
function frame(row: LadderRow, y: number, width: number, height: number): string {
  const ground = element('rect', {
    x: 0,
    y,
    width,
    height,
    class: row.chosen ? 'chart-row chart-row-chosen' : 'chart-row',
    fill: 'currentColor',
    'fill-opacity': row.chosen ? 0.06 : 0,
    'data-step': row.id,
  });
  const rule = element('line', {
    x1: 0,
    x2: width,
    y1: y + height,
    y2: y + height,
    stroke: 'currentColor',
    'stroke-opacity': 0.25,
  });
  const chosen = row.chosen
    ? element('rect', { x: 0, y: y + 1, width: 4, height: height - 1, fill: 'currentColor' })
    : '';
  return ground + rule + chosen;
}

/** Words left, bar in the middle, state right. */
function wide(width: number): Layout {
  const labels = Math.min(420, width * 0.4);
  const states = width - 136;
  const plot = [labels + 24, states - 24] as const;
  return {
    rowHeight: 68,
    plot,
    head: 34,
    row(row, y, scale) {
      const titleRoom = labels - 32 - labelWidth(row.power, FIGURE);
      const zero = scale(0);
      return [
        label(fitLabel(row.title, TITLE, titleRoom), 16, y + 29, TITLE, 'chart-title'),
        label(fitLabel(row.note, SMALL, labels - 16), 16, y + 51, SMALL, 'chart-note'),
        figure(row.power, labels, y + 30),
        label(fitLabel(row.binding, SMALL, plot[1] - zero - 8), zero + 8, y + 25, SMALL, 'chart-binding'),
        row.margin ? marginBar(row.margin, scale, y + 44) : '',
        element('g', { transform: `translate(${states + 8} ${y + 24})` }, stateMark(row.state)),
        label(fitLabel(row.stateWord, SMALL, 108), states + 24, y + 29, SMALL, 'chart-state'),
        label(fitLabel(row.openWord, SMALL, 108), states + 24, y + 51, SMALL, 'chart-note'),
      ].join('');
    },
  };
}

/** Words above, bar below. */
function narrow(width: number): Layout {
  const plot = [14, width - 14] as const;
  return {
    rowHeight: 130,
    plot,
    head: 34,
    row(row, y, scale) {
      const titleRoom = width - 34 - labelWidth(row.power, FIGURE);
      const state = [row.stateWord, row.openWord].filter(Boolean).join(', ');
      return [
        label(fitLabel(row.title, TITLE, titleRoom), 14, y + 28, TITLE, 'chart-title'),
        figure(row.power, width - 8, y + 30),
        label(fitLabel(row.note, SMALL, width - 28), 14, y + 50, SMALL, 'chart-note'),
        element('g', { transform: `translate(22 ${y + 69})` }, stateMark(row.state)),
        label(fitLabel(`${state}: ${row.binding}`, SMALL, width - 52), 38, y + 74, SMALL, 'chart-binding'),
        row.margin ? marginBar(row.margin, scale, y + 102) : '',
      ].join('');
    },
  };
}

function label(words: string, x: number, y: number, size: number, style: string): string {
  return words && textElement(words, { x, y, class: style, 'font-size': size });
}

/** A power figure, ending at `right` so that the figures of all rows line up. */
function figure(words: string, right: number, y: number): string {
  return words && textElement(words, { x: right, y, class: 'chart-figure', 'font-size': FIGURE, 'text-anchor': 'end' });
}
