import { describe, expect, test } from 'vitest';
import { chiSquareAbove, complementaryError, normalBelow } from './probability.ts';

describe('complementary error function', () => {
  // M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 7.1 (10 decimals).
  test.each([
    [0.5, 0.5204998778],
    [1, 0.8427007929],
    [1.5, 0.9661051465],
    [2, 0.995322265],
  ])('erf(%d) as tabulated', (x, tabulated) => {
    expect(1 - complementaryError(x)).toBeCloseTo(tabulated, 10);
  });

  // mpmath 1.3.0, 20 digits; one value for each of the three ranges and one at each seam.
  test.each([
    [0.1, 0.887537083981715],
    [0.46875, 0.507386526782062],
    [3, 2.20904969985854e-5],
    [3.99, 1.67392113645208e-8],
    [4.01, 1.4196939421371e-8],
    [10, 2.08848758376254e-45],
    [26, 5.66319240885614e-296],
    [-3, 1.999977909503],
  ])('erfc(%d) to 14 digits', (x, reference) => {
    expect(Math.abs(complementaryError(x) / reference - 1)).toBeLessThan(1e-14);
  });
});

describe('normal distribution', () => {
  // Abramowitz & Stegun, table 26.1 (15 decimals).
  test.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
  ])('below %d as tabulated', (z, tabulated) => {
    expect(normalBelow(z)).toBeCloseTo(tabulated, 14);
    expect(normalBelow(-z)).toBeCloseTo(1 - tabulated, 14);
  });

  // Abramowitz & Stegun, table 26.2: −log₁₀ of the tail.
  test.each([
    [5, 6.54265],
    [10, 23.11805],
    [20, 88.5601],
  ])('the tail beyond %d as tabulated', (z, tabulated) => {
    expect(-Math.log10(normalBelow(-z))).toBeCloseTo(tabulated, 5);
  });
});

// Abramowitz & Stegun, table 26.8: percentage points of chi-square.
test.each([
  [3, 7.81473, 0.05],
  [10, 18.307, 0.05],
  [10, 3.9403, 0.95],
  [30, 50.8922, 0.01],
])('chi-square with %d degrees of freedom above %d has probability %d', (freedom, chiSquare, tabulated) => {
  expect(Math.abs(chiSquareAbove(chiSquare, freedom) - tabulated)).toBeLessThan(0.005);
});
