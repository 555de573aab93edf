import { expect, test } from 'vitest';
import { load, lossless, package54, processor, regulator, rising, sense, supply } from './sketch.test-data.ts';
import { solveSketch } from './solve-sketch.test-data.ts';

// 20 V to 10 V in two phases of 500 kHz and 220 nH: ripple 10 V · 0.5/(220 nH · 500 kHz) = 45.4545 A; 100 W are 10 A, 5.5 A in the busiest phase.
const ripple = 5 / (220e-9 * 500e3);
const busy = solveSketch({
  parts: [
    supply('adapter', 20).replace('}', ', over-current: 9 A}'),
    regulator('adapter', 10, lossless, 2)
      .replace('imbalance: 0', 'imbalance: 10 %')
      .replace('rated-current: none, junction-limit: none', 'rated-current: 50 A, junction-limit: 100 degC')
      .replace('saturation-current: none, heating-current: none', 'saturation-current: 40 A, heating-current: 20 A')
      .replace('count: 1, rated-ripple: none', 'count: 4, rated-ripple: 5 A'),
    processor('vr', 100),
  ],
  demand: '{scale: 1, crest: 1.5}',
});
test.each([
  ['parts.adapter.over-current', 5 * 1.5, 9],
  ['parts.vr.stage.rated-current', 5.5, 50],
  ['parts.vr.inductor.saturation-current', 5.5 * 1.5 + ripple / 2, 40],
  ['parts.vr.inductor.heating-current', Math.sqrt(5.5 ** 2 + ripple ** 2 / 12), 20],
  // With N·D = 1 the pulses of the phases join: only the inductors' ripple is left, ΔI/√12, in four capacitors.
  ['parts.vr.input-capacitors.rated-ripple', ripple / Math.sqrt(12) / 4, 5],
])('%s holds %d against %d', (limit, value, rating) => {
  expect(busy.of(`${limit}.limit`)).toBe(rating);
  expect(busy.of(`${limit}.margin`)).toBeCloseTo(rating - value, 9);
});

test('ratings fall with the temperature that their part has: the junction for a stage, the node for a resistor', () => {
  // 2 K/W and the 1 W of the curve below its first point: spot at 27 °C + 2·10 W of the load; the junction 5 K/W · 1 W above it.
  const { of } = solveSketch({
    parts: [
      supply('adapter', 20),
      sense('adapter')
        .replace('heats: ambient', 'heats: spot')
        .replace(
          'resistance: 10 mohm, rated-power: none',
          'resistance: 0.001 mohm, rated-power: 1 W, derating: {from: 27 degC, end: 87 degC}',
        ),
      regulator('point', 10, rising)
        .replace('junction-rise: 0 K/W', 'junction-rise: 5 K/W, derating: {from: 32 degC, end: 72 degC}')
        .replace('rated-current: none', 'rated-current: 40 A'),
      processor('vr', 10),
    ],
  });
  expect(of('heat.nodes.spot.temperature') - 273.15).toBeCloseTo(47, 5);
  expect(of('parts.vr.junction-temperature') - 273.15).toBeCloseTo(52, 5);
  expect(of('parts.point.fitted.0.rated-power.limit')).toBeCloseTo(1 * (40 / 60), 6);
  expect(of('parts.vr.stage.rated-current.limit')).toBeCloseTo(40 * (20 / 40), 5);
});

test('places that nothing heats and limiters that give way hold no limit; a heated place without one is open', () => {
  const heat = (limit: string) =>
    `{ambient: 25 degC, nodes: {spot: {${limit}}, fins: {}}, links: {in: {between: [spot, fins], through: [{resistance: 1 K/W}]}, out: {between: [fins, ambient], through: [{resistance: 1 K/W}]}}}`;
  const parts = [supply('adapter', 20), sense('adapter'), processor('point', 20), load('rest', 'point', 5)];
  const held = (acts: string, limit: string) => {
    const { board } = solveSketch({ parts, limiters: package54('', acts), heat: heat(limit) });
    return { known: board.limits.map(({ id }) => id), open: board.open.map(({ id }) => id) };
  };
  expect(held('regulate', '').open.filter((id) => id.startsWith('heat'))).toEqual(['heat.nodes.spot.limit']);
  expect(held('regulate', '').known).toEqual([]);
  expect(held('trip', 'limit: 90 degC').known).toEqual(['heat.nodes.spot.limit', 'limiters.package']);
});
