import type { Formula } from '../../formula.ts';
import { finEfficiency } from '../../thermal/fin-efficiency.ts';

export const finEfficiencyFormula: Formula = {
  name: 'fin-efficiency',
  title: 'efficiency of a straight fin of constant thickness',
  equation: 'η = tanh(m·H)/(m·H), m = √(2·h/(k·t))',
  room: 'heat path',
  inputs: [
    {
      name: 'film',
      symbol: 'h',
      title: 'film coefficient between fin and air',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
      low: 0,
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
      name: 'height',
      symbol: 'H',
      title: 'height from root to tip; plus t/2 for a tip that is cooled too',
      kind: 'length',
      unit: 'mm',
      low: 0,
    },
  ],
  outputs: [{ name: 'efficiency', title: 'efficiency', kind: 'ratio', unit: '%' }],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6',
  requires: [],
  valid: [{ says: 'thin fin: thickness below a tenth of the height', holds: (x) => x[2] < 0.1 * x[3] }],
  example: {
    inputs: { film: '16 W/(m²·K)', conductivity: '200 W/(m·K)', thickness: '0.4 mm', height: '25 mm' },
    result: { efficiency: '92 %' },
    source: 'fin efficiency table at m·H = 0.5, fluidspad.com',
    tolerance: 0.005,
  },
  compute(x, y) {
    y[0] = finEfficiency(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
