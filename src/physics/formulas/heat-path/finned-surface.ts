import type { Formula } from '../../formula.ts';
import { finnedConductance } from '../../thermal/finned-surface.ts';

export const finnedSurfaceFormula: Formula = {
  name: 'finned-surface',
  title: 'heat from a surface with fins',
  equation: 'q = G·θ, G = h·(N·η·Af + Ab)',
  room: 'heat path',
  inputs: [
    { name: 'film', symbol: 'h', title: 'film coefficient', kind: 'film-coefficient', unit: 'W/(m²·K)', low: 0 },
    { name: 'fins', symbol: 'N', title: 'number of fins', kind: 'count', unit: '1', low: 0 },
    { name: 'efficiency', symbol: 'η', title: 'efficiency of one fin', kind: 'ratio', unit: '%', low: 0, high: 1 },
    {
      name: 'fin-area',
      symbol: 'Af',
      title: 'area of one fin, as its efficiency refers to it',
      kind: 'area',
      unit: 'cm²',
      low: 0,
    },
    { name: 'bare-area', symbol: 'Ab', title: 'area of the root between the fins', kind: 'area', unit: 'cm²', low: 0 },
    { name: 'excess', symbol: 'θ', title: 'root above the air', kind: 'temperature-difference', unit: 'K', low: 0 },
  ],
  outputs: [
    { name: 'heat', title: 'heat to the air', kind: 'power', unit: 'W' },
    { name: 'conductance', title: 'heat for each kelvin', kind: 'thermal-conductance', unit: 'W/K' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6.5',
  requires: [],
  valid: [{ says: 'fins and root see the same air; efficiency of one fin at least 60 %', holds: (x) => x[2] >= 0.6 }],
  example: {
    inputs: {
      film: '50 W/(m²·K)',
      fins: '5',
      efficiency: '95 %',
      'fin-area': '105.49468 cm²',
      'bare-area': '188.49556 cm²',
      excess: '200 K',
    },
    result: { heat: '689.6 W' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 3.10: a cylinder with five annular fins',
    tolerance: 2e-5,
  },
  compute(x, y) {
    y[1] = finnedConductance(x[0], x[1], x[2], x[3], x[4]);
    y[0] = y[1] * x[5];
    return 'solved';
  },
};
