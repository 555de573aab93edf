import { expect, test } from 'vitest';
import { calculate } from '../calc.ts';

const plate = {
  width: '80 mm',
  depth: '50 mm',
  'source-width': '16 mm',
  'source-depth': '12 mm',
  thickness: '2 mm',
  conductivity: '390 W/(m·K)',
  film: '1500 W/(m²·K)',
};

/** Off the middle [mm]; source's middle and mean to ambient by finite volumes (validation/spreading/reference.json) [K/W]. */
const places: [along: number, across: number, middle: number, mean: number][] = [
  [0, 0, 0.41640467697, 0.36966017407],
  [20, 5, 0.45993339966, 0.41408516108],
];

test.each(places)(
  'a source %s mm and %s mm off the middle of its plate meets finite volumes',
  (along, across, middle, mean) => {
    const { outputs } = calculate('spreading-rectangle', {
      ...plate,
      'off-width': `${along} mm`,
      'off-depth': `${across} mm`,
    });
    const resistance = Object.fromEntries(outputs.map(({ name, value }) => [name, value]));
    const plain = (2e-3 / 390 + 1 / 1500) / (80e-3 * 50e-3);
    expect(Math.abs(resistance.total / middle - 1)).toBeLessThan(0.001);
    expect(Math.abs(resistance.centre / (middle - plain) - 1)).toBeLessThan(0.001);
    expect(Math.abs(resistance.mean / (mean - plain) - 1)).toBeLessThan(0.001);
  },
);

test('a source over the edge of its plate is refused', () => {
  const over = { ...plate, 'off-width': '32.1 mm', 'off-depth': '0 mm' };
  expect(() => calculate('spreading-rectangle', over)).toThrow();
  expect(() => calculate('spreading-rectangle', { ...over, 'off-width': '32 mm' })).not.toThrow();
});
