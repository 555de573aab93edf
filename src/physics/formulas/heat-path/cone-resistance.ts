import type { Formula } from '../../formula.ts';
import { coneResistance } from '../../thermal/cone-spreading.ts';

export const coneResistanceFormula: Formula = {
  name: 'cone-resistance',
  title: 'layer below a square source, the heat widening at an angle',
  equation: 'R = d/(k·a·(a + 2·d·tan α))',
  room: 'heat path',
  inputs: [
    { name: 'side', symbol: 'a', title: 'side of the source', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'thickness',
      symbol: 'd',
      title: 'thickness of the layer',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the layer',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'angle',
      symbol: 'α',
      title: 'angle of widening; 45° is common practice',
      kind: 'angle',
      unit: 'deg',
      low: 0,
      high: 1.5,
    },
  ],
  outputs: [{ name: 'resistance', title: 'through the layer', kind: 'thermal-resistance', unit: 'K/W' }],
  source: 'Infineon, Industrial IGBT Modules: Explanation of Technical Information, equation 4.12',
  requires: [],
  valid: [
    {
      says: 'a rough rule: angle up to 60°, layer thinner than the source is wide, no edge near',
      holds: (x) => x[3] <= Math.PI / 3 && x[1] < x[0],
    },
  ],
  example: {
    inputs: { side: '15 mm', thickness: '2 mm', conductivity: '390 W/(m·K)', angle: '45 deg' },
    result: { resistance: '0.01799 K/W' },
    source: 'Infineon, Industrial IGBT Modules, equation 4.12, worked out independently',
    tolerance: 0.0006,
  },
  compute(x, y) {
    y[0] = coneResistance(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
