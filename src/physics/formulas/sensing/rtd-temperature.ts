import type { Formula } from '../../formula.ts';
import { rtdTemperature } from '../../sensing/rtd.ts';
import { rtdTolerance } from '../../sensing/rtd-tolerance.ts';

export const rtdTemperatureFormula: Formula = {
  name: 'rtd-temperature',
  title: 'temperature from the resistance of a platinum sensor (Pt100, Pt1000)',
  equation: 'R = R0·(1 + A·t + B·t² + C·(t − 100)·t³) solved for t in °C, C = 0 from 0 °C on',
  room: 'sensing',
  inputs: [
    {
      name: 'at-zero',
      symbol: 'R0',
      title: 'resistance at 0 °C',
      kind: 'resistance',
      unit: 'Ω',
      low: 0,
      lowOpen: true,
    },
    { name: 'resistance', symbol: 'R', title: 'resistance', kind: 'resistance', unit: 'Ω', low: 0 },
  ],
  outputs: [
    { name: 'temperature', title: 'temperature', kind: 'temperature', unit: '°C' },
    { name: 'class-b', title: 'tolerance of class B there, ±', kind: 'temperature-difference', unit: 'K' },
  ],
  source: 'IEC 60751:2008',
  requires: [
    { says: 'resistance within that from −200 °C to 850 °C', holds: (x) => rtdTemperature(x[0], x[1]) !== null },
  ],
  valid: [{ says: 'temperature up to 600 °C, where thin-film elements end', holds: (x) => x[1] <= 3.1371 * x[0] }],
  example: {
    inputs: { 'at-zero': '100 Ω', resistance: '138.51 Ω' },
    result: { temperature: '100 °C', 'class-b': '0.8 K' },
    source: 'IEC 60751:2008, tables 1 and 2',
    tolerance: 1e-3,
  },
  compute(x, y) {
    y[0] = rtdTemperature(x[0], x[1])!;
    y[1] = rtdTolerance('B', y[0]);
    return 'solved';
  },
};
