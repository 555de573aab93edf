import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type StackLayer, type StackPicture, stackPicture } from './stack-picture.ts';

const celsius = fc.double({ min: -20, max: 150, noNaN: true });
const layer: fc.Arbitrary<StackLayer> = fc.record({
  from: celsius,
  to: celsius,
  title: fc.string({ unit: 'binary' }),
  note: fc.string(),
  drop: fc.constantFrom('11.6 K ± 0.6 K', '0 K'),
  before: fc.option(fc.record({ from: celsius, to: celsius, drop: fc.constantFrom('3 K', '8.1 K ± 1.2 K') })),
});

test('a stack of any layers is well formed: no NaN, no markup from text', () => {
  fc.assert(
    fc.property(
      fc.array(layer, { minLength: 1, maxLength: 9 }),
      fc.integer({ min: 320, max: 1200 }),
      (layers, width) => {
        const svg = stackPicture(
          { title: '<Stack>', start: 'Die', end: 'Ambient', layers, before: 'before' },
          { width },
        );
        expect(svg).not.toMatch(/NaN|Infinity|undefined|style=/);
        const allowed = new Set(['svg', 'title', 'desc', 'rect', 'line', 'text']);
        for (const [, name] of svg.matchAll(/<\/?([^\s/>]*)/g)) expect(allowed).toContain(name);
      },
    ),
  );
});

const typical: StackPicture = {
  title: 'New paste: where the temperature is lost',
  start: 'Die: 86.5 °C ± 4.1 K',
  end: 'Ambient: 25.0 °C ± 1.2 K',
  before: 'without this step’s changes of the cooling, at the same power, 75.2 W',
  layers: [
    {
      title: 'Die to plate',
      note: 'bond line, 62.8 W',
      from: 86.5,
      to: 83.3,
      drop: '3.18 K ± 0.33 K',
      before: { from: 94.2, to: 83.3, drop: '10.9 K ± 2.4 K' },
    },
    { title: 'Fins to air', note: 'fins, 52, 58.1 W', from: 83.3, to: 37, drop: '46.3 K ± 3.6 K', before: null },
    {
      title: 'Blower',
      note: 'air from ambient, 58.1 W',
      from: 37,
      to: 25,
      drop: '12.0 K ± 0.8 K',
      before: { from: 37, to: 25, drop: '12.0 K ± 0.8 K' },
    },
  ],
};

describe.each([1000, 760, 480, 340])('a stack %i px wide', (width) => {
  const svg = stackPicture(typical, { width });

  test('keeps every bar and every figure inside the picture', () => {
    for (const [, x, y, size, anchor, words] of svg.matchAll(
      /<text x="([\d.-]+)" y="([\d.-]+)" font-size="(\d+)"(?: text-anchor="(\w+)")?[^>]*>([^<]*)</g,
    )) {
      const length = 0.6 * Number(size) * words.length;
      const left = anchor === 'middle' ? Number(x) - length / 2 : Number(x);
      expect(left, words).toBeGreaterThanOrEqual(0);
      expect(left + length, words).toBeLessThanOrEqual(width);
      expect(Number(y)).toBeLessThan(Number(/ height="([\d.]+)"/.exec(svg)![1]));
    }
  });

  test('draws each layer where it lies: a bar ends where the next begins, and its length is its drop', () => {
    const bars = [
      ...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="14" fill="currentColor"/g),
    ].map(([, x, length]) => ({ left: Number(x), right: Number(x) + Number(length) }));
    expect(bars).toHaveLength(3);
    expect(bars[1].right).toBeCloseTo(bars[0].left, 1);
    expect(bars[2].right).toBeCloseTo(bars[1].left, 1);
    expect((bars[1].right - bars[1].left) / (bars[2].right - bars[2].left)).toBeCloseTo(46.3 / 12, 1);
  });

  test('what was before is hollow and dashed, with its own figure, and says what it is', () => {
    expect(svg.match(/stroke-dasharray="4 3"/g)).toHaveLength(3);
    expect(svg).toContain('10.9 K ± 2.4 K');
    expect(stackPicture({ ...typical, before: '', layers: [typical.layers[1]] }, { width })).not.toContain('dasharray');
  });
});
