import { scaleLinear } from 'd3-scale';
import { fitLabel, labelWidth } from './fit-label.ts';
import { element, escapeText, textElement } from './svg-text.ts';

/** A stretch of temperature [°C]: from the hotter to the colder end. */
export interface TemperatureSpan {
  readonly from: number;
  readonly to: number;
}

/** One layer of the stack, in the direction of the heat. */
export interface StackLayer extends TemperatureSpan {
  readonly title: string;
  /** What it is, and what flows through it. */
  readonly note: string;
  /** Drop with its unit and uncertainty. */
  readonly drop: string;
  /** The same layer before the changes; null where there was none. */
  readonly before: (TemperatureSpan & { readonly drop: string }) | null;
}

export interface StackPicture {
  readonly title: string;
  /** Where the heat comes from, and its temperature: "Die, 92 °C ± 4 K". */
  readonly start: string;
  readonly end: string;
  readonly layers: readonly StackLayer[];
  /** What the hollow bars are; '' when there are none. */
  readonly before: string;
}

const TITLE = 16;
const TEXT = 13;
const TICK = 12;
const ROW = 58;
const HEAD = 74;

/** Temperature drop of each layer from a hot node to ambient, one below the other, each where it lies on the scale. SVG text. */
export function stackPicture(picture: StackPicture, { width }: { readonly width: number }): string {
  const { layers, title } = picture;
  const labels = width >= 600 ? Math.min(310, 0.41 * width) : 0;
  const rowHeight = labels > 0 ? ROW : ROW + 44;
  const spans: TemperatureSpan[] = layers.flatMap((layer) => (layer.before ? [layer, layer.before] : [layer]));
  const ends = spans.flatMap(({ from, to }) => [from, to]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const drops = Math.max(
    ...layers.flatMap(({ drop, before }) => [drop, before?.drop ?? ''].map((text) => labelWidth(text, TEXT))),
  );
  const scale = scaleLinear([low, Math.max(high, low + 1)], [labels + 24, width - drops - 22]).nice(5);
  const bottom = HEAD + layers.length * rowHeight;
  const barsAt = rowHeight - ROW;
  const content = [
    element('title', {}, escapeText(title)),
    element('desc', {}, escapeText(layers.map(describe).join(' '))),
    textElement(fitLabel(title, TITLE, width - 28), { x: 14, y: 24, 'font-size': TITLE, class: 'chart-title' }),
    textElement(fitLabel(picture.start, TEXT, width - 28), { x: 14, y: 48, 'font-size': TEXT, class: 'chart-figure' }),
    ticks(scale, HEAD - 8, bottom),
    ...layers.map((layer, at) => {
      const top = HEAD + at * rowHeight;
      const room = labels > 0 ? labels : width - 28;
      return [
        element('line', { x1: 0, x2: width, y1: top, y2: top, stroke: 'currentColor', 'stroke-opacity': 0.2 }),
        textElement(fitLabel(layer.title, TEXT, room), {
          x: 14,
          y: top + 22,
          'font-size': TEXT,
          class: 'chart-figure',
        }),
        textElement(fitLabel(layer.note, TEXT, room), { x: 14, y: top + 42, 'font-size': TEXT, class: 'chart-note' }),
        bar(layer, layer.drop, scale, top + barsAt + 18, false),
        layer.before ? bar(layer.before, layer.before.drop, scale, top + barsAt + 40, true) : '',
      ].join('');
    }),
    element('line', { x1: 0, x2: width, y1: bottom, y2: bottom, stroke: 'currentColor', 'stroke-opacity': 0.2 }),
    textElement(fitLabel(picture.end, TEXT, width - 28), {
      x: 14,
      y: bottom + 44,
      'font-size': TEXT,
      class: 'chart-figure',
    }),
    picture.before === ''
      ? ''
      : element('rect', { x: 14, y: bottom + 56, width: 26, height: 10, ...hollow }) +
        textElement(fitLabel(picture.before, TEXT, width - 64), {
          x: 48,
          y: bottom + 66,
          'font-size': TEXT,
          class: 'chart-note',
        }),
  ];
  const height = bottom + (picture.before === '' ? 60 : 84);
  return element(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', class: 'chart stack-picture' },
    content.join(''),
  );
}

const solid = { fill: 'currentColor', 'fill-opacity': 0.75 };
const hollow = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.25, 'stroke-dasharray': '4 3' };

type Scale = ReturnType<typeof scaleLinear<number, number>>;

function bar({ from, to }: TemperatureSpan, drop: string, scale: Scale, y: number, before: boolean): string {
  const [left, right] = [Math.min(scale(from), scale(to)), Math.max(scale(from), scale(to))];
  const shape = element('rect', {
    x: left,
    y: y - 7,
    width: Math.max(right - left, 2),
    height: 14,
    ...(before ? hollow : solid),
  });
  return (
    shape +
    textElement(drop, { x: right + 8, y: y + 4.5, 'font-size': TEXT, class: before ? 'chart-note' : 'chart-figure' })
  );
}

function ticks(scale: Scale, top: number, bottom: number): string {
  const [left, right] = scale.range();
  return scale
    .ticks(Math.max(2, Math.floor((right - left) / 70)))
    .map((value) => {
      const x = scale(value);
      return (
        element('line', { x1: x, x2: x, y1: top, y2: bottom, stroke: 'currentColor', 'stroke-opacity': 0.14 }) +
        textElement(`${value} °C`, {
          x,
          y: bottom + 18,
          'font-size': TICK,
          'text-anchor': 'middle',
          class: 'chart-tick',
        })
      );
    })
    .join('');
}

function describe({ title, note, drop, before }: StackLayer): string {
  return `${title}, ${note}: ${drop}${before ? `, before ${before.drop}` : ''}.`;
}
