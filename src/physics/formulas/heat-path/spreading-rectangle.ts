import type { Formula } from '../../formula.ts';
import { layerResistance } from '../../thermal/layer.ts';
import { rectangleSpreading } from '../../thermal/spreading-rectangle.ts';

export const spreadingRectangleFormula: Formula = {
  name: 'spreading-rectangle',
  title: 'spreading resistance of a rectangular source anywhere on a rectangular plate, by the exact series',
  equation:
    'mean R = [2·Σ p·g(λ) + 2·Σ q·g(δ) + 4·ΣΣ p·q·g(√(λ² + δ²))]/(a·b), λ = m·π/a, δ = n·π/b for m, n = 1, 2 …, p = s², s = cos(λ·x)·sin(λ·c/2)/(λ·c/2), x = a/2 + u, likewise q with b, d and v; for the middle p = s·cos(λ·x); g(z) = (z + (h/k)·tanh(z·t))/(k·z·(z·tanh(z·t) + h/k)); with the layer and the film, (t/k + 1/h)/(a·b), to ambient',
  room: 'heat path',
  inputs: [
    { name: 'width', symbol: 'a', title: 'width of the plate', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'depth', symbol: 'b', title: 'depth of the plate', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'source-width',
      symbol: 'c',
      title: 'width of the source',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'source-depth',
      symbol: 'd',
      title: 'depth of the source',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'off-width',
      symbol: 'u',
      title: 'middle of the source off the middle of the plate, along the width',
      kind: 'length',
      unit: 'mm',
      low: 0,
    },
    { name: 'off-depth', symbol: 'v', title: 'the same along the depth', kind: 'length', unit: 'mm', low: 0 },
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
    'Y. S. Muzychka, J. R. Culham, M. M. Yovanovich, J. Electronic Packaging 125 (2003) 178–185 (equations from memory, derived again)',
  requires: [
    {
      says: 'source inside the plate',
      holds: (x) => x[2] + 2 * x[4] <= x[0] * (1 + rounding) && x[3] + 2 * x[5] <= x[1] * (1 + rounding),
    },
    {
      says: 'sides of the source at least a tenth of those of the plate',
      holds: (x) => 10 * x[2] >= x[0] * (1 - rounding) && 10 * x[3] >= x[1] * (1 - rounding),
    },
  ],
  valid: [{ says: 'heat spread evenly over the source, no heat through the edges', holds: (x) => x[2] > 0 }],
  example: {
    inputs: {
      width: '60 mm',
      depth: '60 mm',
      'source-width': '30 mm',
      'source-depth': '30 mm',
      'off-width': '0 mm',
      'off-depth': '0 mm',
      thickness: '2 mm',
      conductivity: '390 W/(m·K)',
      film: '2000 W/(m²·K)',
    },
    result: { centre: '0.08722 K/W', mean: '0.05514 K/W', total: '0.22754 K/W' },
    source: 'finite volumes on two grids, extrapolated (validation/spreading), an independent program',
    tolerance: 0.001,
  },
  compute(x, y) {
    const [width, depth, sourceWidth, sourceDepth, offWidth, offDepth, thickness, conductivity, film] = x;
    const { mean, centre } = rectangleSpreading({
      width,
      depth,
      thickness,
      conductivity,
      film,
      sourceWidth,
      sourceDepth,
      sourceCentre: [width / 2 + offWidth, depth / 2 + offDepth],
    });
    y[0] = centre;
    y[1] = mean;
    y[2] = centre + layerResistance(thickness, conductivity, width * depth) + 1 / (film * width * depth);
    return 'solved';
  },
};

/** A source that reaches the edge exactly still lies inside, whatever the last bit says. */
const rounding = 1e-12;
