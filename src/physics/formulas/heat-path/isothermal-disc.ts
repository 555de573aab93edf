import type { Formula } from '../../formula.ts';
import { isothermalDiscResistance } from '../../thermal/half-space-spreading.ts';

export const isothermalDiscFormula: Formula = {
  name: 'isothermal-disc',
  title: 'from a round source at one temperature into a very large, thick body',
  equation: 'R = 1/(4·k·a)',
  room: 'heat path',
  inputs: [
    { name: 'radius', symbol: 'a', title: 'radius of the source', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the body',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'resistance', title: 'source to far away', kind: 'thermal-resistance', unit: 'K/W' }],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 4.1, case 10',
  requires: [],
  valid: [{ says: 'body large and thick against the source, which is all at one temperature', holds: (x) => x[0] > 0 }],
  example: {
    inputs: { radius: '0.56418958 m', conductivity: '1 W/(m·K)' },
    result: { resistance: '0.4431 K/W' },
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 4.1, case 10: a disc of 1 m², √π/4',
    tolerance: 0.00012,
  },
  compute(x, y) {
    y[0] = isothermalDiscResistance(x[0], x[1]);
    return 'solved';
  },
};
