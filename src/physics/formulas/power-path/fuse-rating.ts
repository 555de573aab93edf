import { fuseRating } from '../../electrical/fuse-rating.ts';
import type { Formula } from '../../formula.ts';

export const fuseRatingFormula: Formula = {
  name: 'fuse-rating',
  title: 'rated current a fuse needs',
  equation: 'I_n = I/(s·k)',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'steady current', kind: 'current', unit: 'A', low: 0 },
    {
      name: 'share',
      symbol: 's',
      title: 'of the rating that is used at 25 °C',
      kind: 'ratio',
      unit: '%',
      low: 0,
      lowOpen: true,
      high: 1,
    },
    {
      name: 'rerating',
      symbol: 'k',
      title: 'temperature re-rating from its data sheet',
      kind: 'ratio',
      unit: '%',
      low: 0,
      lowOpen: true,
      high: 1.5,
    },
  ],
  outputs: [{ name: 'rating', title: 'least rated current', kind: 'current', unit: 'A', unitOf: 'current' }],
  source: 'Littelfuse, Fuseology selection guide',
  requires: [],
  valid: [{ says: 'a share up to 75 %, as for fuses rated after UL 248-14', holds: (x) => x[1] <= 0.75 }],
  example: {
    inputs: { current: '1.5 A', share: '75 %', rerating: '80 %' },
    result: { rating: '2.5 A' },
    source: 'Littelfuse, Fuseology selection guide, example at 65 °C (from memory)',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = fuseRating(x[0], x[1], x[2]);
    return 'solved';
  },
};
