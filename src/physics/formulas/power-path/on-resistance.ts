import { onResistanceAt, onResistanceGrowing } from '../../electrical/on-resistance.ts';
import type { Formula } from '../../formula.ts';

export const onResistanceFormula: Formula = {
  name: 'on-resistance',
  title: "a transistor's on-resistance when hot, in two published forms",
  equation: 'R = R25·(1 + α·(T − 25 °C)), or R25·(1 + α)^(T − 25 °C)',
  room: 'power path',
  inputs: [
    { name: 'resistance', symbol: 'R25', title: 'at 25 °C', kind: 'resistance', unit: 'mΩ', low: 0 },
    {
      name: 'coefficient',
      symbol: 'α',
      title: '0.004/K to 0.005/K for silicon',
      kind: 'temperature-coefficient',
      unit: '1/K',
      low: 0,
    },
    { name: 'junction', symbol: 'T', title: 'junction temperature', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [
    { name: 'linear', title: 'by the straight line', kind: 'resistance', unit: 'mΩ', unitOf: 'resistance' },
    {
      name: 'growing',
      title: 'by the same factor for each kelvin',
      kind: 'resistance',
      unit: 'mΩ',
      unitOf: 'resistance',
    },
  ],
  source:
    'Linear Technology, LTC3728 data sheet (line); Infineon, MOSFET Power Losses Calculation Using the Data-Sheet Parameters, 2006 (factor)',
  requires: [],
  valid: [
    { says: 'junction from 25 °C to 150 °C', holds: (x) => x[2] >= 298.15 && x[2] <= 423.15 },
    { says: 'coefficient from 0.003/K to 0.006/K', holds: (x) => x[1] >= 0.003 && x[1] <= 0.006 },
  ],
  example: {
    inputs: { resistance: '1 Ω', coefficient: '0.005 1/K', junction: '50 °C' },
    result: { linear: '1.125 Ω' },
    source: 'Linear Technology, LTC1539 data sheet, page 14',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = onResistanceAt(x[0], x[1], x[2]);
    y[1] = onResistanceGrowing(x[0], x[1], x[2]);
    return 'solved';
  },
};
