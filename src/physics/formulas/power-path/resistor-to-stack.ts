import { resistorToStack } from '../../electrical/stacked-sense.ts';
import type { Formula } from '../../formula.ts';

export const resistorToStackFormula: Formula = {
  name: 'resistor-to-stack',
  title: 'resistor to stack across a sense resistor so that real power is a multiple of what is read',
  equation: 'R_s = R/(m − 1)',
  room: 'power path',
  inputs: [
    {
      name: 'original',
      symbol: 'R',
      title: 'sense resistor that is there',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'multiple',
      symbol: 'm',
      title: 'real power over reading',
      kind: 'ratio',
      unit: '1',
      low: 1,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'stacked', title: 'resistor to stack, with its joints', kind: 'resistance', unit: 'mΩ' }],
  source: "Ohm's law",
  requires: [],
  valid: [{ says: 'multiple up to 2: above, a lost original resistor is a long way up', holds: (x) => x[1] <= 2 }],
  example: {
    inputs: { original: '1 mΩ', multiple: '1.1' },
    result: { stacked: '10 mΩ' },
    source: "Ohm's law worked out by hand: 10 mΩ beside 1 mΩ is 0.909 mΩ",
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = resistorToStack(x[0], x[1]);
    return 'solved';
  },
};
