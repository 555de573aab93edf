import type { Formula } from '../../formula.ts';
import { rtdResistance } from '../../sensing/rtd.ts';

export const rtdResistanceFormula: Formula = {
  name: 'rtd-resistance',
  title: 'resistance of a platinum sensor (Pt100, Pt1000) at a temperature',
  equation: 'R = R0·(1 + A·T + B·T² + C·(T − 100)·T³), T in °C, C = 0 from 0 °C on',
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
    { name: 'temperature', symbol: 'T', title: 'temperature', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [{ name: 'resistance', title: 'resistance', kind: 'resistance', unit: 'Ω' }],
  source: 'IEC 60751:2008',
  requires: [{ says: 'temperature from −200 °C to 850 °C', holds: (x) => rtdResistance(x[0], x[1]) !== null }],
  valid: [{ says: 'temperature up to 600 °C, where thin-film elements end', holds: (x) => x[1] <= 873.15 }],
  example: {
    inputs: { 'at-zero': '100 Ω', temperature: '100 °C' },
    result: { resistance: '138.51 Ω' },
    source: 'IEC 60751:2008, table 1',
    tolerance: 4e-5,
  },
  compute(x, y) {
    y[0] = rtdResistance(x[0], x[1])!;
    return 'solved';
  },
};
