import type { Formula } from '../../formula.ts';
import { annularFinEfficiency } from '../../thermal/annular-fin.ts';

export const annularFinEfficiencyFormula: Formula = {
  name: 'annular-fin-efficiency',
  title: 'efficiency of an annular fin on a tube or a boss',
  equation:
    'η = (2·r1/(m·(r2c² − r1²)))·(K1(m·r1)·I1(m·r2c) − I1(m·r1)·K1(m·r2c))/(I0(m·r1)·K1(m·r2c) + K0(m·r1)·I1(m·r2c)), m = √(2·h/(k·t)), r2c = r2 + t/2; heat for each kelvin G = η·h·2·π·(r2c² − r1²)',
  room: 'heat path',
  inputs: [
    {
      name: 'film',
      symbol: 'h',
      title: 'film coefficient',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the fin',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'thickness',
      symbol: 't',
      title: 'thickness of the fin',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'root-radius',
      symbol: 'r1',
      title: 'radius of the root',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    { name: 'tip-radius', symbol: 'r2', title: 'radius of the tip', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'efficiency', title: 'efficiency', kind: 'ratio', unit: '%' },
    {
      name: 'conductance',
      title: 'heat for each kelvin of the root above the air',
      kind: 'thermal-conductance',
      unit: 'mW/K',
    },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 3.91',
  requires: [
    { says: 'tip radius larger than root radius', holds: (x) => x[4] > x[3] },
    {
      says: 'tip not so far away that the Bessel functions overflow: m·r2 below 300',
      holds: (x) => Math.sqrt((2 * x[0]) / (x[1] * x[2])) * (x[4] + x[2] / 2) < 300,
    },
  ],
  valid: [{ says: 'thin fin: h·t/k below 0.2', holds: (x) => x[0] * x[2] < 0.2 * x[1] }],
  example: {
    inputs: {
      film: '60 W/(m²·K)',
      conductivity: '180 W/(m·K)',
      thickness: '2 mm',
      'root-radius': '15 mm',
      'tip-radius': '30 mm',
    },
    result: { efficiency: '96 %', conductance: '266.3 mW/K' },
    source: 'Çengel, Heat and Mass Transfer, example 3-12: 0.96, 25.3 W at 95 K (inputs read, results from memory)',
    tolerance: 0.002,
  },
  compute(x, y) {
    const corrected = x[4] + x[2] / 2;
    y[0] = annularFinEfficiency(x[0], x[1], x[2], x[3], x[4]);
    y[1] = y[0] * x[0] * 2 * Math.PI * (corrected * corrected - x[3] * x[3]);
    return 'solved';
  },
};
