import { ratedCurrent } from '../../electrical/rated-current.ts';
import type { Formula } from '../../formula.ts';

export const ratedCurrentFormula: Formula = {
  name: 'rated-current',
  title: 'current at which a resistor dissipates its rated power',
  equation: 'I = √(P/R)',
  room: 'power path',
  inputs: [
    { name: 'power', symbol: 'P', title: 'rated power at its temperature', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'of the resistor',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'current', title: 'rated current', kind: 'current', unit: 'A' }],
  source: "Joule's law; tabulated in data sheets of current-sense resistors",
  requires: [],
  valid: [
    {
      says: 'resistance above 0.1 mΩ: below, the joints carry as much of the heat as the resistor',
      holds: (x) => x[1] >= 1e-4,
    },
  ],
  example: {
    inputs: { power: '3 W', resistance: '0.5 mΩ' },
    result: { current: '77.46 A' },
    source: 'American Accurate Components, LRS series data sheet, table of rated currents',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = ratedCurrent(x[0], x[1]);
    return 'solved';
  },
};
