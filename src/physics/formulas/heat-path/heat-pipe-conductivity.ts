import type { Formula } from '../../formula.ts';
import { effectiveConductivity } from '../../thermal/heat-pipe.ts';

export const heatPipeConductivityFormula: Formula = {
  name: 'heat-pipe-conductivity',
  title: 'conductivity that a solid bar of the size of a heat pipe would need',
  equation: 'k = L/(R·A)',
  room: 'heat path',
  inputs: [
    { name: 'length', symbol: 'L', title: 'length', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'from end to end',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
      lowOpen: true,
    },
    { name: 'section', symbol: 'A', title: 'cross-section', kind: 'area', unit: 'mm²', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'conductivity', title: 'conductivity of such a bar', kind: 'thermal-conductivity', unit: 'W/(m·K)' },
  ],
  source: "Fourier's law",
  requires: [],
  valid: [{ says: 'for this length only: it is no property of the pipe', holds: (x) => x[0] > 0 }],
  example: {
    inputs: { length: '60 mm', resistance: '2.955236 K/W', section: '28.2743339 mm²' },
    result: { conductivity: '718.07 W/(m·K)' },
    source: "Fourier's law by hand: a pipe of 60 mm, 6 mm in diameter",
    tolerance: 1.5e-5,
  },
  compute(x, y) {
    y[0] = effectiveConductivity(x[0], x[1], x[2]);
    return 'solved';
  },
};
