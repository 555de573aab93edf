import { lossFromEfficiency } from '../../electrical/efficiency.ts';
import type { Formula } from '../../formula.ts';

export const lossFromEfficiencyFormula: Formula = {
  name: 'loss-from-efficiency',
  title: 'loss of a converter from its efficiency',
  equation: 'P_loss = P·(1/η − 1)',
  room: 'power path',
  inputs: [
    { name: 'output', symbol: 'P', title: 'output power', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'efficiency',
      symbol: 'η',
      title: 'efficiency at that power',
      kind: 'ratio',
      unit: '%',
      low: 0,
      lowOpen: true,
      high: 1,
    },
  ],
  outputs: [{ name: 'loss', title: 'all losses', kind: 'power', unit: 'W' }],
  source: 'conservation of energy',
  requires: [],
  valid: [{ says: 'efficiency from 50 %: converters of this kind lose less', holds: (x) => x[1] >= 0.5 }],
  example: {
    inputs: { output: '15 W', efficiency: '90 %' },
    result: { loss: '1.66667 W' },
    source: 'conservation of energy worked out by hand: 15/9 W',
    tolerance: 1e-5,
  },
  compute(x, y) {
    y[0] = lossFromEfficiency(x[0], x[1]);
    return 'solved';
  },
};
