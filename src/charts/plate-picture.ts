import { fitLabel, labelWidth } from './fit-label.ts';
import { element, escapeText, textElement } from './svg-text.ts';

interface Place {
  /** Centre in the plane of the board [mm]; y points up. */
  readonly x: number;
  readonly y: number;
}

interface Rectangle extends Place {
  readonly width: number;
  readonly depth: number;
}

interface Described {
  readonly title: string;
  /** What is said about it in the list below: its figures, each in its own words. */
  readonly words: readonly string[];
}

/** A pad or a die. */
export interface PressedArea extends Rectangle, Described {
  readonly kind: 'pad' | 'die';
  /** Pressure at its centre [kPa], and its growth along x and y [kPa/mm]; below zero nothing touches there. */
  readonly pressure: { readonly centre: number; readonly alongX: number; readonly alongY: number };
  /** Mean pressure with its unit, or what is there instead. */
  readonly label: string;
  readonly touches: boolean;
  /** Where the force acts; null where that is its centre. */
  readonly force: Place | null;
}

/** A screw or a stop. */
export interface PlatePoint extends Place, Described {
  readonly kind: 'screw' | 'stop';
  readonly label: string;
}

export interface PlatePicture {
  readonly title: string;
  readonly areas: readonly PressedArea[];
  readonly points: readonly PlatePoint[];
  /** Slopes of the plate [mrad]: it stands higher towards where they are positive. */
  readonly tilt: { readonly x: number; readonly y: number; readonly text: string };
}

const TITLE = 16;
const TEXT = 13;
const LINE = 20;
const MARGIN = 34;
const HEAD = 58;
const FOOT = 116;
/** A die is shaded in so many stripes along each side. */
const CELLS = 8;
const LIGHTEST = 0.08;
const DARKEST = 0.55;
/** Below this slope a plate is drawn as level [mrad]. */
const LEVEL = 0.01;

type ToPixel = (place: Place) => readonly [x: number, y: number];

/** The plate from above: who carries it, with which pressure, and which way it leans. SVG text; the list below says the same in words. */
export function platePicture(picture: PlatePicture, { width }: { readonly width: number }): string {
  const { areas, points, title } = picture;
  const bounds = boundsOf(picture);
  const scale = Math.min((width - 2 * MARGIN) / bounds.width, (0.62 * width) / bounds.depth);
  const left = (width - scale * bounds.width) / 2;
  const bottom = HEAD + scale * bounds.depth;
  const toPixel: ToPixel = ({ x, y }) => [left + (x - bounds.x) * scale, bottom - (y - bounds.y) * scale];
  const most = Math.max(...areas.map(highestPressure), 1e-9);
  const keyed = [...keysOf(areas), ...keysOf(points)];
  const list = listOf(keyed, bottom + FOOT, width);
  const content = [
    element('title', {}, escapeText(title)),
    element(
      'desc',
      {},
      escapeText(keyed.map(({ key, item }) => `${key} ${item.title}: ${item.words.join(', ')}.`).join(' ')),
    ),
    textElement(fitLabel(title, TITLE, width - 28), { x: 14, y: 24, 'font-size': TITLE, class: 'chart-title' }),
    ...keysOf(areas).map(({ key, item }) => areaShape(item, key, toPixel, scale, most)),
    ...keysOf(points).map(({ key, item }) => pointShape(item, key, toPixel)),
    scaleBar(bounds.width, scale, bottom + 30),
    tiltArrow(picture, MARGIN + 14, bottom + 88),
    list.svg,
  ];
  const height = list.bottom;
  return element(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', class: 'chart plate-picture' },
    content.join(''),
  );
}

function boundsOf({ areas, points }: PlatePicture): Rectangle {
  const xs = [...areas.flatMap(({ x, width }) => [x - width / 2, x + width / 2]), ...points.map(({ x }) => x)];
  const ys = [...areas.flatMap(({ y, depth }) => [y - depth / 2, y + depth / 2]), ...points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(Math.max(...xs) - x, 1), depth: Math.max(Math.max(...ys) - y, 1) };
}

function highestPressure({ pressure, width, depth }: PressedArea): number {
  return pressure.centre + (Math.abs(pressure.alongX) * width + Math.abs(pressure.alongY) * depth) / 2;
}

const letters = { die: 'D', pad: 'P', screw: 'S', stop: 'H' } as const;

/** Each with a short key of its kind: D1, P1, P2 … */
function keysOf<T extends { readonly kind: keyof typeof letters }>(items: readonly T[]): { key: string; item: T }[] {
  return items.map((item, at) => {
    const count = items.slice(0, at + 1).filter(({ kind }) => kind === item.kind).length;
    return { key: `${letters[item.kind]}${count}`, item };
  });
}

function areaShape(area: PressedArea, key: string, toPixel: ToPixel, scale: number, most: number): string {
  const { x, y, width, depth, pressure, touches } = area;
  const [left, top] = toPixel({ x: x - width / 2, y: y + depth / 2 });
  const [w, h] = [width * scale, depth * scale];
  const cells = pressure.alongX === 0 && pressure.alongY === 0 ? 1 : CELLS;
  const shades: string[] = [];
  for (let i = 0; i < cells; i++)
    for (let j = 0; j < cells; j++) {
      const [dx, dy] = [((i + 0.5) / cells - 0.5) * width, ((j + 0.5) / cells - 0.5) * depth];
      const here = pressure.centre + pressure.alongX * dx + pressure.alongY * dy;
      if (here <= 0) continue;
      const cell = {
        x: left + (i * w) / cells,
        y: top + h - ((j + 1) * h) / cells,
        width: w / cells,
        height: h / cells,
      };
      shades.push(
        element('rect', {
          ...cell,
          fill: 'currentColor',
          'fill-opacity': LIGHTEST + ((DARKEST - LIGHTEST) * here) / most,
          'shape-rendering': 'crispEdges',
        }),
      );
    }
  const frame = {
    x: left,
    y: top,
    width: w,
    height: h,
    fill: 'none',
    stroke: touches ? 'currentColor' : 'var(--limit, currentColor)',
    'stroke-width': area.kind === 'die' ? 2.5 : 1.25,
    'stroke-dasharray': touches ? 'none' : '6 4',
  };
  const middle = left + w / 2;
  const roomy = w > labelWidth(area.label, TEXT) + 12 && h > 2 * LINE + 2;
  const words = roomy ? [key, area.label] : [key];
  const span = (words.length - 1) * LINE;
  // In the half away from the cross where the force acts.
  const force = area.force && toPixel(area.force)[1];
  const first = force === null ? top + h / 2 - span / 2 : force > top + h / 2 ? top + 15 : top + h - 15 - span;
  const labels = words.map((word, at) => tag(word, middle, first + at * LINE, at === 0));
  return [...shades, element('rect', frame), ...labels, area.force ? cross(...toPixel(area.force)) : ''].join('');
}

/** A word on paper of its own, so that the shade behind it never takes its contrast. */
function tag(word: string, x: number, y: number, strong: boolean): string {
  const width = labelWidth(word, TEXT) + 6;
  const paper = { x: x - width / 2, y: y - 9, width, height: 18, fill: 'var(--paper, Canvas)', rx: 2 };
  const text = {
    x,
    y: y + 4.5,
    'font-size': TEXT,
    'text-anchor': 'middle',
    class: strong ? 'chart-title' : 'chart-figure',
  };
  return element('rect', paper) + textElement(word, text);
}

/** Where a die's force acts. */
function cross(x: number, y: number): string {
  const d = `M${round(x - 6)} ${round(y)}H${round(x + 6)}M${round(x)} ${round(y - 6)}V${round(y + 6)}`;
  return element('path', { d, fill: 'none', stroke: 'var(--limit, currentColor)', 'stroke-width': 2 });
}

function pointShape({ kind, ...point }: PlatePoint, key: string, toPixel: ToPixel): string {
  const [x, y] = toPixel(point);
  const ink = { fill: 'var(--paper, Canvas)', stroke: 'currentColor', 'stroke-width': 1.75 };
  const shape =
    kind === 'screw'
      ? element('circle', { cx: x, cy: y, r: 8, ...ink }) +
        element('path', {
          d: `M${round(x - 5)} ${round(y)}H${round(x + 5)}`,
          stroke: 'currentColor',
          'stroke-width': 2,
        })
      : element('path', {
          d: `M${round(x - 8)} ${round(y + 7)}L${round(x)} ${round(y - 8)}L${round(x + 8)} ${round(y + 7)}Z`,
          ...ink,
        });
  return shape + tag(key, x, y - 19, true);
}

/** A round length in the picture's own scale. */
function scaleBar(span: number, scale: number, y: number): string {
  const length = [50, 20, 10, 5, 2, 1].find((millimetres) => millimetres <= span / 3) ?? 1;
  const to = MARGIN + length * scale;
  const d = `M${MARGIN} ${round(y - 5)}V${round(y + 5)}M${MARGIN} ${round(y)}H${round(to)}M${round(to)} ${round(y - 5)}V${round(y + 5)}`;
  return (
    element('path', { d, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.5 }) +
    textElement(`${length} mm; seen from above; deeper shade: more pressure`, {
      x: MARGIN,
      y: y + 22,
      'font-size': TEXT,
      class: 'chart-note',
    })
  );
}

/** Points to where the plate stands lowest. */
function tiltArrow({ tilt }: PlatePicture, x: number, y: number): string {
  const slope = Math.hypot(tilt.x, tilt.y);
  const words = textElement(tilt.text, {
    x: x + 34,
    y: y + 4,
    'font-size': TEXT,
    class: 'chart-note',
  });
  if (slope < LEVEL) return words + element('circle', { cx: x, cy: y, r: 7, fill: 'none', stroke: 'currentColor' });
  // Downhill is against the slope; y of the picture points down.
  const [dx, dy] = [-tilt.x / slope, tilt.y / slope];
  const at = (along: number, across: number) =>
    `${round(x + along * dx - across * dy)} ${round(y + along * dy + across * dx)}`;
  return (
    words +
    element('path', { d: `M${at(-18, 0)}L${at(8, 0)}`, stroke: 'currentColor', 'stroke-width': 2.5 }) +
    element('path', { d: `M${at(20, 0)}L${at(6, 7)}L${at(6, -7)}Z`, fill: 'currentColor' })
  );
}

/** Every part with its figures, a line each, or more where the picture is narrow. */
function listOf(keyed: readonly { key: string; item: Described }[], top: number, width: number) {
  const lines: string[] = [];
  let y = top;
  for (const { key, item } of keyed) {
    y += LINE;
    lines.push(textElement(key, { x: 14, y, 'font-size': TEXT, class: 'chart-title' }));
    lines.push(
      textElement(fitLabel(item.title, TEXT, width - 60), { x: 48, y, 'font-size': TEXT, class: 'chart-figure' }),
    );
    for (const words of wrapped(item.words, width - 62)) {
      y += LINE;
      lines.push(textElement(words, { x: 48, y, 'font-size': TEXT, class: 'chart-note' }));
    }
    y += 4;
  }
  return { svg: lines.join(''), bottom: y + 14 };
}

function wrapped(words: readonly string[], room: number): string[] {
  const lines: string[] = [];
  for (const word of words) {
    const joined = lines.length > 0 ? `${lines[lines.length - 1]} · ${word}` : '';
    if (joined && labelWidth(joined, TEXT) <= room) lines[lines.length - 1] = joined;
    else lines.push(fitLabel(word, TEXT, room));
  }
  return lines;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
