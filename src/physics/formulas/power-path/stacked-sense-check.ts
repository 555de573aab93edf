import { parallelResistance } from '../../electrical/parallel-resistance.ts';
import { stackedReading } from '../../electrical/stacked-sense.ts';
import type { Formula } from '../../formula.ts';

export const stackedSenseCheckFormula: Formula = {
  name: 'stacked-sense-check',
  title: 'what must be read once a resistor is stacked across a sense resistor; if it reads anything else, stop',
  equation: 'P_read = P·R_s/(R + R_s)',
  room: 'power path',
  inputs: [
    { name: 'power', symbol: 'P', title: 'true power, measured elsewhere', kind: 'power', unit: 'W', low: 0 },
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
      name: 'stacked',
      symbol: 'R_s',
      title: 'resistor stacked across it, with its joints',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'reading', title: 'power that must be read', kind: 'power', unit: 'W', unitOf: 'power' },
    { name: 'factor', title: 'real power over reading', kind: 'ratio', unit: '1' },
    { name: 'resistance', title: 'both together', kind: 'resistance', unit: 'mΩ', unitOf: 'original' },
  ],
  source: "Ohm's law",
  requires: [],
  valid: [
    {
      says: 'real power up to twice what is read: above, a lost original resistor is a long way up',
      holds: (x) => x[1] <= x[2],
    },
  ],
  example: {
    inputs: { power: '60 W', original: '5 mΩ', stacked: '10 mΩ' },
    result: { reading: '40 W', factor: '1.5' },
    source: "Ohm's law worked out by hand: 10 mΩ beside 5 mΩ is 3.333 mΩ",
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = stackedReading(x[0], x[1], x[2]);
    y[1] = 1 / stackedReading(1, x[1], x[2]);
    y[2] = parallelResistance(x[1], x[2]);
    return 'solved';
  },
};
