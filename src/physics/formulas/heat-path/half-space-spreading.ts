import type { Formula } from '../../formula.ts';
import { halfSpaceCentreResistance, halfSpaceMeanResistance } from '../../thermal/half-space-spreading.ts';

export const halfSpaceSpreadingFormula: Formula = {
  name: 'half-space-spreading',
  title: 'from an evenly heated rectangle into a very large, thick body',
  equation:
    'Rc = [x·asinh(y/x) + y·asinh(x/y)]/(2·π·k·x·y), x = w/2, y = d/2; Rm = {2·[w²·d·asinh(d/w) + w·d²·asinh(w/d)] + ⅔·[w³ + d³ − (w² + d²)^1.5]}/(2·π·k·w²·d²)',
  room: 'heat path',
  inputs: [
    { name: 'width', symbol: 'w', title: 'width of the source', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'depth', symbol: 'd', title: 'depth of the source', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
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
  outputs: [
    { name: 'centre', title: 'middle of the source to far away', kind: 'thermal-resistance', unit: 'K/W' },
    { name: 'mean', title: 'mean of the source to far away', kind: 'thermal-resistance', unit: 'K/W' },
  ],
  source: 'W. M. Rohsenow, J. P. Hartnett, Y. I. Cho, Handbook of Heat Transfer, 3rd ed., 1998, chapter 3',
  requires: [],
  valid: [
    {
      says: 'body large and thick against the source; sides of the source up to 10 : 1',
      holds: (x) => x[0] <= 10 * x[1] && x[1] <= 10 * x[0],
    },
  ],
  example: {
    inputs: { width: '2 m', depth: '2 m', conductivity: '1 W/(m·K)' },
    result: { centre: '0.2805 K/W', mean: '0.2366 K/W' },
    source:
      'Rohsenow, Hartnett and Cho, Handbook of Heat Transfer, 3rd ed., 1998, as in the EES heat transfer library, functions 1004 and 1005',
    tolerance: 0.00036,
  },
  compute(x, y) {
    y[0] = halfSpaceCentreResistance(x[0], x[1], x[2]);
    y[1] = halfSpaceMeanResistance(x[0], x[1], x[2]);
    return 'solved';
  },
};
