import type { Formula } from '../../formula.ts';
import { betaBetween } from '../../sensing/ntc-beta.ts';

export const ntcBetaBetweenFormula: Formula = {
  name: 'ntc-beta-between',
  title: 'β value of a thermistor between two points',
  equation: 'β = ln(R1/R2)/(1/T1 − 1/T2)',
  room: 'sensing',
  inputs: [
    {
      name: 'resistance-1',
      symbol: 'R1',
      title: 'resistance at the first temperature',
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'temperature-1',
      symbol: 'T1',
      title: 'first temperature',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'resistance-2',
      symbol: 'R2',
      title: 'resistance at the second temperature',
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'temperature-2',
      symbol: 'T2',
      title: 'second temperature',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'beta', title: 'β value', kind: 'temperature-difference', unit: 'K' }],
  source: 'IEC 60539-1, B-value',
  requires: [{ says: 'resistance is greater at the colder point', holds: (x) => (x[0] - x[2]) * (x[3] - x[1]) > 0 }],
  valid: [{ says: 'points at least 10 K apart', holds: (x) => Math.abs(x[3] - x[1]) >= 10 }],
  example: {
    inputs: { 'resistance-1': '10 kΩ', 'temperature-1': '25 °C', 'resistance-2': '1.07 kΩ', 'temperature-2': '85 °C' },
    result: { beta: '3977 K' },
    source:
      'Amphenol Thermometrics, Sensor Temperature Resistance Curves, Rev. C, 2014, material type 1: β(25/85) and resistance ratio at 85 °C',
    tolerance: 0.0004,
  },
  compute(x, y) {
    y[0] = betaBetween(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
