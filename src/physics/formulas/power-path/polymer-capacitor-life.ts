import { polymerCapacitorLife } from '../../electrical/capacitor-life.ts';
import type { Formula } from '../../formula.ts';

export const polymerCapacitorLifeFormula: Formula = {
  name: 'polymer-capacitor-life',
  title: 'life of an aluminium capacitor with conductive polymer',
  equation: 'L = L0·10^((T0 − T)/20 K)',
  room: 'power path',
  inputs: [
    {
      name: 'rated-life',
      symbol: 'L0',
      title: 'at the rated temperature and ripple',
      kind: 'time',
      unit: 'h',
      low: 0,
      lowOpen: true,
    },
    { name: 'rated-temperature', symbol: 'T0', title: 'rated temperature', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'temperature', symbol: 'T', title: 'of the capacitor', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [{ name: 'life', title: 'life', kind: 'time', unit: 'h' }],
  source: 'Würth Elektronik, aluminium polymer capacitors, 2022, pages 18–19',
  requires: [],
  valid: [{ says: 'temperature from 40 °C to the rated temperature', holds: (x) => x[2] >= 313.15 && x[2] <= x[1] }],
  example: {
    inputs: { 'rated-life': '2000 h', 'rated-temperature': '105 °C', temperature: '85 °C' },
    result: { life: '20000 h' },
    source: 'Würth Elektronik, aluminium polymer capacitors, 2022, figure 8',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = polymerCapacitorLife(x[0], x[1], x[2]);
    return 'solved';
  },
};
