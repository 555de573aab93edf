import { expect, test } from 'vitest';
import { conductionLoss } from './buck-losses.ts';
import { liquidCapacitorLifeWithRipple } from './capacitor-life.ts';
import { mostInputResistance } from './capacitor-loss.ts';
import { currentByCurve, selfHeatingCurrent } from './connector-derating.ts';
import { voltageAtPower } from './constant-power-droop.ts';
import { mixedCoefficient } from './copper-share.ts';
import { pulseShare } from './fuse-rating.ts';
import { fastFusingCurrent } from './fusing-current.ts';
import { rmsCurrent } from './inductor-current.ts';
import { sharePhases } from './phase-sharing.ts';
import { severalInParallel } from './several-resistances.ts';
import { stackedReading } from './stacked-sense.ts';
import { innerTrace, outerTrace, traceCurrent, traceWidth } from './trace-current.ts';

test('resistors in parallel: one that is open changes nothing, one of none rules, none at all is open', () => {
  expect(severalInParallel([5, Number.POSITIVE_INFINITY])).toBe(5);
  expect(severalInParallel([5, 0])).toBe(0);
  expect(severalInParallel([])).toBe(Number.POSITIVE_INFINITY);
});

test('a stacked resistor that is a short reads nothing', () => {
  expect(stackedReading(10, 5e-3, 0)).toBe(0);
});

test('a trace carries its current at its own width, and needs 2^(1/0.725) of the width inside', () => {
  const width = traceWidth(7, 35e-6, 25, outerTrace);
  expect(traceCurrent(width, 35e-6, 25, outerTrace)).toBeCloseTo(7, 12);
  expect(traceWidth(7, 35e-6, 25, innerTrace) / width).toBeCloseTo(2.60144, 5);
});

test('copper at its melting point, 1083 °C, needs no current to melt', () => {
  expect(fastFusingCurrent(1e-7, 1, 1083 + 273.15)).toBeCloseTo(0, 12);
});

test('a curve by points holds its first current below, is straight between and leaves nothing above', () => {
  const curve = [
    [300, 20],
    [320, 10],
    [330, 4],
  ] as const;
  expect([250, 300, 305, 320, 325, 330, 330.1].map((at) => currentByCurve(curve, at))).toEqual([
    20, 20, 17.5, 10, 7, 4, 0,
  ]);
  expect(currentByCurve([[300, 5]], 300)).toBe(5);
  expect(() => currentByCurve([], 300)).toThrow('points');
});

test('at its limiting temperature a connector carries nothing', () => {
  expect(selfHeatingCurrent(10, 293.15, 378.15, 378.15)).toBe(0);
  expect(selfHeatingCurrent(10, 293.15, 378.15, 400)).toBe(0);
  expect(selfHeatingCurrent(10, 293.15, 378.15, 293.15)).toBe(10);
});

test('power that the source cannot give has no voltage; just below it there is half of the voltage', () => {
  expect(voltageAtPower(20, 1000.001, 0.1)).toBeNull();
  expect(voltageAtPower(20, 1000, 0.1)).toBe(10);
  expect(voltageAtPower(20, 0, 0.1)).toBe(20);
});

// Littelfuse, Fuseology, chart 2: between two numbers of pulses the larger one counts, beyond the last nothing is published.
test('pulses of a fuse are judged by the next larger number', () => {
  expect([1, 100, 101, 1001, 10_001, 100_000].map(pulseShare)).toEqual([0.48, 0.48, 0.38, 0.29, 0.22, 0.22]);
  expect(pulseShare(100_001)).toBeNull();
});

test('phases carry all of the current and end at one voltage', () => {
  const duties = [0.101, 0.1, 0.0995];
  const resistances = [2e-3, 2.3e-3, 1.8e-3];
  const currents = sharePhases(90, 12, duties, resistances);
  expect(currents.reduce((sum, current) => sum + current)).toBeCloseTo(90, 9);
  const voltages = currents.map((current, j) => duties[j] * 12 - current * resistances[j]);
  for (const voltage of voltages) expect(voltage).toBeCloseTo(voltages[0], 12);
  expect(() => sharePhases(90, 12, [0.1], resistances)).toThrow('duty');
});

// A triangle of height h has an rms value of h/√12 about its mean.
test('ripple adds to the rms current by the square of h/√12', () => {
  expect(rmsCurrent(0, Math.sqrt(12))).toBeCloseTo(1, 12);
  expect(conductionLoss(0, Math.sqrt(12), 1, 1)).toBeCloseTo(1, 12);
  expect(rmsCurrent(4, 3 * Math.sqrt(12))).toBeCloseTo(5, 12);
});

test('a part that is all copper has its coefficient; a resistance that only ripple flows through sees half of it', () => {
  expect(mixedCoefficient(1, 5, 7)).toBe(7);
  expect(mixedCoefficient(0, 5, 7)).toBe(5);
  expect(mostInputResistance(1, 0, 2)).toBe(1);
});

// K^((1 − 1.005²)·10/10) with K = 4: the exponent is −0.010025.
test('from just above the rated ripple on, ripple takes twice as much from the exponent of a life', () => {
  const life = (share: number) => liquidCapacitorLifeWithRipple(1, 378.15, 378.15, 2, 2 * share, 10);
  expect(life(1)).toBe(1);
  expect(Math.log2(life(1.005))).toBeCloseTo(-2 * 0.010025, 12);
  expect(Math.log2(life(0.995))).toBeCloseTo(0.009975, 12);
});
