import { platedMass } from '../../chemistry/plating.ts';
import type { Formula } from '../../formula.ts';

export const platedMassFormula: Formula = {
  name: 'plated-mass',
  title:
    'mass of metal that a charge plates (nickel baths are toxic and cause cancer: use a commercial plater; local codes win)',
  equation: 'm = η·e·I·t',
  room: 'chemistry',
  inputs: [
    { name: 'current', symbol: 'I', title: 'current', kind: 'current', unit: 'A', low: 0 },
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
  outputs: [{ name: 'mass', title: 'mass of metal', kind: 'mass', unit: 'g' }],
  source: "Faraday's laws of electrolysis; CODATA 2018",
  requires: [],
  valid: [
    { says: 'current efficiency of at least 85 %: below, much hydrogen is set free', holds: (x) => x[3] >= 0.85 },
  ],
  example: {
    inputs: { current: '2 A', time: '30 min', equivalent: '1.095 g/(A·h)', efficiency: '95 %' },
    result: { mass: '1.04 g' },
    source: 'tools.moldchem.com, plating thickness, worked case',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = platedMass(x[0] * x[1], x[2], x[3]);
    return 'solved';
  },
};
