import { describe, expect, test } from 'vitest';
import { energyOf } from './energy.ts';
import { recordedRun } from './recordings.test-data.ts';
import type { Channel, Run } from './run.ts';

// The board's counter of energy is the outside reference: it counts by itself, not from the readings of power.
describe('the recordings against the board’s own energy counter', () => {
  // Integrals and differences of the counter: by numpy (trapezoid) from the same files.
  test.each([
    ['step', 122171.74, 122170.133],
    ['stair', 100424.22, 100593.629],
  ] as const)('%s: within 0.3 %%, and within what is stated', async (id, integral, counter) => {
    const { run, readings } = await recordedRun(id);
    const [instant, average] = energyOf(run, readings);
    expect(instant.energy).toBeCloseTo(integral, 1);
    expect(instant.counter).toBeCloseTo(counter, 3);
    for (const { closure } of [instant, average]) expect(Math.abs(closure!)).toBeLessThan(0.003);
    expect(Math.abs(instant.closure!)).toBeLessThan(2 * instant.uClosure!);
    expect(instant.uClosure!).toBeLessThan(0.005);
  });
});

/** A run of one power channel and perhaps a counter, as recorded. */
function runOf(time: number[], power: number[], counter?: number[]) {
  const channel = (name: string, kind: 'power' | 'energy', values: number[]): Channel => {
    const edges = { first: values[0], last: values[values.length - 1], least: 0, greatest: 0 };
    return {
      name,
      type: 'number',
      unit: kind === 'power' ? 'W' : 'J',
      kind,
      count: values.length,
      missing: 0,
      ...edges,
    };
  };
  const channels = [channel('p', 'power', power), ...(counter ? [channel('e', 'energy', counter)] : [])];
  const columns = new Map([['p', Float64Array.from(power)]]);
  if (counter) columns.set('e', Float64Array.from(counter));
  return energyOf({ channels } as unknown as Run, { time: Float64Array.from(time), channels: columns });
}

test('a straight ramp is integrated exactly, at uneven times and across a missing reading', () => {
  // ∫ 10·t dt from 0 to 4 s = 80 J.
  expect(runOf([0, 0.5, 2, 3, 4], [0, 5, 20, Number.NaN, 40])[0].energy).toBe(80);
});

test('a steady power leaves no doubt, a step the doubt of its moment', () => {
  expect(runOf([0, 1, 2], [5, 5, 5])[0]).toMatchObject({ energy: 10, u: 0 });
  // Worked by hand: a step of 60 W somewhere within 2 s: ±60 J about the middle, 120/√12 J = 34.6 J.
  expect(runOf([0, 2, 4, 6], [10, 10, 70, 70])[0].u).toBeCloseTo(34.641, 3);
});

test('a counter’s steps at either end are its uncertainty', () => {
  const [{ counter, uCounter, closure }] = runOf([0, 1, 2, 3], [10, 10, 10, 10], [100, 100, 112, 131]);
  expect(counter).toBe(31);
  // Worked by hand: steps of 12 J and 19 J, each a rectangle: √(12² + 19²)/√12 = 6.487.
  expect(uCounter).toBeCloseTo(6.487, 3);
  expect(closure).toBeCloseTo(30 / 31 - 1, 12);
});

test('without a counter, or with one that stands still, there is nothing to hold it against', () => {
  expect(runOf([0, 1], [5, 5])[0].closure).toBeNull();
  expect(runOf([0, 1], [5, 5], [7, 7])[0].closure).toBeNull();
});
