import type { Formula } from '../../formula.ts';
import { heatPipeResistance } from '../../thermal/heat-pipe.ts';

export const heatPipeResistanceFormula: Formula = {
  name: 'heat-pipe-resistance',
  title: 'thermal resistance of a heat pipe',
  equation: 'R = 2·(Rw + Rs)',
  room: 'heat path',
  inputs: [
    {
      name: 'wall',
      symbol: 'Rw',
      title: 'through the wall, at one end',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
    {
      name: 'wick',
      symbol: 'Rs',
      title: 'through the wick, at one end',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
  ],
  outputs: [{ name: 'resistance', title: 'end to end', kind: 'thermal-resistance', unit: 'K/W' }],
  source: 'Qpedia Thermal eMagazine, heat pipe resistance network',
  requires: [],
  valid: [{ says: "heat below the pipe's carrying limit, which this law doesn't know", holds: (x) => x[0] <= x[1] }],
  example: {
    inputs: { wall: '3.618 mK/W', wick: '1.474 K/W' },
    result: { resistance: '2.95 K/W' },
    source: 'Qpedia Thermal eMagazine: pipe of 60 mm, 5 and 6 mm in diameter, two layers of #500 mesh',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = heatPipeResistance(x[0], x[1]);
    return 'solved';
  },
};
