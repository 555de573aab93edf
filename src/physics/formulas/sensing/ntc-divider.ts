import type { Formula } from '../../formula.ts';
import { dividerHeat, dividerResistance } from '../../sensing/ntc-divider.ts';

export const ntcDividerFormula: Formula = {
  name: 'ntc-divider',
  title: 'resistance of a thermistor between a divider and ground, and its heat',
  equation: 'R = R_s·U/(U_s − U), P = U·(U_s − U)/R_s',
  room: 'sensing',
  inputs: [
    { name: 'voltage', symbol: 'U', title: 'voltage across the thermistor', kind: 'voltage', unit: 'V', low: 0 },
    { name: 'supply', symbol: 'U_s', title: 'supply of the divider', kind: 'voltage', unit: 'V', low: 0 },
    {
      name: 'series',
      symbol: 'R_s',
      title: 'resistor to the supply',
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'resistance', title: 'resistance of the thermistor', kind: 'resistance', unit: 'kΩ' },
    { name: 'heat', title: 'power in the thermistor', kind: 'power', unit: 'mW' },
  ],
  source: "Kirchhoff's and Joule's laws",
  requires: [
    {
      says: 'voltage between nothing (shorted thermistor) and the supply (open thermistor)',
      holds: (x) => dividerResistance(x[0], x[1], x[2], 'ground') !== null,
    },
  ],
  valid: [
    {
      says: 'voltage from 5 % to 95 % of the supply: outside, the resistor and the converter rule the result',
      holds: (x) => x[0] >= 0.05 * x[1] && x[0] <= 0.95 * x[1],
    },
  ],
  example: {
    inputs: { voltage: '1.65 V', supply: '3.3 V', series: '10 kΩ' },
    result: { resistance: '10 kΩ', heat: '0.27225 mW' },
    source: 'closed form: 1.65 V across 10 kΩ is 0.27225 mW',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = dividerResistance(x[0], x[1], x[2], 'ground')!;
    y[1] = dividerHeat(x[1], y[0], x[2]);
    return 'solved';
  },
};
