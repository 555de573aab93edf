import type { Formula } from '../../formula.ts';
import { layerResistance } from '../../thermal/layer.ts';
import { discSpreading } from '../../thermal/spreading-disc.ts';

export const spreadingDiscFormula: Formula = {
  name: 'spreading-disc',
  title: 'spreading resistance of a round source in the middle of a round plate, by the exact series',
  equation:
    'mean R = 4/(π·k·b·ε²)·Σ J1(λ·ε)²·Φ/(λ³·J0(λ)²), middle R = 2/(π·k·b·ε)·Σ J1(λ·ε)·Φ/(λ²·J0(λ)²), Φ = (λ + Bi·tanh(λ·τ))/(λ·tanh(λ·τ) + Bi), λ the positive zeros of J1, ε = a/b, τ = t/b, Bi = h·b/k; with the layer and the film, (t/k + 1/h)/(π·b²), to ambient',
  room: 'heat path',
  inputs: [
    {
      name: 'source-radius',
      symbol: 'a',
      title: 'radius of the source',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'plate-radius',
      symbol: 'b',
      title: 'radius of the plate',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
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
      title: 'thermal conductivity of the plate',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'film',
      symbol: 'h',
      title: 'film coefficient over the far side',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'centre', title: 'middle of the source, spreading alone', kind: 'thermal-resistance', unit: 'K/W' },
    { name: 'mean', title: 'mean of the source, spreading alone', kind: 'thermal-resistance', unit: 'K/W' },
    {
      name: 'total',
      title: 'middle of the source to ambient, with layer and film',
      kind: 'thermal-resistance',
      unit: 'K/W',
    },
  ],
  source:
    'M. M. Yovanovich, J. R. Culham, P. Teertstra, IEEE Trans. Components, Packaging and Manufacturing Technology A 21 (1998) 168–176 (equations from memory, derived again)',
  requires: [
    {
      says: 'source smaller than the plate, and at least a hundredth of its radius',
      holds: (x) => x[0] < x[1] && 100 * x[0] >= x[1],
    },
  ],
  valid: [
    {
      says: 'heat spread evenly over the source, no heat through the edge; source up to 95 % of the radius of the plate',
      holds: (x) => x[0] <= 0.95 * x[1],
    },
  ],
  example: {
    inputs: {
      'source-radius': '8 mm',
      'plate-radius': '30 mm',
      thickness: '2 mm',
      conductivity: '390 W/(m·K)',
      film: '2000 W/(m²·K)',
    },
    result: { centre: '0.20759 K/W', mean: '0.16334 K/W', total: '0.38624 K/W' },
    source: 'finite volumes on two grids, extrapolated (validation/spreading), an independent program',
    tolerance: 0.0005,
  },
  compute(x, y) {
    const { mean, centre } = discSpreading(x[0], x[1], x[2], x[3], x[4]);
    const area = Math.PI * x[1] * x[1];
    y[0] = centre;
    y[1] = mean;
    y[2] = centre + layerResistance(x[2], x[3], area) + 1 / (x[4] * area);
    return 'solved';
  },
};
