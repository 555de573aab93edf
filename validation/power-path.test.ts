import { expect, test } from 'vitest';
import { deratedRating } from '../src/physics/electrical/derating.ts';
import { dividerGain } from '../src/physics/electrical/divider.ts';
import { leakagePower } from '../src/physics/electrical/leakage.ts';
import { loadVoltage } from '../src/physics/electrical/load-voltage.ts';
import { parallelResistance } from '../src/physics/electrical/parallel-resistance.ts';
import { readPower } from '../src/physics/electrical/sense-reading.ts';
import { realPower } from '../src/physics/electrical/sense-real-power.ts';

test('two conductances add up', () => {
  for (const [a, b] of [
    [5e-3, 5e-3],
    [5e-3, 100e-3],
    [1e-6, 1e6],
  ]) {
    expect(1 / parallelResistance(a, b) / (1 / a + 1 / b)).toBeCloseTo(1, 14);
  }
});

test('derating lines pass through the published ends: 70 °C to 155 °C (LCS), to 170 °C (LMP25), 100 °C to 275 °C (LRS2512)', () => {
  for (const [from, end] of [
    [70, 155],
    [70, 170],
    [100, 275],
  ]) {
    expect(deratedRating(2, from - 1, from, end)).toBe(2);
    expect(deratedRating(2, from, from, end)).toBe(2);
    expect(deratedRating(2, (from + end) / 2, from, end)).toBeCloseTo(1, 12);
    expect(deratedRating(2, from + (end - from) / 4, from, end)).toBeCloseTo(1.5, 12);
    expect(deratedRating(2, end, from, end)).toBe(0);
    expect(deratedRating(2, end + 1, from, end)).toBe(0);
  }
});

test('an amplifier that draws nothing leaves the plain divider', () => {
  expect(dividerGain(100, 300, Number.POSITIVE_INFINITY)).toBeCloseTo(0.75, 14);
  expect(dividerGain(0, 300, 1e4)).toBe(1);
});

// Ohm's law by hand: 19 V · 3 A = 57 W through 3.333 mΩ where 5 mΩ is believed, 10 µV offset, nine tenths through.
test('a limiter reads the voltage across what is there, over what it believes', () => {
  expect(readPower(19, 3, 10e-3 / 3, 1, 0, 5e-3)).toBeCloseTo(38, 10);
  expect(readPower(19, 3, 5e-3, 0.9, 10e-6, 5e-3)).toBeCloseTo(51.3 + 0.038, 10);
  expect(readPower(19, 3, 0, 1, 0, 5e-3)).toBe(0);
});

test('reading what is allowed, real power is what was computed', () => {
  const [allowed, assumed, effective, bus] = [40, 5e-3, 3.2e-3, 19];
  const current = realPower(allowed, assumed, effective) / bus;
  expect(readPower(bus, current, effective, 1, 0, assumed)).toBeCloseTo(allowed, 10);
});

test('leakage grows by e over its characteristic rise (common practice, no source)', () => {
  expect(leakagePower(2, 373.15, 343.15, 30)).toBeCloseTo(2 * Math.E, 12);
  expect(leakagePower(2, 343.15, 343.15, 30)).toBe(2);
});

test('a load has its first voltage at its first power', () => {
  expect(loadVoltage(0.6, 1, 1 / 3)).toBe(0.6);
});
