import { platingTime } from '../../chemistry/plating.ts';
import type { Formula } from '../../formula.ts';

export const platingTimeFormula: Formula = {
  name: 'plating-time',
  title:
    'time to plate a mean thickness (nickel baths are toxic and cause cancer: use a commercial plater; local codes win)',
  equation: 't = s·ρ/(η·e·j)',
  room: 'chemistry',
  inputs: [
    { name: 'thickness', symbol: 's', title: 'mean thickness', kind: 'length', unit: 'µm', low: 0 },
    {
      name: 'current-density',
      symbol: 'j',
      title: 'current over plated area',
      kind: 'current-density',
      unit: 'A/dm²',
      low: 0,
      lowOpen: true,
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
  outputs: [{ name: 'time', title: 'time in the bath', kind: 'time', unit: 'min' }],
  source: "Faraday's laws of electrolysis; CODATA 2018",
  requires: [],
  valid: [
    {
      says: 'current density from 0.5 A/dm² to 12 A/dm², the range of published tables for nickel',
      holds: (x) => x[1] >= 50 && x[1] <= 1200,
    },
    { says: 'current efficiency of at least 85 %: below, much hydrogen is set free', holds: (x) => x[4] >= 0.85 },
  ],
  example: {
    inputs: {
      thickness: '6 µm',
      'current-density': '4 A/dm²',
      equivalent: '1.095 g/(A·h)',
      density: '8.907 g/cm³',
      efficiency: '95.5 %',
    },
    result: { time: '7.7 min' },
    source: 'finishingandcoating.com, Clarifying facts about nickel plating, table of times',
    tolerance: 0.005,
  },
  compute(x, y) {
    y[0] = platingTime(x[0], x[1], x[2], x[3], x[4]);
    return 'solved';
  },
};
