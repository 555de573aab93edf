import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LadderRow, ladderChart } from './ladder-chart.ts';
import { type DrawnMargin, marginScale } from './margin-axis.ts';
import { marginBar, marginCell } from './margin-bar.ts';
import { type ChartState, stateMark } from './state-mark.ts';
import { escapeText } from './svg-text.ts';

const states: readonly ChartState[] = ['kept', 'close', 'exceeded', 'open', 'none'];
const percent = fc.double({ min: -500, max: 500, noNaN: true });
const margin = fc.tuple(percent, percent, percent).map((three) => {
  const [low, value, high] = three.toSorted((a, b) => a - b);
  return { low, value, high } as DrawnMargin;
});
const row: fc.Arbitrary<LadderRow> = fc.record({
  id: fc.string(),
  title: fc.string({ unit: 'binary' }),
  power: fc.constantFrom('54.3 W', '128 W', ''),
  note: fc.string(),
  margin: fc.option(margin),
  binding: fc.string(),
  state: fc.constantFrom(...states),
  stateWord: fc.constantFrom('kept', 'close', 'exceeded', 'no steady state'),
  openWord: fc.constantFrom('', '3 open'),
  chosen: fc.boolean(),
});

const typical: readonly LadderRow[] = [
  {
    id: 'delivered',
    title: 'As delivered',
    power: '35.0 W',
    note: 'reads 35.0 W · Package power limit holds',
    margin: { value: 21, low: 14, high: 28 },
    binding: 'Core inductor 1 saturation',
    state: 'kept',
    stateWord: 'kept',
    openWord: '2 open',
    chosen: false,
  },
  {
    id: 'second',
    title: 'Second resistor stacked on the core and graphics sense resistors',
    power: '128 W',
    note: 'reads 35.0 W · Total board power watched by the embedded controller holds',
    margin: { value: -4, low: -12, high: 5 },
    binding: 'Embedded controller, total board power',
    state: 'exceeded',
    stateWord: 'exceeded',
    openWord: '12 open',
    chosen: true,
  },
  {
    id: 'third',
    title: 'Third',
    power: '',
    note: '',
    margin: null,
    binding: 'no steady state: heat runs away',
    state: 'none',
    stateWord: 'no steady state',
    openWord: '2 open',
    chosen: false,
  },
];

interface Box {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a chart's words lie; DejaVu Sans, a wide face, advances 0.6 em on average, ascends 0.76 em and descends 0.24 em (from memory). */
function textBoxes(svg: string): readonly Box[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, words]) => {
    const read = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes!)?.[1];
    const size = Number(read('font-size'));
    const width = [...words!].length * 0.6 * size;
    const x = Number(read('x'));
    const left = { start: x, middle: x - width / 2, end: x - width }[read('text-anchor') ?? 'start']!;
    const y = Number(read('y'));
    return { words: words!, left, right: left + width, top: y - 0.76 * size, bottom: y + 0.24 * size };
  });
}

describe.each([1200, 900, 640, 400, 340])('a ladder %i px wide', (width) => {
  const svg = ladderChart(typical, { width, title: 'Ladder' });
  const boxes = textBoxes(svg).filter((box) => box.words.trim() !== '');

  test('draws no word over another', () => {
    expect(boxes.length).toBeGreaterThan(10);
    for (const [at, one] of boxes.entries())
      for (const other of boxes.slice(at + 1)) {
        const apart =
          one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;
        expect(apart, `"${one.words}" over "${other.words}"`).toBe(true);
      }
  });

  test('keeps every word inside the picture', () => {
    const height = Number(/ height="([\d.]+)"/.exec(svg)![1]);
    for (const box of boxes) {
      expect(box.left, box.words).toBeGreaterThanOrEqual(0);
      expect(box.right, box.words).toBeLessThanOrEqual(width);
      expect(box.bottom, box.words).toBeLessThanOrEqual(height);
    }
  });

  test('shows every power figure whole', () => {
    expect(boxes.map((box) => box.words)).toEqual(expect.arrayContaining(['35.0 W', '128 W']));
  });
});

test('a chart of any rows is well formed: no NaN, no markup from text, the policy’s forbidden style attribute nowhere', () => {
  fc.assert(
    fc.property(fc.array(row, { maxLength: 6 }), fc.integer({ min: 320, max: 1600 }), (rows, width) => {
      const svg = ladderChart(rows, { width, title: '<Ladder> & "co"' });
      expect(svg).not.toMatch(/NaN|Infinity|undefined|style=/);
      const allowed = new Set(['svg', 'title', 'desc', 'rect', 'line', 'text', 'g', 'circle', 'path']);
      for (const [, name] of svg.matchAll(/<\/?([^\s/>]*)/g)) expect(allowed).toContain(name);
      expect(svg.match(/class="chart-row/g) ?? []).toHaveLength(rows.length);
    }),
  );
});

// XML 1.0, 2.4: the five predefined entities; 2.2: the characters a document can hold.
test('text stays text', () => {
  expect(escapeText(`<script>"a" & 'b'</script>`)).toBe('&lt;script&gt;&quot;a&quot; &amp; &#39;b&#39;&lt;/script&gt;');
  expect(escapeText('5 mΩ\u0000\u000b\ud800')).toBe('5 mΩ');
});

test('a larger margin never lies further left, and zero lies between what is exceeded and what is kept', () => {
  fc.assert(
    fc.property(fc.array(margin, { minLength: 1, maxLength: 8 }), percent, percent, (margins, one, other) => {
      const scale = marginScale(margins, 40, 700);
      const [less, more] = [Math.min(one, other), Math.max(one, other)];
      expect(scale(less)).toBeLessThanOrEqual(scale(more));
      expect(scale(0)).toBeGreaterThan(40);
      expect(scale(0)).toBeLessThan(700);
    }),
  );
});

test('an interval that reaches over the limit is drawn in two parts that meet at the limit', () => {
  const scale = marginScale([{ value: 3, low: -8, high: 14 }], 0, 500);
  const rects = [
    ...marginBar({ value: 3, low: -8, high: 14 }, scale, 20).matchAll(
      /<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g,
    ),
  ];
  expect(rects).toHaveLength(2);
  const [beyond, left] = rects.map(([, x, width]) => ({ from: Number(x), to: Number(x) + Number(width) }));
  expect(beyond!.to).toBeCloseTo(scale(0), 1);
  expect(left!.from).toBeCloseTo(scale(0), 1);
});

test('a bar that goes on beyond the picture says so, one that ends inside does not', () => {
  const scale = marginScale([{ value: 20, low: 10, high: 30 }], 0, 500);
  expect(marginBar({ value: 240, low: 200, high: 300 }, scale, 20)).toContain('chart-beyond');
  expect(marginBar({ value: 20, low: 10, high: 30 }, scale, 20)).not.toContain('chart-beyond');
});

test('every state has a shape of its own', () => {
  expect(new Set(states.map(stateMark)).size).toBe(states.length);
});

test('a cell’s bar says its numbers in words, as text', () => {
  const scale = marginScale([], 0, 100);
  expect(marginCell({ value: 1, low: 0, high: 2 }, scale, '3 A <left>')).toContain('<title>3 A &lt;left&gt;</title>');
});
