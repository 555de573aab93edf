import { expect, test } from 'vitest';
import {
  halfSpaceCentreResistance,
  halfSpaceMeanResistance,
  isothermalDiscResistance,
} from './half-space-spreading.ts';
import { discSpreading } from './spreading-disc.ts';
import { type HeatedPlate, rectangleSpreading } from './spreading-rectangle.ts';

const plate: HeatedPlate = {
  width: 60e-3,
  depth: 40e-3,
  thickness: 2e-3,
  conductivity: 390,
  film: 2000,
  sourceWidth: 15e-3,
  sourceDepth: 10e-3,
};

test('a source as large as the plate spreads nothing', () => {
  const full = rectangleSpreading({ ...plate, sourceWidth: plate.width, sourceDepth: plate.depth });
  expect(full.mean).toBeCloseTo(0, 12);
  expect(discSpreading(20e-3, 20e-3, 2e-3, 390, 2000).mean).toBeCloseTo(0, 12);
});

test('turned by a quarter it is the same plate', () => {
  const { width, depth, sourceWidth, sourceDepth } = plate;
  const turned = rectangleSpreading({
    ...plate,
    width: depth,
    depth: width,
    sourceWidth: sourceDepth,
    sourceDepth: sourceWidth,
  });
  expect(turned.mean).toBeCloseTo(rectangleSpreading(plate).mean, 12);
  expect(turned.centre).toBeCloseTo(rectangleSpreading(plate).centre, 12);
});

test('without a place given the source lies in the middle, where it spreads best', () => {
  const placed = (x: number, y: number) => rectangleSpreading({ ...plate, sourceCentre: [x, y] });
  expect(placed(30e-3, 20e-3)).toEqual(rectangleSpreading(plate));
  expect(placed(15e-3, 20e-3).mean).toBeGreaterThan(placed(30e-3, 20e-3).mean);
  expect(placed(15e-3, 12e-3).mean).toBeGreaterThan(placed(15e-3, 20e-3).mean);
  expect(placed(15e-3, 12e-3).mean).toBeCloseTo(placed(45e-3, 28e-3).mean, 12);
});

test('on a large thick plate a small source meets the half-space', () => {
  const large = { ...plate, width: 0.4, depth: 0.4, thickness: 0.4, sourceWidth: 10e-3, sourceDepth: 10e-3 };
  const { mean, centre } = rectangleSpreading(large);
  // What is missing is the far field, about the inverse of the plate's size.
  const near = 1 / (390 * 0.4);
  expect(Math.abs(mean - halfSpaceMeanResistance(10e-3, 10e-3, 390))).toBeLessThan(near);
  expect(Math.abs(centre - halfSpaceCentreResistance(10e-3, 10e-3, 390))).toBeLessThan(near);
  expect(centre - mean).toBeCloseTo(
    halfSpaceCentreResistance(10e-3, 10e-3, 390) - halfSpaceMeanResistance(10e-3, 10e-3, 390),
    4,
  );
});

test('a small disc on a large thick disc meets 8/(3·π²·k·a), its middle 1/(π·k·a), above one temperature 1/(4·k·a)', () => {
  const { mean, centre } = discSpreading(1e-3, 0.1, 0.1, 200, 5000);
  expect(mean * 200 * 1e-3).toBeCloseTo(8 / (3 * Math.PI ** 2), 2);
  expect(centre * 200 * 1e-3).toBeCloseTo(1 / Math.PI, 2);
  expect(isothermalDiscResistance(1e-3, 200)).toBeLessThan(mean);
});
