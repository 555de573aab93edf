import { electrochemicalEquivalent } from '../../chemistry/electrochemical-equivalent.ts';
import type { Formula } from '../../formula.ts';

export const electrochemicalEquivalentFormula: Formula = {
  name: 'electrochemical-equivalent',
  title: 'mass of metal that a charge deposits, from its atomic weight',
  equation: 'e = A·(1 g/mol)/(n·F), F = 96 485.33 C/mol',
  room: 'chemistry',
  inputs: [
    {
      name: 'atomic-weight',
      symbol: 'A',
      title: 'standard atomic weight; nickel 58.6934',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'valence',
      symbol: 'n',
      title: 'electrons for each ion, its charge in the bath',
      kind: 'count',
      unit: '1',
      low: 1,
      high: 8,
    },
  ],
  outputs: [
    {
      name: 'equivalent',
      title: 'mass for each charge at full current efficiency',
      kind: 'electrochemical-equivalent',
      unit: 'g/(A·h)',
    },
  ],
  source: "Faraday's laws of electrolysis; CODATA 2018",
  requires: [],
  valid: [{ says: 'deposition from one kind of ion', holds: (x) => Number.isInteger(x[1]) }],
  example: {
    inputs: { 'atomic-weight': '58.6934', valence: '2' },
    result: { equivalent: '1.095 g/(A·h)' },
    source: 'Nickel Institute, Nickel Plating Handbook, 2014, m = 1.095·a·I·t (from memory)',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = electrochemicalEquivalent(1e-3 * x[0], x[1]);
    return 'solved';
  },
};
