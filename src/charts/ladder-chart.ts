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
  return `${[row.title, row.power, row.note, row.binding, row.stateWord].filter(Boolean).join(', ')}.`;
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
  const labels = Math.min(400, width * 0.4);
  const stateColumn = 130;
  const plot = [labels + 24, width - stateColumn - 24] as const;
  return {
    rowHeight: 64,
    plot,
    head: 34,
    row(row, y, scale) {
      const powerLeft = labels - labelWidth(row.power, FIGURE) - 12;
      const zero = scale(0);
      return [
        textElement(fitLabel(row.title, TITLE, powerLeft - 16), {
          x: 16,
          y: y + 28,
          class: 'chart-title',
          'font-size': TITLE,
        }),
        textElement(fitLabel(row.note, SMALL, labels - 16), {
          x: 16,
          y: y + 50,
          class: 'chart-note',
          'font-size': SMALL,
        }),
        textElement(row.power, {
          x: labels,
          y: y + 30,
          class: 'chart-figure',
          'font-size': FIGURE,
          'text-anchor': 'end',
        }),
        textElement(fitLabel(row.binding, SMALL, plot[1] - zero - 8), {
          x: zero + 8,
          y: y + 24,
          class: 'chart-binding',
          'font-size': SMALL,
        }),
        row.margin ? marginBar(row.margin, scale, y + 42) : '',
        element('g', { transform: `translate(${width - stateColumn + 8} ${y + 32})` }, stateMark(row.state)),
        textElement(fitLabel(row.stateWord, SMALL, stateColumn - 24), {
          x: width - stateColumn + 24,
          y: y + 37,
          class: 'chart-state',
          'font-size': SMALL,
        }),
      ].join('');
    },
  };
}

/** Words above, bar below. */
function narrow(width: number): Layout {
  const plot = [14, width - 14] as const;
  return {
    rowHeight: 128,
    plot,
    head: 34,
    row(row, y, scale) {
      const powerLeft = width - 8 - labelWidth(row.power, FIGURE) - 8;
      return [
        textElement(fitLabel(row.title, TITLE, powerLeft - 14), {
          x: 14,
          y: y + 28,
          class: 'chart-title',
          'font-size': TITLE,
        }),
        textElement(row.power, {
          x: width - 8,
          y: y + 30,
          class: 'chart-figure',
          'font-size': FIGURE,
          'text-anchor': 'end',
        }),
        textElement(fitLabel(row.note, SMALL, width - 28), {
          x: 14,
          y: y + 50,
          class: 'chart-note',
          'font-size': SMALL,
        }),
        element('g', { transform: `translate(22 ${y + 69})` }, stateMark(row.state)),
        textElement(fitLabel(`${row.stateWord}: ${row.binding}`, SMALL, width - 52), {
          x: 38,
          y: y + 74,
          class: 'chart-binding',
          'font-size': SMALL,
        }),
        row.margin ? marginBar(row.margin, scale, y + 100) : '',
      ].join('');
    },
  };
}
