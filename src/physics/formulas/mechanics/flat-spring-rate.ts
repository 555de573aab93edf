import type { Formula } from '../../formula.ts';
import { flatSpringRate } from '../../mechanics/stiffness.ts';

export const flatSpringRateFormula: Formula = {
  name: 'flat-spring-rate',
  title: 'rate of a flat spring arm, clamped at one end',
  equation: 'k = E·b·t³/(4·L³)',
  room: 'plate and pads',
  inputs: [
    {
      name: 'modulus',
      symbol: 'E',
      title: 'modulus of elasticity; steel about 200 GPa',
      kind: 'pressure',
      unit: 'GPa',
      low: 0,
      lowOpen: true,
    },
    { name: 'width', symbol: 'b', title: 'width', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'thickness', symbol: 't', title: 'thickness', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'length',
      symbol: 'L',
      title: 'free length from the clamped end to the screw',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'rate', title: 'rate at the free end', kind: 'stiffness', unit: 'N/mm' }],
  source: "beam theory; Shigley's Mechanical Engineering Design, table A-9, case 1",
  requires: [],
  valid: [
    {
      says: 'arm at least ten times as long as thick, bent by less than a tenth of its length',
      holds: (x) => x[3] >= 10 * x[2],
    },
  ],
  example: {
    inputs: { modulus: '200 GPa', width: '10 mm', thickness: '1 mm', length: '30 mm' },
    result: { rate: '18.5185 N/mm' },
    source: 'closed form, worked out by hand: 3·E·I/L³ with I = 10/12 mm⁴, that is 500/27 N/mm',
    tolerance: 6e-6,
  },
  compute(x, y) {
    y[0] = flatSpringRate(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
