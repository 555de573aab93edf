import type { Formula } from '../../formula.ts';
import { tubeWallResistance } from '../../thermal/cylinder-wall.ts';

export const tubeWallResistanceFormula: Formula = {
  name: 'tube-wall-resistance',
  title: 'thermal resistance through the wall of a tube, and the heat through it',
  equation: 'R = ln(r2/r1)/(2·π·k·L), q = ΔT/R',
  room: 'heat path',
  inputs: [
    { name: 'inner-radius', symbol: 'r1', title: 'inner radius', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'outer-radius', symbol: 'r2', title: 'outer radius', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the wall',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'length',
      symbol: 'L',
      title: 'length of tube that the heat passes',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'difference',
      symbol: 'ΔT',
      title: 'between inside and outside',
      kind: 'temperature-difference',
      unit: 'K',
      low: 0,
    },
  ],
  outputs: [
    { name: 'resistance', title: 'from inside to outside', kind: 'thermal-resistance', unit: 'K/W' },
    { name: 'heat', title: 'heat through the wall', kind: 'power', unit: 'W' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 3.28',
  requires: [{ says: 'outer radius larger than the inner one', holds: (x) => x[1] > x[0] }],
  valid: [{ says: 'heat flows radially only; tube at least as long as it is wide', holds: (x) => x[3] >= 2 * x[1] }],
  example: {
    inputs: {
      'inner-radius': '50 mm',
      'outer-radius': '60 mm',
      conductivity: '0.038 W/(m·K)',
      length: '1 m',
      difference: '85 K',
    },
    result: { heat: '111 W' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.5: glass fibre between tubes of 100 mm and 120 mm, 111 W/m',
    tolerance: 0.0046,
  },
  compute(x, y) {
    y[0] = tubeWallResistance(x[0], x[1], x[2], x[3]);
    y[1] = x[4] / y[0];
    return 'solved';
  },
};
