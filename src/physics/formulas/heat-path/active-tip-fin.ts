import type { Formula } from '../../formula.ts';
import { activeTipFinHeat } from '../../thermal/active-tip-fin.ts';

export const activeTipFinFormula: Formula = {
  name: 'active-tip-fin',
  title: 'heat from a fin of constant section whose tip is cooled too',
  equation: 'q = √(h·P·k·A)·θ·(sinh mL + (h/(m·k))·cosh mL)/(cosh mL + (h/(m·k))·sinh mL), m = √(h·P/(k·A))',
  room: 'heat path',
  inputs: [
    {
      name: 'film',
      symbol: 'h',
      title: 'film coefficient, also at the tip',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'perimeter',
      symbol: 'P',
      title: 'perimeter of the section',
      kind: 'length',
      unit: 'mm',
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
    { name: 'section', symbol: 'A', title: 'cross-section', kind: 'area', unit: 'mm²', low: 0, lowOpen: true },
    { name: 'length', symbol: 'L', title: 'length from root to tip', kind: 'length', unit: 'mm', low: 0 },
    { name: 'excess', symbol: 'θ', title: 'root above the air', kind: 'temperature-difference', unit: 'K', low: 0 },
  ],
  outputs: [{ name: 'heat', title: 'heat that the fin gives away', kind: 'power', unit: 'W' }],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 3.4, case A',
  requires: [],
  valid: [
    {
      says: 'slender fin: section over perimeter up to a sixteenth of the length, as of a rod four times as long as thick',
      holds: (x) => 16 * x[3] <= x[1] * x[4],
    },
  ],
  example: {
    inputs: {
      film: '100 W/(m²·K)',
      perimeter: '15.70796327 mm',
      conductivity: '398 W/(m·K)',
      section: '19.63495408 mm²',
      length: '50 mm',
      excess: '75 K',
    },
    result: { heat: '5.1601 W' },
    source:
      'boundary value problem of a copper rod, 5 mm thick and 50 mm long, solved by SciPy (solve_bvp), an independent program',
    tolerance: 2e-5,
  },
  compute(x, y) {
    y[0] = activeTipFinHeat(x[0], x[1], x[2], x[3], x[4], x[5]);
    return 'solved';
  },
};
