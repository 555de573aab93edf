import { describe, expect, test } from 'vitest';
import { activeTipFinHeat } from './active-tip-fin.ts';
import { airFlowFor, airHeatCapacityRate } from './air-heating.ts';
import { annularFinEfficiency } from './annular-fin.ts';
import { besselI, besselJ, besselK } from './bessel.ts';
import { coneResistance } from './cone-spreading.ts';
import { tubeWallResistance } from './cylinder-wall.ts';
import { settledTemperature } from './electrothermal-fixed-point.ts';
import { finEfficiency } from './fin-efficiency.ts';
import { plateFilm } from './flat-plate-film.ts';
import { grooveConductivity, screenConductivity } from './heat-pipe-wick.ts';
import { junctionFromCase, junctionFromSurface } from './junction.ts';
import { layerResistance } from './layer.ts';
import { rayleigh, upwardPlateNusselt } from './natural-convection.ts';
import { longFinHeat, pinFinEfficiency } from './pin-fin.ts';
import { exchangedHeat, radiatedHeat, radiationFilm } from './radiation.ts';
import { layerDrops, parallelThermalResistance, seriesThermalResistance } from './stack.ts';
import { type TouchedMaterial, touchLimit } from './touch-temperature.ts';

describe('fins', () => {
  test('a pin without length or film is all at the temperature of its root', () => {
    expect(pinFinEfficiency(0, 200, 2e-3, 20e-3)).toBe(1);
    expect(pinFinEfficiency(40, 200, 2e-3, 0)).toBeCloseTo(1, 4);
  });

  test('a pin, a straight fin and an annular fin far from the axis agree where they are the same', () => {
    expect(pinFinEfficiency(40, 200, 2e-3, 20e-3)).toBeCloseTo(finEfficiency(40, 200, 1e-3, 20.5e-3), 12);
    expect(annularFinEfficiency(100, 20, 1e-3, 2, 2.02)).toBeCloseTo(finEfficiency(100, 20, 1e-3, 20.5e-3), 2);
  });

  test('a fin with a cooled tip: nothing but its tip without length, a very long fin with much', () => {
    const [film, perimeter, conductivity, section] = [100, 15e-3, 200, 15e-6];
    expect(activeTipFinHeat(film, perimeter, conductivity, section, 0, 50)).toBeCloseTo(film * section * 50, 12);
    expect(activeTipFinHeat(film, perimeter, conductivity, section, 2, 50)).toBeCloseTo(
      longFinHeat(film, perimeter, conductivity, section, 50),
      10,
    );
  });

  test('the corrected length of a thin pin stands for its cooled tip', () => {
    const [film, conductivity, diameter, length] = [100, 200, 2e-3, 30e-3];
    const exact = activeTipFinHeat(film, Math.PI * diameter, conductivity, (Math.PI * diameter ** 2) / 4, length, 1);
    const area = Math.PI * diameter * (length + diameter / 4);
    expect((film * area * pinFinEfficiency(film, conductivity, diameter, length)) / exact).toBeCloseTo(1, 4);
  });

  // Abramowitz and Stegun 9.6.15.
  test.each([0.05, 0.7, 3, 40, 300])('Wronskian of the modified Bessel functions at %d', (x) => {
    expect(x * (besselI(0, x) * besselK(1, x) + besselI(1, x) * besselK(0, x))).toBeCloseTo(1, 11);
  });
});

// Abramowitz and Stegun 9.1.21: the integral itself, by the rule of midpoints.
test.each([0.3, 5, 29, 30.5, 33, 40, 77])('Bessel functions at %d are the mean of a wave', (x) => {
  for (const order of [0, 1] as const) {
    const angles = Array.from({ length: 400 }, (_, i) => ((i + 0.5) * Math.PI) / 400);
    const mean = angles.reduce((sum, angle) => sum + Math.cos(order * angle - x * Math.sin(angle)), 0) / 400;
    expect(besselJ(order, x)).toBeCloseTo(mean, 13);
  }
});

test('from a loop gain of one on there is no steady temperature', () => {
  const settled = (gain: number) => settledTemperature(300, gain, 1, 100, 0.01, 300);
  expect(settled(0.995)).toBeCloseTo(300 + (0.995 * 101) / 0.005, 6);
  for (const gain of [1, 1.005, 2]) expect(settled(gain)).toBe(Number.POSITIVE_INFINITY);
});

describe('stacks', () => {
  test('drops add up to the whole, a way beside takes heat', () => {
    const layers = [0.1, 0.25, 0.4];
    expect(layerDrops(20, layers).reduce((sum, drop) => sum + drop)).toBeCloseTo(
      20 * seriesThermalResistance(layers),
      12,
    );
    expect(parallelThermalResistance([2, 2])).toBe(1);
    expect(seriesThermalResistance([])).toBe(0);
  });

  test('a thin tube wall is a layer, a cone that does not widen too', () => {
    expect(tubeWallResistance(0.1, 0.1001, 10, 2) / layerResistance(1e-4, 10, 2 * Math.PI * 0.10005 * 2)).toBeCloseTo(
      1,
      5,
    );
    expect(coneResistance(10e-3, 2e-3, 390, 0)).toBeCloseTo(layerResistance(2e-3, 390, 1e-4), 14);
  });
});

describe('air', () => {
  test('the flow for a heat carries that heat', () => {
    expect(airHeatCapacityRate(airFlowFor(50, 12, 300), 300) * 12).toBeCloseTo(50, 12);
  });

  test('below Re = 5e5 a plate is laminar, above it the film jumps to the mixed law', () => {
    const film = (velocity: number) => plateFilm(velocity, 1, 0.026, 1.6e-5, 0.71);
    expect(film(8) / film(2)).toBeCloseTo(2, 12);
    expect(film(8.001) / film(8)).not.toBeCloseTo(1, 3);
  });

  test('a plate facing up changes its law at Ra = 1e7; colder than air counts like warmer', () => {
    expect(upwardPlateNusselt(1e7)).toBeCloseTo(0.54 * 1e7 ** 0.25, 10);
    expect(upwardPlateNusselt(1.0001e7)).toBeCloseTo(0.15 * Math.cbrt(1.0001e7), 10);
    expect(rayleigh(1 / 300, -20, 0.1, 1.6e-5, 2.2e-5)).toBe(rayleigh(1 / 300, 20, 0.1, 1.6e-5, 2.2e-5));
  });
});

describe('radiation', () => {
  test('film times difference is the heat', () => {
    expect(radiationFilm(0.7, 350, 300) * 0.2 * 50).toBeCloseTo(radiatedHeat(0.7, 0.2, 350, 300), 10);
  });

  test('a small surface in a very large one sees surroundings; what one gives the other takes', () => {
    const small = { emissivity: 0.7, area: 0.01, temperature: 350 };
    const large = { emissivity: 0.5, area: 1e6, temperature: 300 };
    expect(exchangedHeat(small, large, 1)).toBeCloseTo(radiatedHeat(0.7, 0.01, 350, 300), 6);
    const other = { emissivity: 0.5, area: 0.02, temperature: 300 };
    expect(exchangedHeat(small, other, 0.8)).toBeCloseTo(-exchangedHeat(other, small, 0.4), 12);
  });
});

describe('junction', () => {
  test('with all of the heat through the face, and with none', () => {
    expect(junctionFromCase(350, 2, 10, 1)).toBe(370);
    expect(junctionFromCase(350, 2, 10, 0)).toBe(350);
    expect(junctionFromCase(350, 2, 10, 0.25)).toBe(355);
    expect(junctionFromSurface(350, 2, 10)).toBe(370);
  });
});

test('a wick without holes is its metal, one without metal its liquid', () => {
  expect(screenConductivity(0.6, 400, 1)).toBeCloseTo(0.6, 12);
  expect(screenConductivity(0.6, 400, 0)).toBeCloseTo(400, 9);
  expect(grooveConductivity(0.6, 400, 0, 1)).toBe(400);
  expect(grooveConductivity(0.6, 400, 1, 0)).toBeCloseTo(0.6, 12);
});

describe('touch', () => {
  const materials: TouchedMaterial[] = ['metal', 'glass', 'plastic', 'wood'];

  test('longer contact never allows more, and what conducts better never allows more', () => {
    const times = [0.5, 1, 9.9, 10, 59, 60, 1e5];
    for (const material of materials) {
      const limits = times.map((time) => touchLimit(material, time));
      expect(limits.every((limit, i) => i === 0 || limit <= limits[i - 1])).toBe(true);
    }
    for (const time of times) {
      const limits = materials.map((material) => touchLimit(material, time));
      expect(limits.every((limit, i) => i === 0 || limit >= limits[i - 1])).toBe(true);
    }
  });

  // IEC 62368-1:2018, table 38 (from memory): class TS1 by time of contact.
  test.each([
    ['metal', [70, 60, 51, 48]],
    ['glass', [85, 71, 56, 48]],
    ['plastic', [94, 77, 60, 48]],
    ['wood', [140, 107, 60, 48]],
  ] as const)('%s by time of contact', (material, limits) => {
    for (const [i, time] of [0.999, 1, 10, 60].entries())
      expect(touchLimit(material, time) - 273.15).toBeCloseTo(limits[i], 9);
    expect(touchLimit(material, Number.POSITIVE_INFINITY)).toBe(touchLimit(material, 60));
  });
});
