import type { Formula } from '../../formula.ts';
import { pinFinEfficiency } from '../../thermal/pin-fin.ts';

export const pinFinEfficiencyFormula: Formula = {
  name: 'pin-fin-efficiency',
  title: 'efficiency of a round pin fin with a cooled tip',
  equation: 'η = tanh(m·Lc)/(m·Lc), m = √(4·h/(k·D)), Lc = L + D/4; heat for each kelvin G = η·h·π·D·Lc',
  room: 'heat path',
  inputs: [
    { name: 'film', symbol: 'h', title: 'film coefficient', kind: 'film-coefficient', unit: 'W/(m²·K)', low: 0 },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the pin',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    { name: 'diameter', symbol: 'D', title: 'diameter', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'length', symbol: 'L', title: 'length from root to tip', kind: 'length', unit: 'mm', low: 0 },
  ],
  outputs: [
    { name: 'efficiency', title: 'efficiency', kind: 'ratio', unit: '%' },
    {
      name: 'conductance',
      title: 'heat for each kelvin of the root above the air',
      kind: 'thermal-conductance',
      unit: 'mW/K',
    },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 3.5',
  requires: [],
  valid: [{ says: 'slender pin: h·D/k below 0.2', holds: (x) => x[0] * x[2] < 0.2 * x[1] }],
  example: {
    inputs: { film: '220 W/(m²·K)', conductivity: '160 W/(m·K)', diameter: '4 mm', length: '35.18 mm' },
    result: { efficiency: '65 %' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, problem on a pin fin of 65 % efficiency, with its published solution, Lc = 36.18 mm',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[0] = pinFinEfficiency(x[0], x[1], x[2], x[3]);
    y[1] = y[0] * x[0] * Math.PI * x[2] * (x[3] + x[2] / 4);
    return 'solved';
  },
};
