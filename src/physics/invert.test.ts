import { describe, expect, test } from 'vitest';
import { followRoot, invert, searchPoints } from './invert.ts';

const line = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

describe('where a curve has a value', () => {
  test('a parabola: both sides of its top, the top itself once, nothing above', () => {
    const hill = (x: number) => x * (2 - x);
    expect(invert(hill, line(-1, 3.3, 40), 0.75).roots.map((x) => Number(x.toFixed(12)))).toEqual([0.5, 1.5]);
    expect(invert(hill, line(-1, 3.3, 40), 2).roots).toEqual([]);
    expect(invert(hill, line(-1, 3, 40), 2).reached).toEqual({ low: -3, high: 1 });
  });

  test('two places between two neighbours, near a turning point on either side of a point', () => {
    for (const shift of [-0.03, 0.03]) {
      const { roots } = invert((x) => (x - 1 - shift) ** 2, line(0, 2, 10), 1e-4);
      expect(roots.map((x) => Number((x - 1 - shift).toFixed(9)))).toEqual([-0.01, 0.01]);
    }
  });

  test('a place exactly on a point is given once', () => {
    expect(invert((x) => x - 1, line(0, 2, 2), 0).roots).toEqual([1]);
    expect(invert((x) => x - 2, line(0, 2, 2), 0).roots).toEqual([2]);
  });

  test('a pole and a jump are no places', () => {
    expect(invert((x) => 1 / (x - 1), line(0, 2.3, 10), 0).roots).toEqual([]);
    expect(invert((x) => Math.floor(x), line(0.1, 2.3, 10), 0.5).roots).toEqual([]);
  });

  test('the edge of the range with results is found from both sides', () => {
    const inside = (x: number) => (x > 0.123 && x < 1.777 ? x : Number.NaN);
    expect(invert(inside, line(0, 2, 4), 0.1231).roots[0]).toBeCloseTo(0.1231, 12);
    expect(invert(inside, line(0, 2, 4), 1.7769).roots[0]).toBeCloseTo(1.7769, 12);
    expect(invert(inside, line(0, 2, 4), 1.8).roots).toEqual([]);
    expect(invert(() => Number.NaN, line(0, 2, 4), 1)).toEqual({ roots: [], reached: null, plateau: null });
  });

  test('the top of a parabola is one place, and so are two places closer than a part in 1e9', () => {
    expect(invert((x) => x * (2 - x), line(-1, 3.3, 43), 1).roots).toHaveLength(1);
    for (const at of [1000, -1000]) {
      // The places are at·(1 ± 4e-10), and at·(1 ± 1e-6).
      const valley = (x: number) => 1 + 1e6 * (x / at - 1) ** 2;
      const near = invert(valley, line(at - 1, at + 1.1, 21), 1 + 1.6e-13).roots;
      expect(near).toHaveLength(1);
      expect(Math.abs(near[0] / at - 1)).toBeLessThan(5e-10);
      expect(invert(valley, line(at - 1, at + 1.1, 21), 1 + 1e-6).roots).toHaveLength(2);
    }
  });

  test('two places very near a turning point that lies between the points', () => {
    for (const shift of [-0.0317, 0.0271, 0.0419]) {
      const { roots } = invert((x) => (x - 1 - shift) ** 2, line(0, 2, 10), 1e-12);
      expect(roots.map((x) => Number((x - 1 - shift).toFixed(9)))).toEqual([-1e-6, 1e-6]);
    }
  });

  test('below the target too, two places near a turning point are found', () => {
    for (const shift of [-0.03, 0.03]) {
      const { roots } = invert((x) => -((x - 1 - shift) ** 2), line(0, 2, 10), -1e-4);
      expect(roots.map((x) => Number((x - 1 - shift).toFixed(9)))).toEqual([-0.01, 0.01]);
    }
  });

  test('a turning point beside the edge of the range with results is seen', () => {
    const hill = (x: number) => (x > 0.123 && x < 1.777 ? 1 - (x - 0.52) ** 2 : Number.NaN);
    expect(invert(hill, line(0, 2, 4), 1 - 1e-4).roots.map((x) => Number(x.toFixed(9)))).toEqual([0.51, 0.53]);
  });

  test('a place is told from a jump by rounding, whatever the size and sign of the values', () => {
    for (const scale of [1e-12, 1, 1e12])
      for (const sign of [-1, 1]) {
        const jump = (x: number) => sign * scale * Math.floor(x);
        expect(invert(jump, line(0.1, 2.3, 10), 0.4 * sign * scale).roots).toEqual([]);
        expect(invert(jump, line(0.1, 2.3, 10), 0.6 * sign * scale).roots).toEqual([]);
        for (let k = 1; k < 20; k++) {
          const cube = (x: number) => sign * scale * x ** 3;
          for (const goal of [k / 20, -k / 20]) {
            const { roots } = invert(cube, [-1.3, 0, 1.3], sign * scale * goal);
            expect(roots).toHaveLength(1);
            expect(roots[0]).toBeCloseTo(Math.cbrt(goal), 12);
          }
          const parabola = (x: number) => sign * scale * (x * x - k / 20);
          expect(invert(parabola, line(0, 2, 7), 0).roots[0]).toBeCloseTo(Math.sqrt(k / 20), 12);
        }
      }
    expect(invert((x) => (x < 0.5 ? 0 : 1e12), line(0.1, 2.3, 10), 100).roots).toEqual([]);
    expect(invert((x) => (x < 0.5 ? 1e12 : 0), line(0.1, 2.3, 10), 100).roots).toEqual([]);
  });

  test('a flat part that has the value is told by its ends', () => {
    const flat = (x: number) => Math.min(Math.max(x, 2), 4);
    expect(invert(flat, line(0, 6, 6), 2).plateau).toEqual({ from: 0, to: 2 });
    expect(invert(flat, line(0, 6, 6), 4).plateau).toEqual({ from: 4, to: 6 });
    expect(invert(flat, line(0, 6, 6), 3).roots).toEqual([3]);
  });
});

describe('following a place as the curve moves', () => {
  test('the nearest one, near or far, up or down, positive or negative', () => {
    for (const goal of [1.0001, 0.9, 1.2, 0.2, 3, 20, 0.04]) {
      expect(followRoot(Math.log, 1, Math.log(goal), 0, Number.POSITIVE_INFINITY) / goal).toBeCloseTo(1, 12);
      expect(followRoot((x) => -Math.log(-x), -1, -Math.log(goal), Number.NEGATIVE_INFINITY, 0) / -goal).toBeCloseTo(
        1,
        12,
      );
    }
    expect(followRoot((x) => x, 0, -0.4, -1, 1)).toBeCloseTo(-0.4, 12);
    expect(followRoot((x) => x, 0.5, -300, -1000, 1000)).toBeCloseTo(-300, 9);
  });

  test('it keeps to its branch', () => {
    const hill = (x: number) => x * (2 - x);
    expect(followRoot(hill, 0.5, 0.8, 0, 2)).toBeCloseTo(1 - Math.sqrt(0.2), 12);
    expect(followRoot(hill, 1.5, 0.8, 0, 2)).toBeCloseTo(1 + Math.sqrt(0.2), 12);
  });

  test('not over a pole, not beyond what can exist, not from where there is nothing', () => {
    expect(followRoot((x) => 1 / (x - 1), 0.5, 2, 0, 10)).toBeNaN();
    expect(followRoot((x) => x, 0.5, 2, 0, 1)).toBeNaN();
    expect(followRoot((x) => (x < 0.6 ? x : Number.NaN), 0.5, 0.7, 0, 1)).toBeNaN();
    expect(followRoot((x) => (x < 0.6 ? x : Number.NaN), 0.5, 0.5999, 0, 1)).toBeCloseTo(0.5999, 12);
    expect(followRoot(() => Number.NaN, 0.5, 2, 0, 1)).toBeNaN();
    expect(followRoot((x) => x, 0.5, 0.5, 0, 1)).toBe(0.5);
  });
});

describe('where a search begins', () => {
  const input = { name: 'x', symbol: 'x', title: '', unit: '' };

  test('whole numbers are counted', () => {
    expect(searchPoints({ ...input, kind: 'count', low: 1, high: 4 }, 2)).toEqual([1, 2, 3, 4]);
    expect(searchPoints({ ...input, kind: 'count' }, 2)).toHaveLength(1001);
    expect(searchPoints({ ...input, kind: 'count', low: 0.5, high: 3 }, 2)).toEqual([1, 2, 3]);
  });

  test('positive values over 24 decades around their size, the end that can exist among them', () => {
    const points = searchPoints({ ...input, kind: 'length', low: 0 }, 3e-3);
    expect(points[0]).toBe(0);
    expect(points[1] / 3e-15).toBeCloseTo(1, 9);
    expect(points.at(-1)! / 3e9).toBeCloseTo(1, 9);
    expect(points).toHaveLength(2 + 24 * 16);
    expect(searchPoints({ ...input, kind: 'length', low: 0, lowOpen: true }, 3e-3)[0]).toBeGreaterThan(0);
  });

  test('both signs where nothing forbids, evenly too between two ends', () => {
    const signed = searchPoints({ ...input, kind: 'voltage' }, 0);
    expect(signed).toContain(-1);
    expect(signed).toContain(1);
    expect(signed[0]).toBeCloseTo(-1e12, -3);
    const share = searchPoints({ ...input, kind: 'ratio', low: 0, high: 1 }, 0.5);
    expect(share).toContain(0.495);
    const upper = searchPoints({ ...input, kind: 'ratio', low: 0.5, high: 1 }, 0.5);
    for (const k of [1, 2, 50, 199]) expect(upper.some((x) => Math.abs(x - 0.5 - k / 400) < 1e-12)).toBe(true);
    expect(share.at(-1)).toBe(1);
    expect(share.every((x, i) => i === 0 || x > share[i - 1])).toBe(true);
  });

  test('temperatures by 2 K up to 5000 K', () => {
    const kelvins = searchPoints({ ...input, kind: 'temperature', low: 0, lowOpen: true }, 300);
    expect([kelvins[0], kelvins[1], kelvins.at(-1)]).toEqual([2, 4, 5000]);
  });
});
