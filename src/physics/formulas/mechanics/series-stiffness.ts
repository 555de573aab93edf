import type { Formula } from '../../formula.ts';
import { seriesStiffness } from '../../mechanics/stiffness.ts';

export const seriesStiffnessFormula: Formula = {
  name: 'series-stiffness',
  title: 'stiffness of two parts that carry the same force one after the other',
  equation: '1/k = 1/k1 + 1/k2',
  room: 'plate and pads',
  inputs: [
    {
      name: 'first',
      symbol: 'k1',
      title: 'stiffness of one part',
      kind: 'stiffness',
      unit: 'N/mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'second',
      symbol: 'k2',
      title: 'stiffness of the other part',
      kind: 'stiffness',
      unit: 'N/mm',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'stiffness', title: 'both together', kind: 'stiffness', unit: 'N/mm' }],
  source: "Shigley's Mechanical Engineering Design, equation 8-18",
  requires: [],
  valid: [{ says: 'both parts elastic', holds: (x) => x[0] > 0 }],
  example: {
    inputs: { first: '20 N/mm', second: '30 N/mm' },
    result: { stiffness: '12 N/mm' },
    source: 'closed form, worked out by hand',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = seriesStiffness([x[0], x[1]]);
    return 'solved';
  },
};
