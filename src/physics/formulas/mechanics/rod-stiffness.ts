import type { Formula } from '../../formula.ts';
import { rodStiffness } from '../../mechanics/stiffness.ts';

export const rodStiffnessFormula: Formula = {
  name: 'rod-stiffness',
  title: 'axial stiffness of a straight rod: a shank, a thread, a standoff',
  equation: 'k = E·A/L',
  room: 'plate and pads',
  inputs: [
    {
      name: 'modulus',
      symbol: 'E',
      title: 'modulus of elasticity',
      kind: 'pressure',
      unit: 'GPa',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'section',
      symbol: 'A',
      title: 'cross-section; of a thread, its stress area',
      kind: 'area',
      unit: 'mm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'length', symbol: 'L', title: 'length under load', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'stiffness', title: 'axial stiffness', kind: 'stiffness', unit: 'kN/mm' }],
  source: "Shigley's Mechanical Engineering Design, section 8-4",
  requires: [],
  valid: [
    { says: 'below the yield point; longer than a quarter of its width', holds: (x) => 16 * x[2] * x[2] >= x[1] },
  ],
  example: {
    inputs: { modulus: '100 GPa', section: '12 mm²', length: '6 mm' },
    result: { stiffness: '200 kN/mm' },
    source: 'closed form, worked out by hand: a brass standoff',
    tolerance: 5e-6,
  },
  compute(x, y) {
    y[0] = rodStiffness(x[0], x[1], x[2]);
    return 'solved';
  },
};
