import type { Formula } from '../../formula.ts';
import { layerResistance } from '../../thermal/layer.ts';
import { peakSpreadingResistance, spreadingResistance } from '../../thermal/spreading-resistance.ts';

export const spreadingResistanceFormula: Formula = {
  name: 'spreading-resistance',
  title: 'spreading resistance from a small source into a plate',
  equation:
    'Rmax = (1 − ε)·Φ/(π·k·a), Φ = (tanh(λτ) + λ/Bi)/(1 + (λ/Bi)·tanh(λτ)), λ = π + 1/(√π·ε), τ = t/b, Bi = h·b/k, ε = a/b, a = √(As/π), b = √(Ap/π); with the layer and the film, 1/(h·Ap), to ambient',
  room: 'heat path',
  inputs: [
    {
      name: 'source-area',
      symbol: 'As',
      title: 'area that the heat enters through, in the middle',
      kind: 'area',
      unit: 'mm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'plate-area', symbol: 'Ap', title: 'area of the plate', kind: 'area', unit: 'mm²', low: 0, lowOpen: true },
    {
      name: 'thickness',
      symbol: 't',
      title: 'thickness of the plate',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'film',
      symbol: 'h',
      title: 'film coefficient over the far side; for a heat sink of R to air, 1/(R·Ap)',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'peak', title: 'hottest point, spreading alone', kind: 'thermal-resistance', unit: 'K/W' },
    { name: 'mean', title: 'mean of the source, spreading alone', kind: 'thermal-resistance', unit: 'K/W' },
    { name: 'total', title: 'hottest point to ambient, with layer and film', kind: 'thermal-resistance', unit: 'K/W' },
  ],
  source: 'S. Lee, Electronics Cooling 4 (1998) 30–33; S. Song, S. Lee, V. Au, IEPS Conf. 1994 (equations from memory)',
  requires: [{ says: 'source not larger than the plate', holds: (x) => x[0] <= x[1] }],
  valid: [
    {
      says: 'compact and centred source, within 7 % of the exact series for squares; ε = a/b below 0.8',
      holds: (x) => x[0] < 0.64 * x[1],
    },
  ],
  example: {
    inputs: {
      'source-area': '625 mm²',
      'plate-area': '10000 mm²',
      thickness: '1.3 mm',
      conductivity: '200 W/(m·K)',
      film: '100 W/(m²·K)',
    },
    result: { total: '1.66 K/W' },
    source: 'S. Lee, Electronics Cooling 4 (1998) 30–33, example: 0.66 K/W of spreading, 1.66 K/W in all (from memory)',
    tolerance: 0.0025,
  },
  compute(x, y) {
    y[0] = peakSpreadingResistance(x[0], x[1], x[2], x[3], x[4]);
    y[1] = spreadingResistance(x[0], x[1], x[2], x[3], x[4]);
    y[2] = y[0] + layerResistance(x[2], x[3], x[1]) + 1 / (x[4] * x[1]);
    return 'solved';
  },
};
