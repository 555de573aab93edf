import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlatePicture, type PlatePoint, type PressedArea, platePicture } from './plate-picture.ts';
import { standalone } from './standalone.ts';

const coordinate = fc.double({ min: -60, max: 60, noNaN: true });
const side = fc.double({ min: 1, max: 40, noNaN: true });
const words = fc.array(fc.string({ unit: 'binary' }), { maxLength: 4 });
const area: fc.Arbitrary<PressedArea> = fc.record({
  kind: fc.constantFrom('pad' as const, 'die' as const),
  x: coordinate,
  y: coordinate,
  width: side,
  depth: side,
  title: fc.string({ unit: 'binary' }),
  words,
  pressure: fc.record({
    centre: fc.double({ min: -500, max: 2000, noNaN: true }),
    alongX: fc.constantFrom(0, -30, 12.5),
    alongY: fc.constantFrom(0, 40),
  }),
  label: fc.constantFrom('350 kPa', 'no contact'),
  touches: fc.boolean(),
  force: fc.option(fc.record({ x: coordinate, y: coordinate })),
});
const point: fc.Arbitrary<PlatePoint> = fc.record({
  kind: fc.constantFrom('screw' as const, 'stop' as const),
  x: coordinate,
  y: coordinate,
  title: fc.string(),
  words,
  label: fc.string(),
});
const picture: fc.Arbitrary<PlatePicture> = fc.record({
  title: fc.string({ unit: 'binary' }),
  areas: fc.array(area, { maxLength: 6 }),
  points: fc.array(point, { minLength: 1, maxLength: 8 }),
  tilt: fc.record({ x: fc.double({ min: -9, max: 9, noNaN: true }), y: fc.constantFrom(0, 1.5), text: fc.string() }),
});

test('a picture of any plate is well formed: no NaN, no markup from text', () => {
  fc.assert(
    fc.property(picture, fc.integer({ min: 320, max: 1200 }), (drawn, width) => {
      const svg = platePicture(drawn, { width });
      expect(svg).not.toMatch(/NaN|Infinity|undefined|style=/);
      const allowed = new Set(['svg', 'title', 'desc', 'rect', 'text', 'circle', 'path']);
      for (const [, name] of svg.matchAll(/<\/?([^\s/>]*)/g)) expect(allowed).toContain(name);
    }),
  );
});

const die: PressedArea = {
  kind: 'die',
  x: 0,
  y: 0,
  width: 12,
  depth: 10,
  title: 'Die <one>',
  words: ['84 N', 'mean 700 kPa'],
  pressure: { centre: 700, alongX: 0, alongY: 0 },
  label: '700 kPa',
  touches: true,
  force: null,
};
const screws: readonly PlatePoint[] = [-30, 30].flatMap((x) =>
  [-25, 25].map((y) => ({ kind: 'screw' as const, x, y, title: `${x} ${y}`, words: ['26 N'], label: '26 N' })),
);
const drawn = (areas: readonly PressedArea[], tilt = { x: 0, y: 0, text: 'level' }) =>
  platePicture({ title: 'Plate', areas, points: screws, tilt }, { width: 720 });

describe('colour is never alone', () => {
  test('a die that isn’t touched has another outline and a word', () => {
    const off = drawn([{ ...die, touches: false, label: 'no contact', pressure: { ...die.pressure, centre: -1 } }]);
    expect(off).toContain('stroke-dasharray="6 4"');
    expect(off).toContain('>no contact<');
    expect(drawn([die])).not.toContain('stroke-dasharray="6 4"');
  });

  test('the pressure stands as a number over its shade, and in the list', () => {
    const svg = drawn([die]);
    expect(svg).toContain('>700 kPa<');
    expect(svg).toContain('84 N · mean 700 kPa');
    expect(svg).toContain('Die &lt;one&gt;');
  });
});

test('a tilted die is shaded from light to deep towards where it is pressed most, and not at all where it has lifted', () => {
  const svg = drawn([{ ...die, pressure: { centre: 0, alongX: 0, alongY: -100 } }]);
  const cells = [...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)"[^>]*fill-opacity="([\d.]+)"/g)].map(
    ([, x, y, shade]) => ({
      x: Number(x),
      y: Number(y),
      shade: Number(shade),
    }),
  );
  expect(cells).toHaveLength(8 * 4);
  const column = cells.filter(({ x }) => x === cells[0].x).toSorted((a, b) => a.y - b.y);
  // Pressure grows towards −y, which is down in the picture.
  for (let i = 1; i < column.length; i++) expect(column[i].shade).toBeGreaterThan(column[i - 1].shade);
});

test('the arrow points downhill: a plate that stands higher along +x leans to the left', () => {
  const head = (svg: string) => /<path d="M([\d.]+) [\d.]+L[^"]*Z" fill="currentColor"\/>/.exec(svg)![1];
  const right = Number(head(drawn([die], { x: -2, y: 0, text: 'lower' })));
  const left = Number(head(drawn([die], { x: 2, y: 0, text: 'lower' })));
  expect(left).toBeLessThan(right);
  expect(drawn([die])).not.toMatch(/Z" fill="currentColor"/);
});

test('a file of its own has its name space and rules for light and dark', () => {
  const file = standalone(drawn([die]));
  expect(file).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" [^>]*><style>/);
  expect(file).toContain('prefers-color-scheme:dark');
});
