import { platingCurrent } from '../../chemistry/plating.ts';
import type { Formula } from '../../formula.ts';

export const platingCurrentFormula: Formula = {
  name: 'plating-current',
  title:
    'current for a current density on an area (nickel baths are toxic and cause cancer: use a commercial plater; local codes win)',
  equation: 'I = j·A',
  room: 'chemistry',
  inputs: [
    {
      name: 'current-density',
      symbol: 'j',
      title: 'current over plated area',
      kind: 'current-density',
      unit: 'A/dm²',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'area',
      symbol: 'A',
      title: 'plated area, both sides where both are wet',
      kind: 'area',
      unit: 'cm²',
      low: 0,
    },
  ],
  outputs: [{ name: 'current', title: 'current', kind: 'current', unit: 'A' }],
  source: 'definition of current density',
  requires: [],
  valid: [
    {
      says: 'current density from 0.5 A/dm² to 12 A/dm², the range of published tables for nickel',
      holds: (x) => x[0] >= 50 && x[0] <= 1200,
    },
  ],
  example: {
    inputs: { 'current-density': '4 A/dm²', area: '150 cm²' },
    result: { current: '6 A' },
    source: 'worked out by hand: 4 A/dm² times 1.5 dm²',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = platingCurrent(x[0], x[1]);
    return 'solved';
  },
};
