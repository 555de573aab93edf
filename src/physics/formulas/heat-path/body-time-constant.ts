import type { Formula } from '../../formula.ts';
import { bodyTimeConstant } from '../../thermal/lumped-warming.ts';

export const bodyTimeConstantFormula: Formula = {
  name: 'body-time-constant',
  title: 'time constant of a body',
  equation: 'τ = ρ·V·c·R, C = ρ·V·c',
  room: 'heat path',
  inputs: [
    { name: 'density', symbol: 'ρ', title: 'density', kind: 'density', unit: 'kg/m³', low: 0, lowOpen: true },
    { name: 'volume', symbol: 'V', title: 'volume', kind: 'volume', unit: 'cm³', low: 0, lowOpen: true },
    {
      name: 'specific-heat',
      symbol: 'c',
      title: 'specific heat',
      kind: 'specific-heat',
      unit: 'J/(kg·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'to its surroundings; 1/(h·A) for a film',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'time-constant', title: 'time constant', kind: 'time', unit: 's' },
    { name: 'capacity', title: 'heat capacity', kind: 'heat-capacity', unit: 'J/K' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 5.6 and 5.7',
  requires: [],
  valid: [
    {
      says: 'body at one temperature throughout: it conducts heat far better than its surroundings take it away',
      holds: (x) => x[3] > 0,
    },
  ],
  example: {
    inputs: {
      density: '8500 kg/m³',
      volume: '0.1842490 mm³',
      'specific-heat': '400 J/(kg·K)',
      resistance: '1596.518 K/W',
    },
    result: { 'time-constant': '1 s' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 5.1: the bead of a thermocouple, 0.706 mm, in 400 W/(m²·K)',
    tolerance: 0.0011,
  },
  compute(x, y) {
    y[0] = bodyTimeConstant(x[0], x[1], x[2], x[3]);
    y[1] = y[0] / x[3];
    return 'solved';
  },
};
