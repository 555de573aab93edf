import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planCurve } from './loss-curve.ts';

const SEED = 20_261_126;

function curveThrough(points: readonly (readonly [number, number])[]) {
  const curve = planCurve(points.length);
  points.forEach(([x, y], i) => {
    curve.x[i] = x;
    curve.y[i] = y;
  });
  expect(curve.prepare()).toBe(true);
  return curve;
}

// Points: data set RPN 15A in F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238–246. Values: SciPy 1.17.1, PchipInterpolator.
test('it agrees with an independent implementation on a published data set', () => {
  const curve = curveThrough([
    [7.99, 0],
    [8.09, 2.76429e-5],
    [8.19, 4.37498e-2],
    [8.7, 0.169183],
    [9.2, 0.469428],
    [10, 0.94374],
    [12, 0.998636],
    [15, 0.999919],
    [20, 0.999994],
  ]);
  const reference: [number, number][] = [
    [8.04, 6.915091476648847e-6],
    [8.14, 0.017697167375919493],
    [8.45, 0.10658953776097692],
    [9, 0.33753432684619816],
    [9.6, 0.7602476393403818],
    [11, 0.9860433625350502],
    [13, 0.9993618220922759],
    [18, 0.9999826838481427],
  ];
  for (const [x, y] of reference) expect(curve.at(x) / y).toBeCloseTo(1, 10);
});

test('ends agree with the same implementation on a curve of growing slope', () => {
  const curve = curveThrough([
    [0, 0.2],
    [5, 0.55],
    [10, 1.2],
    [20, 3.4],
    [30, 7.1],
    [40, 12.6],
  ]);
  expect(curve.at(2.5)).toBeCloseTo(0.343125, 12);
  expect(curve.at(37.5)).toBeCloseTo(11.047995923913044, 11);
});

const rising = fc
  .array(fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })), {
    minLength: 1,
    maxLength: 8,
  })
  .map((steps) => {
    const points: [number, number][] = [[0, 0]];
    for (const [dx, dy] of steps) points.push([points.at(-1)![0] + dx, points.at(-1)![1] + dy]);
    return points;
  });

test(`rising points give a rising curve that passes through them (seed ${SEED})`, () => {
  fc.assert(
    fc.property(rising, (points) => {
      const curve = curveThrough(points);
      for (const [x, y] of points) expect(curve.at(x)).toBeCloseTo(y, 9);
      const [from, to] = [points[0][0], points.at(-1)![0]];
      let before = curve.at(from);
      for (let i = 1; i <= 50; i++) {
        const value = curve.at(from + ((to - from) * i) / 50);
        expect(value).toBeGreaterThanOrEqual(before - 1e-9);
        before = value;
      }
    }),
    { seed: SEED, numRuns: 200 },
  );
});

test('a straight line stays one, outside the table too, which is told', () => {
  const curve = curveThrough([
    [0, 1],
    [1, 3],
    [4, 9],
  ]);
  for (const x of [-2, 0, 0.3, 2.5, 4, 7]) expect(curve.at(x)).toBeCloseTo(1 + 2 * x, 12);
  expect([-2, 0, 4, 7].map((x) => curve.covers(x))).toEqual([false, true, true, false]);
});

test('points that are no curve are refused', () => {
  const curve = planCurve(3);
  curve.x.set([0, 2, 2]);
  expect(curve.prepare()).toBe(false);
  curve.x.set([0, 2, Number.NaN]);
  expect(curve.prepare()).toBe(false);
  expect(() => planCurve(1)).toThrow();
});

// Fritsch and Butland 1984: where chords turn, the slope is zero; C. Moler 2004, 3.6: an end's slope of the wrong sign becomes zero, one beyond three chords three chords.
describe('by hand', () => {
  /** Slope at the first point, from what lies before the table, and at the last from what lies behind. */
  const endSlopes = (points: readonly (readonly [number, number])[]) => {
    const curve = curveThrough(points);
    const [first, last] = [points[0], points.at(-1)!];
    return [first[1] - curve.at(first[0] - 1), curve.at(last[0] + 1) - last[1]];
  };

  test('at a turn the curve is level, and rises no higher than the point', () => {
    const curve = curveThrough([
      [0, 0],
      [1, 8],
      [2, 5],
      [3, 4.5],
    ]);
    for (const small of [1e-4, 1e-5]) {
      expect(Math.abs(curve.at(1 - small) - 8)).toBeLessThan(100 * small ** 2);
      expect(Math.abs(curve.at(1 + small) - 8)).toBeLessThan(100 * small ** 2);
    }
  });

  test('beside a level piece the curve is level too', () => {
    const curve = curveThrough([
      [0, 0],
      [1, 1],
      [2, 1],
      [3, 4],
    ]);
    for (const x of [1, 1.2, 1.5, 2]) expect(curve.at(x)).toBeCloseTo(1, 14);
  });

  // Chords 1 and 9, equal widths: (3·1 − 9)/2 = −3 against a rising chord.
  test('an end whose formula falls where the table rises is level', () => {
    const [first] = endSlopes([
      [0, 0],
      [1, 1],
      [2, 10],
    ]);
    const [, last] = endSlopes([
      [0, 10],
      [1, 1],
      [2, 0],
    ]);
    expect(first).toBe(0);
    expect(last).toBeCloseTo(0, 15);
  });

  // Chords 1 and −9: (3·1 + 9)/2 = 6, cut to 3; chords −1 and 9 the same with the other sign; chords 1 and −2: (3 + 2)/2 = 2.5, not cut.
  test.each([
    [1, -9, 3],
    [-1, 9, -3],
    [1, -2, 2.5],
    [-1, 2, -2.5],
    [0.1, -0.9, 0.3],
    [100, -298, 299],
    [100, -302, 300],
    [2, 3, 1.5],
    [1, 0, 1.5],
    [0.5, 0.4, 0.55],
  ])('end chords %d and %d, slope %d, at either end', (near, far, slope) => {
    const [first] = endSlopes([
      [0, 0],
      [1, near],
      [2, near + far],
    ]);
    const [, last] = endSlopes([
      [0, -near - far],
      [1, -near],
      [2, 0],
    ]);
    expect(first).toBeCloseTo(slope, 12);
    expect(last).toBeCloseTo(slope, 12);
  });

  // Widths 1 and 3, chords 2 and 1: ((2·1 + 3)·2 − 1·1)/(1 + 3) = 9/4.
  test('unequal widths weigh the chords of an end', () => {
    const [first] = endSlopes([
      [5, 7],
      [6, 9],
      [9, 12],
    ]);
    const [, last] = endSlopes([
      [-9, -12],
      [-6, -9],
      [-5, -7],
    ]);
    expect(first).toBeCloseTo(9 / 4, 12);
    expect(last).toBeCloseTo(9 / 4, 12);
  });

  test('a table that stands still or goes back is no curve, one that begins below zero is', () => {
    const curve = planCurve(3);
    curve.x.set([0, 0, 2]);
    expect(curve.prepare()).toBe(false);
    curve.x.set([-2, -1, -1.5]);
    expect(curve.prepare()).toBe(false);
    curve.x.set([-2, -1, 1]);
    expect(curve.prepare()).toBe(true);
  });
});
