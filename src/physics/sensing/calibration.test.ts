import { describe, expect, test } from 'vitest';
import { fitCalibration, predictCalibration } from './calibration-fit.ts';
import { calibratedUncertainty, calibratedValue } from './calibration-two-point.ts';

describe('two points', () => {
  test('the line goes through both', () => {
    expect(calibratedValue(1, 10, 3, 20, 1)).toBe(10);
    expect(calibratedValue(1, 10, 3, 20, 3)).toBe(20);
    expect(calibratedValue(1, 10, 3, 20, 2)).toBe(15);
  });

  test('half-way the uncertainties of the points average, at a point its own counts', () => {
    const points = { reading1: 1, true1: 10, reading2: 3, true2: 20 };
    const exact = { true1: 0.3, true2: 0.4, reading: 0 };
    expect(calibratedUncertainty(points, exact, 2)).toBeCloseTo(0.25, 12);
    expect(calibratedUncertainty(points, exact, 1)).toBeCloseTo(0.3, 12);
    expect(calibratedUncertainty(points, exact, 3)).toBeCloseTo(0.4, 12);
    // Slope 5; at the first point the reading and that of the point count: 5·0.1·√2.
    const read = { true1: 0, true2: 0, reading: 0.1 };
    expect(calibratedUncertainty(points, read, 1)).toBeCloseTo(0.5 * Math.SQRT2, 12);
    expect(calibratedUncertainty(points, read, 3)).toBeCloseTo(0.5 * Math.SQRT2, 12);
  });
});

describe('a fitted curve', () => {
  const readings = [1, 2, 3, 4, 5, 6];

  test('a quadratic through points of a quadratic is that quadratic, from any origin', () => {
    const values = readings.map((x) => 2 - 3 * x + 0.5 * x * x);
    for (const origin of [0, 3.5, -2]) {
      const curve = fitCalibration(readings, values, 2, origin)!;
      expect(curve.scatter).toBeLessThan(1e-11);
      expect(predictCalibration(curve, 7).value).toBeCloseTo(5.5, 9);
    }
  });

  test('value and uncertainty of a prediction do not depend on the origin', () => {
    const values = [1.1, 1.9, 3.2, 3.8, 5.1, 6.05];
    for (const order of [1, 2] as const) {
      const [near, far] = [3.5, -20].map((origin) =>
        predictCalibration(fitCalibration(readings, values, order, origin)!, 8),
      );
      expect(near.value).toBeCloseTo(far.value, 9);
      expect(near.u).toBeCloseTo(far.u, 9);
    }
  });

  test('at the mean of the readings a line is known to the scatter over √n', () => {
    const curve = fitCalibration(readings, [1.1, 1.9, 3.2, 3.8, 5.1, 6.05], 1, 0)!;
    expect(curve.freedom).toBe(4);
    expect(predictCalibration(curve, 3.5).u).toBeCloseTo(curve.scatter / Math.sqrt(6), 12);
  });

  // (0, 0), (1, 1), (2, 3): slope 3/2, 4/3 at the mean; residuals 1/6, −1/3, 1/6, squares 1/6 in all, one degree of freedom.
  test('one point more than coefficients is enough', () => {
    const curve = fitCalibration([0, 1, 2], [0, 1, 3], 1, 1)!;
    expect(curve.freedom).toBe(1);
    expect(curve.coefficients[0]).toBeCloseTo(4 / 3, 12);
    expect(curve.coefficients[1]).toBeCloseTo(3 / 2, 12);
    expect(curve.scatter).toBeCloseTo(Math.sqrt(1 / 6), 12);
  });

  test('no curve when nothing is left over to judge the scatter by, or the readings are the same', () => {
    expect(fitCalibration([1, 2], [1, 2], 1, 0)).toBeNull();
    expect(fitCalibration([1, 2, 3], [1, 2, 4], 2, 0)).toBeNull();
    expect(fitCalibration([1], [1], 1, 0)).toBeNull();
    expect(fitCalibration([2, 2, 2, 2], [1, 2, 3, 4], 1, 0)).toBeNull();
    expect(fitCalibration([1, 1, 2, 2], [1, 2, 3, 4], 2, 0)).toBeNull();
  });
});
