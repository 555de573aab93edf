import type { Formula } from '../../formula.ts';
import { calibratedValue } from '../../sensing/calibration-two-point.ts';

const temperature = { kind: 'temperature', unit: '°C', low: 0 } as const;
const voltage = { kind: 'voltage', unit: 'V' } as const;

export const calibrationTwoPointFormula: Formula = {
  name: 'calibration-two-point',
  title: 'temperature from a voltage, by a calibration at two temperatures',
  equation: 'T = T1 + (T2 − T1)·(U − U1)/(U2 − U1)',
  room: 'sensing',
  inputs: [
    { name: 'voltage', symbol: 'U', title: 'voltage read', ...voltage },
    { name: 'voltage-1', symbol: 'U1', title: 'voltage at the first temperature', ...voltage },
    { name: 'temperature-1', symbol: 'T1', title: 'first temperature', ...temperature },
    { name: 'voltage-2', symbol: 'U2', title: 'voltage at the second temperature', ...voltage },
    { name: 'temperature-2', symbol: 'T2', title: 'second temperature', ...temperature },
  ],
  outputs: [
    { name: 'temperature', title: 'temperature', kind: 'temperature', unit: '°C' },
    { name: 'slope', title: 'voltage per kelvin', kind: 'voltage-temperature-coefficient', unit: 'mV/K' },
  ],
  source: 'straight line through two points, closed form',
  requires: [
    {
      says: 'two different temperatures, two different voltages, and a temperature above absolute zero',
      holds: (x) => x[1] !== x[3] && x[2] !== x[4] && calibratedValue(x[1], x[2], x[3], x[4], x[0]) > 0,
    },
  ],
  valid: [
    {
      says: 'voltage no further beyond the two points than half their distance',
      holds: (x) => Math.abs((x[0] - x[1]) / (x[3] - x[1]) - 0.5) <= 1,
    },
  ],
  example: {
    inputs: {
      voltage: '1.1 V',
      'voltage-1': '0.806 V',
      'temperature-1': '25 °C',
      'voltage-2': '1.271 V',
      'temperature-2': '85 °C',
    },
    result: { temperature: '62.9355 °C', slope: '7.75 mV/K' },
    source: 'closed form: 25 + 60·0.294/0.465 and 465 mV/60 K',
    tolerance: 1e-6,
  },
  compute(x, y) {
    y[0] = calibratedValue(x[1], x[2], x[3], x[4], x[0]);
    y[1] = (x[3] - x[1]) / (x[4] - x[2]);
    return 'solved';
  },
};
