import { fitLabel, labelWidth, wrapLabel } from './fit-label.ts';
import { type DrawnMargin, limitLine, type MarginScale, marginScale, tickNumbers, tickRules } from './margin-axis.ts';
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
  /** From where to where in a row the plot is: words are not crossed by its lines. */
  readonly bars: readonly [number, number];
  row(row: LadderRow, y: number, scale: MarginScale): string;
}

const TITLE = 16;
const SMALL = 13;
const FIGURE = 22;
const TICK = 12;
const LINE = 23;

/** The steps from the first on, each with its real power and its binding margin against the limit. SVG text; height follows the rows. */
export function ladderChart(rows: readonly LadderRow[], { width, title }: LadderOptions): string {
  const layout = width >= 640 ? wide(rows, width) : narrow(rows, width);
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
    ...rows.map((_, at) =>
      tickRules(scale, head + at * rowHeight + layout.bars[0], head + at * rowHeight + layout.bars[1]),
    ),
    tickNumbers(scale, bottom + 16),
    ...rows.map((row, at) => layout.row(row, head + at * rowHeight, scale)),
    limitLine(scale, head - 6, head),
    ...rows.map((_, at) =>
      limitLine(scale, head + at * rowHeight + layout.bars[0], head + at * rowHeight + layout.bars[1]),
    ),
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
function wide(rows: readonly LadderRow[], width: number): Layout {
  const labels = Math.min(440, width * 0.4);
  const states = width - 136;
  const plot = [labels + 24, states - 24] as const;
  const titleOf = (row: LadderRow) => wrapLabel(row.title, TITLE, labels - 36 - labelWidth(row.power, FIGURE));
  const extra = extraLine(rows.map(titleOf));
  const middle = 34 + extra / 2;
  return {
    rowHeight: 68 + extra,
    bars: [0, 68 + extra],
    plot,
    head: 34,
    row(row, y, scale) {
      const zero = scale(0);
      const lines = titleOf(row);
      const top = y + 29 + (extra - (lines.length - 1) * LINE) / 2;
      return [
        ...lines.map((line, at) => label(line, 16, top + at * LINE, TITLE, 'chart-title')),
        label(fitLabel(row.note, SMALL, labels - 16), 16, top + lines.length * LINE - 1, SMALL, 'chart-note'),
        figure(row.power, labels, top + 1),
        label(fitLabel(row.binding, SMALL, plot[1] - zero - 8), zero + 8, y + middle - 8, SMALL, 'chart-binding'),
        row.margin ? marginBar(row.margin, scale, y + middle + 11) : '',
        element('g', { transform: `translate(${states + 8} ${y + middle - 10})` }, stateMark(row.state)),
        label(fitLabel(row.stateWord, SMALL, 108), states + 24, y + middle - 5, SMALL, 'chart-state'),
        label(fitLabel(row.openWord, SMALL, 108), states + 24, y + middle + 16, SMALL, 'chart-note'),
      ].join('');
    },
  };
}

/** Words above, bar below. */
function narrow(rows: readonly LadderRow[], width: number): Layout {
  const plot = [14, width - 14] as const;
  const titleOf = (row: LadderRow) => wrapLabel(row.title, TITLE, width - 38 - labelWidth(row.power, FIGURE));
  const extra = extraLine(rows.map(titleOf));
  return {
    rowHeight: 130 + extra,
    bars: [84 + extra, 120 + extra],
    plot,
    head: 34,
    row(row, y, scale) {
      const lines = titleOf(row);
      const state = [row.stateWord, row.openWord].filter(Boolean).join(', ');
      return [
        ...lines.map((line, at) => label(line, 14, y + 28 + at * LINE, TITLE, 'chart-title')),
        figure(row.power, width - 8, y + 30),
        label(fitLabel(row.note, SMALL, width - 28), 14, y + 27 + lines.length * LINE, SMALL, 'chart-note'),
        element('g', { transform: `translate(22 ${y + 47 + lines.length * LINE})` }, stateMark(row.state)),
        label(
          fitLabel(`${state}: ${row.binding}`, SMALL, width - 52),
          38,
          y + 52 + lines.length * LINE,
          SMALL,
          'chart-binding',
        ),
        row.margin ? marginBar(row.margin, scale, y + 102 + extra) : '',
      ].join('');
    },
  };
}

/** Room for a second title line in every row, where one row needs it: rungs of one height compare better. */
function extraLine(titles: readonly (readonly string[])[]): number {
  return titles.some((lines) => lines.length > 1) ? LINE : 0;
}

function label(words: string, x: number, y: number, size: number, style: string): string {
  return words && textElement(words, { x, y, class: style, 'font-size': size });
}

/** A power figure, ending at `right` so that the figures of all rows line up. */
function figure(words: string, right: number, y: number): string {
  return words && textElement(words, { x: right, y, class: 'chart-figure', 'font-size': FIGURE, 'text-anchor': 'end' });
}
