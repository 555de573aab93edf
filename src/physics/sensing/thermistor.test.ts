import { describe, expect, test } from 'vitest';
import { betaBetween, betaResistance, betaTemperature } from './ntc-beta.ts';
import { dividerHeat, dividerResistance } from './ntc-divider.ts';
import { steinhartHartFalls, steinhartHartResistance, steinhartHartTemperature } from './steinhart-hart.ts';
import { fitSteinhartHart, steinhartHartThrough } from './steinhart-hart-fit.ts';

// Coefficients through 25 kΩ, 10 kΩ and 4 kΩ at 5, 25 and 45 °C, as widely reprinted.
const coefficients = { a: 2.108508173e-3, b: 0.7979204727e-4, c: 6.535076315e-7 };
const points = [233.15, 273.15, 298.15, 348.15, 398.15].map((temperature) => ({
  temperature,
  resistance: steinhartHartResistance(coefficients, temperature),
}));

test('β to resistance and back', () => {
  for (const temperature of [233.15, 298.15, 398.15]) {
    const resistance = betaResistance(10_000, 298.15, 3435, temperature);
    expect(betaTemperature(10_000, 298.15, 3435, resistance)).toBeCloseTo(temperature, 9);
    if (temperature !== 298.15) expect(betaBetween(10_000, 298.15, resistance, temperature)).toBeCloseTo(3435, 8);
  }
});

describe('Steinhart–Hart', () => {
  test('temperature to resistance and back', () => {
    for (const { temperature, resistance } of points)
      expect(steinhartHartTemperature(coefficients, resistance)).toBeCloseTo(temperature, 9);
  });

  test('three points of a curve give back its coefficients, in any order; so do five by least squares', () => {
    for (const found of [
      steinhartHartThrough(points[0], points[2], points[4])!,
      steinhartHartThrough(points[4], points[0], points[1])!,
      fitSteinhartHart(points)!,
      fitSteinhartHart(points.slice(1, 4))!,
    ]) {
      expect(found.a / coefficients.a).toBeCloseTo(1, 9);
      expect(found.b / coefficients.b).toBeCloseTo(1, 9);
      expect(found.c / coefficients.c).toBeCloseTo(1, 9);
    }
    expect(fitSteinhartHart(points)!.residual).toBeLessThan(1e-9);
  });

  test('without three different resistances there are no coefficients', () => {
    expect(steinhartHartThrough(points[0], points[0], points[1])).toBeNull();
    expect(steinhartHartThrough(points[0], points[1], points[1])).toBeNull();
    expect(fitSteinhartHart(points.slice(0, 2))).toBeNull();
    expect(fitSteinhartHart([points[0], points[1], points[1], points[0]])).toBeNull();
  });

  test('a curve that rises somewhere is noticed', () => {
    expect(steinhartHartFalls(coefficients, 10_000)).toBe(true);
    expect(steinhartHartFalls({ ...coefficients, c: -coefficients.c }, 10_000)).toBe(false);
    expect(steinhartHartFalls({ a: 1 / 300, b: 0, c: 0 }, 10_000)).toBe(false);
    // B + 3·C·L² is zero at L = √(B/(3·|C|)) = 6.3796, R = 589.7 Ω.
    const turning = { a: 0, b: 0.7979204727e-4, c: -6.535076315e-7 };
    expect([589, 590].map((resistance) => steinhartHartFalls(turning, resistance))).toEqual([true, false]);
  });
});

test('an open or shorted thermistor has no resistance', () => {
  for (const place of ['ground', 'supply'] as const) {
    for (const voltage of [0, 3.3, -0.1, 3.4, Number.NaN])
      expect(dividerResistance(voltage, 3.3, 10_000, place)).toBeNull();
    expect(dividerResistance(1.65, 3.3, 10_000, place)).toBeCloseTo(10_000, 9);
  }
});

test('heat of the thermistor and of the resistor together is what the supply gives', () => {
  const [supply, thermistor, series] = [3.3, 2500, 10_000];
  const together = dividerHeat(supply, thermistor, series) + dividerHeat(supply, series, thermistor);
  expect(together).toBeCloseTo(supply ** 2 / (thermistor + series), 15);
});
