import { parallelResistance } from '../../electrical/parallel-resistance.ts';
import type { Formula } from '../../formula.ts';

export const parallelResistanceFormula: Formula = {
  name: 'parallel-resistance',
  title: 'two resistors in parallel',
  equation: 'R = a·b/(a + b)',
  room: 'power path',
  inputs: [
    { name: 'a', symbol: 'a', title: 'one resistor', kind: 'resistance', unit: 'mΩ', low: 0, lowOpen: true },
    { name: 'b', symbol: 'b', title: 'other resistor', kind: 'resistance', unit: 'mΩ', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'resistance', title: 'resistance of both together', kind: 'resistance', unit: 'mΩ', unitOf: 'a' }],
  source: "Ohm's and Kirchhoff's laws",
  requires: [],
  valid: [
    {
      says: 'both above 0.1 mΩ: below, joints and leads between the two matter as much as the resistors',
      holds: (x) => x[0] >= 1e-4 && x[1] >= 1e-4,
    },
  ],
  example: {
    inputs: { a: '6.00 Ω', b: '13.0 Ω' },
    result: { resistance: '4.11 Ω' },
    source: 'OpenStax, College Physics, 2012, example 21.3, equation 21.36',
    tolerance: 0.0015,
  },
  compute(x, y) {
    y[0] = parallelResistance(x[0], x[1]);
    return 'solved';
  },
};
