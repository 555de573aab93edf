import { expect, test } from 'vitest';
import { autocorrelation } from '../src/metrology/autocorrelation.ts';
import { meanOfSeries } from '../src/metrology/series.ts';

// NIST Statistical Reference Datasets, univariate summary statistics (https://www.itl.nist.gov/div898/strd/univ/homepage.html).
const pairs = (first: number, low: number, high: number) => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];
const mavro = [
  2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018, 2.0018, 2.0019,
  2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016, 2.0015, 2.0014, 2.0013, 2.0014, 2.0015,
  2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002, 2.002, 2.0021, 2.0022, 2.0023, 2.0024, 2.0025, 2.0027, 2.0026,
  2.0026, 2.0026, 2.0027, 2.0026, 2.0025, 2.0024,
];
const michelso = [
  299.85, 299.74, 299.9, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300, 299.98, 299.93, 299.65, 299.76,
  299.81, 300, 300, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.8, 299.85, 299.88, 299.9, 299.84,
  299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.8, 299.79, 299.76, 299.8, 299.88, 299.88, 299.88, 299.86, 299.72,
  299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91, 299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84,
  299.84, 299.89, 299.81, 299.81, 299.82, 299.8, 299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86,
  299.88, 299.72, 299.84, 299.85, 299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81,
  299.82, 299.85, 299.87, 299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.8, 299.81, 299.87,
];

test.each([
  { name: 'Mavro', values: mavro, mean: 2.001856, sd: 0.000429123454003053, lag1: 0.937989183438248, digits: 11 },
  { name: 'Michelso', values: michelso, mean: 299.8524, sd: 0.0790105478190518, lag1: 0.535199668621283, digits: 11 },
  { name: 'NumAcc1', values: [10000001, 10000003, 10000002], mean: 10000002, sd: 1, lag1: -0.5, digits: 14 },
  { name: 'NumAcc2', values: pairs(1.2, 1.1, 1.3), mean: 1.2, sd: 0.1, lag1: -0.999, digits: 12 },
  {
    name: 'NumAcc3',
    values: pairs(1000000.2, 1000000.1, 1000000.3),
    mean: 1000000.2,
    sd: 0.1,
    lag1: -0.999,
    digits: 9,
  },
  {
    name: 'NumAcc4',
    values: pairs(10000000.2, 10000000.1, 10000000.3),
    mean: 10000000.2,
    sd: 0.1,
    lag1: -0.999,
    digits: 8,
  },
])('$name: certified mean, standard deviation, lag-1 autocorrelation', ({ values, mean, sd, lag1, digits }) => {
  const found = meanOfSeries(values, null);
  // The last digits of NumAcc3 and NumAcc4 are lost when the decimal data become binary numbers, before any arithmetic.
  const tolerance = 10 ** -digits;
  expect(Math.abs(found.mean / mean - 1)).toBeLessThan(1e-14);
  expect(Math.abs(found.sd / sd - 1)).toBeLessThan(tolerance);
  expect(Math.abs(autocorrelation(values, 1) / lag1 - 1)).toBeLessThan(tolerance);
});
