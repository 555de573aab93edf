import { fuseSteadyCurrent } from '../../electrical/fuse-rating.ts';
import type { Formula } from '../../formula.ts';

export const fuseSteadyCurrentFormula: Formula = {
  name: 'fuse-steady-current',
  title: 'steady current a fuse may carry',
  equation: 'I = I_n·s·k',
  room: 'power path',
  inputs: [
    { name: 'rating', symbol: 'I_n', title: 'rated current', kind: 'current', unit: 'A', low: 0 },
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
  outputs: [{ name: 'current', title: 'largest steady current', kind: 'current', unit: 'A', unitOf: 'rating' }],
  source: 'Littelfuse, Fuseology selection guide',
  requires: [],
  valid: [{ says: 'a share up to 75 %, as for fuses rated after UL 248-14', holds: (x) => x[1] <= 0.75 }],
  example: {
    inputs: { rating: '2.5 A', share: '75 %', rerating: '80 %' },
    result: { current: '1.5 A' },
    source: 'Littelfuse, Fuseology selection guide, example at 65 °C (from memory)',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = fuseSteadyCurrent(x[0], x[1], x[2]);
    return 'solved';
  },
};
