import { dividerRatio } from '../../electrical/voltage-divider.ts';
import type { Formula } from '../../formula.ts';

export const voltageDividerFormula: Formula = {
  name: 'voltage-divider',
  title: 'voltage behind a divider',
  equation: 'U = U_in·p/(R_u + p), p = R_l·R_load/(R_l + R_load)',
  room: 'power path',
  inputs: [
    { name: 'input', symbol: 'U_in', title: 'voltage above the divider', kind: 'voltage', unit: 'V', low: 0 },
    { name: 'upper', symbol: 'R_u', title: 'upper resistor', kind: 'resistance', unit: 'kΩ', low: 0 },
    {
      name: 'lower',
      symbol: 'R_l',
      title: 'lower resistor, across which the voltage is taken',
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'load',
      symbol: 'R_load',
      title: 'what draws current from it; very large if nothing does',
      kind: 'resistance',
      unit: 'MΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'output', title: 'voltage behind the divider', kind: 'voltage', unit: 'V', unitOf: 'input' },
    { name: 'ratio', title: 'part of the voltage that is handed on', kind: 'ratio', unit: '1' },
  ],
  source: "Kirchhoff's laws (voltage divider)",
  requires: [],
  valid: [
    {
      says: 'load of at least a tenth of the lower resistor: below, it is the load that decides',
      holds: (x) => x[3] >= 0.1 * x[2],
    },
  ],
  example: {
    inputs: { input: '1.816 V', upper: '32.4 kΩ', lower: '25.5 kΩ', load: '10 GΩ' },
    result: { output: '0.8 V' },
    source: 'Linear Technology, LTC3728 data sheet, design example: 1.816 V from a reference of 0.8 V',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[1] = dividerRatio(x[1], x[2], x[3]);
    y[0] = x[0] * y[1];
    return 'solved';
  },
};
