import { describe, expect, test } from 'vitest';
import { typeE } from './thermocouple-e.ts';
import { typeJ } from './thermocouple-j.ts';
import { typeK } from './thermocouple-k.ts';
import { typeN } from './thermocouple-n.ts';
import { typeT } from './thermocouple-t.ts';
import { inverseTemperature, thermocoupleTemperature } from './thermocouple-temperature.ts';
import { thermocoupleTolerance } from './thermocouple-tolerance.ts';
import { measuredThermocoupleVoltage, thermocoupleSensitivity, thermocoupleVoltage } from './thermocouple-voltage.ts';

// NIST Monograph 175 (1993): ends of the reference functions [°C] and of the inverse functions [°C, mV].
const published = [
  { type: typeK, lowest: -270, highest: 1372, inverseFrom: -200, millivolts: [-5.891, 54.886] },
  { type: typeT, lowest: -270, highest: 400, inverseFrom: -200, millivolts: [-5.603, 20.872] },
  { type: typeJ, lowest: -210, highest: 1200, inverseFrom: -210, millivolts: [-8.095, 69.553] },
  { type: typeE, lowest: -270, highest: 1000, inverseFrom: -200, millivolts: [-8.825, 76.373] },
  { type: typeN, lowest: -270, highest: 1300, inverseFrom: -200, millivolts: [-3.99, 47.513] },
] as const;

describe.each(published)('type $type.letter', ({ type, lowest, highest, inverseFrom, millivolts }) => {
  const kelvins = Array.from({ length: 2001 }, (_, i) => 273.15 + inverseFrom + ((highest - inverseFrom) * i) / 2000);

  test('temperature to voltage and back gives the temperature to 1e-9 K', () => {
    for (const kelvin of kelvins) {
      const back = thermocoupleTemperature(type, thermocoupleVoltage(type, kelvin)!, 273.15)!;
      expect(Math.abs(back - kelvin), `${kelvin - 273.15} °C`).toBeLessThan(1e-9);
    }
  });

  test('the same with terminals at 25 °C, for voltages are added', () => {
    for (const kelvin of kelvins) {
      const back = thermocoupleTemperature(type, measuredThermocoupleVoltage(type, kelvin, 298.15)!, 298.15)!;
      expect(Math.abs(back - kelvin)).toBeLessThan(1e-9);
    }
  });

  test('the inverse polynomial stays within its published error, printed to 0.01 °C, and comes as near', () => {
    const found = type.inverse.map(() => ({ low: 0, high: 0 }));
    for (const kelvin of kelvins) {
      const voltage = thermocoupleVoltage(type, kelvin)!;
      const piece = found[type.inverse.findIndex(({ to }) => 1e3 * voltage <= to + 0.0005)];
      const error = inverseTemperature(type, voltage)! - kelvin;
      piece.low = Math.min(piece.low, error);
      piece.high = Math.max(piece.high, error);
    }
    for (const [i, { error }] of type.inverse.entries()) {
      expect(found[i].low).toBeGreaterThan(error.low - 0.005);
      expect(found[i].low).toBeLessThan(error.low + 0.01);
      expect(found[i].high).toBeGreaterThan(error.high - 0.01);
      expect(found[i].high).toBeLessThan(error.high + 0.005);
      for (const end of [error.low, error.high]) expect(100 * end).toBeCloseTo(Math.round(100 * end), 9);
    }
  });

  test('the reference functions meet, and rise everywhere the inverse reaches', () => {
    for (const { to } of type.direct.slice(0, -1)) {
      const [below, above] = [-1e-8, 1e-8].map((step) => thermocoupleVoltage(type, 273.15 + to + step)!);
      expect(Math.abs(above - below)).toBeLessThan(2e-9);
    }
    for (const kelvin of kelvins) expect(thermocoupleSensitivity(type, kelvin)).toBeGreaterThan(5e-6);
  });

  test('a temperature outside the range has no voltage', () => {
    for (const celsius of [lowest, highest]) expect(thermocoupleVoltage(type, 273.15 + celsius)).not.toBeNull();
    for (const celsius of [lowest - 0.001, highest + 0.001, Number.NaN]) {
      expect(thermocoupleVoltage(type, 273.15 + celsius)).toBeNull();
      expect(thermocoupleSensitivity(type, 273.15 + celsius)).toBeNull();
      expect(measuredThermocoupleVoltage(type, 273.15 + celsius, 298.15)).toBeNull();
      expect(measuredThermocoupleVoltage(type, 298.15, 273.15 + celsius)).toBeNull();
      expect(thermocoupleTemperature(type, 1e-3, 273.15 + celsius)).toBeNull();
    }
  });

  test('a voltage outside the range has no temperature, the ends as they are printed have one', () => {
    const [low, high] = millivolts;
    for (const end of millivolts) expect(inverseTemperature(type, 1e-3 * end)).not.toBeNull();
    for (const end of [low - 0.000499, high + 0.000499]) expect(inverseTemperature(type, 1e-3 * end)).not.toBeNull();
    for (const beyond of [low - 0.000502, high + 0.000502]) expect(inverseTemperature(type, 1e-3 * beyond)).toBeNull();
    for (const beyond of [low - 0.0011, high + 0.0011, Number.NaN]) {
      expect(inverseTemperature(type, 1e-3 * beyond)).toBeNull();
      expect(thermocoupleTemperature(type, 1e-3 * beyond, 273.15)).toBeNull();
    }
    expect(thermocoupleTemperature(type, 1e-3 * low, 273.15)! - 273.15).toBeCloseTo(inverseFrom, 1);
    expect(thermocoupleTemperature(type, 1e-3 * high, 273.15)! - 273.15).toBeCloseTo(highest, 1);
  });
});

// IEC 60584-2:1982, table 1: where the classes end.
test.each([
  [typeK, 1, -40, 1000],
  [typeK, 2, -40, 1200],
  [typeT, 1, -40, 350],
  [typeT, 2, -40, 350],
  [typeJ, 1, -40, 750],
  [typeJ, 2, -40, 750],
  [typeE, 1, -40, 800],
  [typeE, 2, -40, 900],
  [typeN, 1, -40, 1000],
  [typeN, 2, -40, 1200],
] as const)('class limits of $0.letter, class $1, hold from $2 °C to $3 °C only', (type, grade, from, to) => {
  expect(thermocoupleTolerance(type, grade, 273.15 + from)).not.toBeNull();
  expect(thermocoupleTolerance(type, grade, 273.15 + to)).not.toBeNull();
  expect(thermocoupleTolerance(type, grade, 273.14 + from)).toBeNull();
  expect(thermocoupleTolerance(type, grade, 273.16 + to)).toBeNull();
});
