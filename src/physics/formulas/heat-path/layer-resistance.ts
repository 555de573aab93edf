import type { Formula } from '../../formula.ts';
import { layerResistance } from '../../thermal/layer.ts';

export const layerResistanceFormula: Formula = {
  name: 'layer-resistance',
  title: 'thermal resistance of a layer, an interface or a pad',
  equation: 'R = t/(k·A)',
  room: 'heat path',
  inputs: [
    { name: 'thickness', symbol: 't', title: 'thickness along the heat', kind: 'length', unit: 'mm', low: 0 },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    { name: 'area', symbol: 'A', title: 'area that the heat passes', kind: 'area', unit: 'mm²', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'resistance', title: 'thermal resistance', kind: 'thermal-resistance', unit: 'K/W' }],
  source: "Fourier's law; Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, chapter 3",
  requires: [],
  valid: [
    {
      says: 'thin against its width: thickness below half of the root of the area; else heat also leaves sideways',
      holds: (x) => x[0] < 0.5 * Math.sqrt(x[2]),
    },
  ],
  example: {
    inputs: { thickness: '100 um', conductivity: '5 W/(m·K)', area: '100 mm²' },
    result: { resistance: '0.2 K/W' },
    source: 'thermal interface materials, rfessentials.com',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = layerResistance(x[0], x[1], x[2]);
    return 'solved';
  },
};
