import { expect, test } from 'vitest';
import { VirtualInstruments } from './virtual-instruments.ts';

const die = { id: 'die', shows: 'die', u: 1, repeatability: 0, temperature: true };
const power = { id: 'power', shows: 'power', u: 0.4, repeatability: 0, temperature: false };
const outputs = new Map([
  ['die', 350],
  ['power', 60],
]);

function meanOf(sensors: VirtualInstruments, id: string): number {
  let sum = 0;
  for (let k = 0; k < 400; k++) sum += sensors.read(outputs, 1).get(id)!;
  return sum / 400;
}

test('every instrument keeps an error of its own, of the stated size', () => {
  const errors = Array.from(
    { length: 400 },
    (_, seed) => meanOf(new VirtualInstruments([die, power], 0, [], seed), 'power') - 60,
  );
  const rms = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
  // √(1/2n) of 400 draws: 3.5 %.
  expect(rms).toBeGreaterThan(0.4 * 0.87);
  expect(rms).toBeLessThan(0.4 * 1.13);
});

test('one instrument more leaves the others as they are', () => {
  const alone = meanOf(new VirtualInstruments([die], 0, [], 7), 'die');
  expect(meanOf(new VirtualInstruments([power, die], 0, [], 7), 'die')).toBe(alone);
});

test('swapped leads show each other’s place', () => {
  const sensors = new VirtualInstruments(
    [die, power],
    0,
    [{ kind: 'swapped-channels', instruments: ['die', 'power'] }],
    1,
  );
  expect(Math.abs(meanOf(sensors, 'die') - 60)).toBeLessThan(6);
  expect(Math.abs(meanOf(sensors, 'power') - 350)).toBeLessThan(6);
});

test('a sensor lags behind a jump and then arrives', () => {
  const sensors = new VirtualInstruments([die], 0, [], 3);
  const cold = sensors.read(new Map([['die', 300]]), 1).get('die')!;
  const soon = sensors.read(outputs, 1).get('die')!;
  let late = 0;
  for (let k = 0; k < 100; k++) late = sensors.read(outputs, 1).get('die')!;
  expect(soon - cold).toBeLessThan(45);
  expect(late - cold).toBeGreaterThan(46);
});
