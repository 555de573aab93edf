import { platedThickness } from '../../chemistry/plating.ts';
import type { Formula } from '../../formula.ts';

export const platingThicknessFormula: Formula = {
  name: 'plating-thickness',
  title:
    'mean thickness of a plated layer (nickel baths are toxic and cause cancer: use a commercial plater; local codes win)',
  equation: 's = η·e·j·t/ρ',
  room: 'chemistry',
  inputs: [
    {
      name: 'current-density',
      symbol: 'j',
      title: 'current over plated area',
      kind: 'current-density',
      unit: 'A/dm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'time', symbol: 't', title: 'in the bath', kind: 'time', unit: 'min', low: 0 },
    {
      name: 'equivalent',
      symbol: 'e',
      title: 'mass for each charge; nickel 1.095 g/(A·h)',
      kind: 'electrochemical-equivalent',
      unit: 'g/(A·h)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'density',
      symbol: 'ρ',
      title: 'of the deposit; nickel 8.9 g/cm³',
      kind: 'density',
      unit: 'g/cm³',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'efficiency',
      symbol: 'η',
      title: 'current efficiency of the cathode; nickel about 95.5 %',
      kind: 'ratio',
      unit: '%',
      low: 0,
      lowOpen: true,
      high: 1,
    },
  ],
  outputs: [{ name: 'thickness', title: 'mean thickness', kind: 'length', unit: 'µm' }],
  source: "Faraday's laws of electrolysis; CODATA 2018",
  requires: [],
  valid: [
    {
      says: 'current density from 0.5 A/dm² to 12 A/dm², the range of published tables for nickel',
      holds: (x) => x[0] >= 50 && x[0] <= 1200,
    },
    { says: 'current efficiency of at least 85 %: below, much hydrogen is set free', holds: (x) => x[4] >= 0.85 },
  ],
  example: {
    inputs: {
      'current-density': '2 A/dm²',
      time: '30 min',
      equivalent: '1.095 g/(A·h)',
      density: '8.908 g/cm³',
      efficiency: '95 %',
    },
    result: { thickness: '11.7 µm' },
    source: 'tools.moldchem.com, plating thickness, worked case',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = platedThickness(x[0], x[1], x[2], x[3], x[4]);
    return 'solved';
  },
};
