import { fusingCoefficients, slowFusingCurrent } from '../../electrical/fusing-current.ts';
import type { Formula } from '../../formula.ts';

export const wireFusingCurrentFormula: Formula = {
  name: 'wire-fusing-current',
  title: 'current that in the end melts a bare copper wire',
  equation: 'I = 10244·d^1.5, d in inches',
  room: 'power path',
  inputs: [
    {
      name: 'diameter',
      symbol: 'd',
      title: 'gauge, as in AWG 24, or diameter',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'current', title: 'melting current; no current that a wire may carry', kind: 'current', unit: 'A' },
  ],
  source: 'W. H. Preece, Proc. Royal Society 36 (1884) 464',
  requires: [],
  valid: [{ says: 'diameter from 0.05 mm to 3 mm', holds: (x) => x[0] >= 5e-5 && x[0] <= 3e-3 }],
  example: {
    inputs: { diameter: '0.0457 in' },
    result: { current: '100 A' },
    source: 'Ness Engineering, technical data, fuse equations, table of diameters',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[0] = slowFusingCurrent(x[0], fusingCoefficients.copper);
    return 'solved';
  },
};
