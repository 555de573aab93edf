import { describe, expect, test } from 'vitest';
import { readSharedLine, stageTemperature, stageVoltage } from './power-stage-temperature.ts';

// Texas Instruments, TPS53681 data sheet SLUSCT1B, 2019: 0.28 V at −40 °C, 1.80 V at 150 °C.
const output = { offset: 0.6, slope: 8e-3, lowest: 233.15, highest: 423.15 };

describe('a line that several stages drive', () => {
  test('says the temperature of the hottest; the mean stays open', () => {
    const reading = readSharedLine(1.2416, output, 3);
    expect(reading).toMatchObject({ says: 'temperature', mean: null });
    expect(reading.says === 'temperature' && reading.hottest).toBeCloseTo(353.35, 9);
  });

  test('with one stage the mean is its temperature', () => {
    const reading = readSharedLine(1.2, output, 1);
    expect(reading.says === 'temperature' && reading.mean).toBeCloseTo(348.15, 9);
  });

  test('beyond the range a voltage is a fault or no signal, never a temperature', () => {
    expect(readSharedLine(1.801, output, 3)).toEqual({ says: 'fault' });
    expect(readSharedLine(3.3, output, 3)).toEqual({ says: 'fault' });
    expect(readSharedLine(0.279, output, 3)).toEqual({ says: 'no-signal' });
    expect(readSharedLine(Number.NaN, output, 3)).toEqual({ says: 'no-signal' });
  });

  test('the ends of the range are temperatures', () => {
    const [lowest, highest] = [0.28, 1.8].map((voltage) => stageTemperature(voltage, output.offset, output.slope));
    for (const voltage of [0.28, 1.8])
      expect(readSharedLine(voltage, { ...output, lowest, highest }, 2).says).toBe('temperature');
    for (const end of [output.lowest, output.highest]) {
      const within = end + (end === output.lowest ? 1e-9 : -1e-9);
      expect(readSharedLine(stageVoltage(within, 0.6, 8e-3), output, 2).says).toBe('temperature');
    }
  });
});
