import fc from 'fast-check';
import { expect, test } from 'vitest';
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
