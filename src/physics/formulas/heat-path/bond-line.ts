import type { Formula } from '../../formula.ts';
import { bondLineThickness } from '../../thermal/bond-line.ts';

const pressure = { kind: 'pressure', low: 0, lowOpen: true } as const;

export const bondLineFormula: Formula = {
  name: 'bond-line',
  title: 'thickness of a thermal interface material under pressure',
  equation: 'BLT = c·(τ/p)^m, c = 1.31e-4 m, m = 0.166',
  room: 'heat path',
  inputs: [
    { name: 'yield-stress', symbol: 'τ', title: 'yield stress of the material', unit: 'Pa', ...pressure },
    { name: 'pressure', symbol: 'p', title: 'pressure on the interface', unit: 'kPa', ...pressure },
  ],
  outputs: [{ name: 'thickness', title: 'thickness of the bond line', kind: 'length', unit: 'um' }],
  source: 'R. Prasher et al., ASME IMECE2002-32118 (constants from memory)',
  requires: [],
  valid: [
    { says: 'pressure from 50 kPa to 2 MPa', holds: (x) => x[1] >= 50e3 && x[1] <= 2e6 },
    { says: 'yield stress from 10 Pa to 500 Pa', holds: (x) => x[0] >= 10 && x[0] <= 500 },
  ],
  example: {
    inputs: { 'yield-stress': '100 Pa', pressure: '200 kPa' },
    result: { thickness: '37.09 um' },
    source: 'the same law, evaluated by a separate program',
    tolerance: 0.0002,
  },
  compute(x, y) {
    y[0] = bondLineThickness(x[0], x[1]);
    return 'solved';
  },
};
