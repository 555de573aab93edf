import { platingCharge } from '../../chemistry/plating.ts';
import type { Formula } from '../../formula.ts';

export const platingChargeFormula: Formula = {
  name: 'plating-charge',
  title:
    'charge to plate a mean thickness on an area (nickel baths are toxic and cause cancer: use a commercial plater; local codes win)',
  equation: 'Q = s·A·ρ/(η·e)',
  room: 'chemistry',
  inputs: [
    { name: 'thickness', symbol: 's', title: 'mean thickness', kind: 'length', unit: 'µm', low: 0 },
    {
      name: 'area',
      symbol: 'A',
      title: 'plated area, both sides where both are wet',
      kind: 'area',
      unit: 'cm²',
      low: 0,
    },
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
  outputs: [{ name: 'charge', title: 'charge', kind: 'charge', unit: 'Ah' }],
  source: "Faraday's laws of electrolysis; CODATA 2018",
  requires: [],
  valid: [
    { says: 'thickness up to 100 µm: thicker layers grow at the edges', holds: (x) => x[0] <= 1e-4 },
    { says: 'current efficiency of at least 85 %: below, much hydrogen is set free', holds: (x) => x[4] >= 0.85 },
  ],
  example: {
    inputs: {
      thickness: '100 µm',
      area: '400 cm²',
      equivalent: '4.0259 g/(A·h)',
      density: '10.5 g/cm³',
      efficiency: '100 %',
    },
    result: { charge: '37557 C' },
    source:
      'textbook exercise on a brass plate, philoid.com: 42 g of silver at 107.9 g/mol, charge worked out independently',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = platingCharge(x[0], x[1], x[2], x[3], x[4]);
    return 'solved';
  },
};
