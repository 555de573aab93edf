import { agingFactor } from '../../electrical/arrhenius.ts';
import type { Formula } from '../../formula.ts';

export const agingFactorFormula: Formula = {
  name: 'aging-factor',
  title: 'how many times faster something ages at a higher temperature',
  equation: 'A = exp(E/k·(1/T1 − 1/T2))',
  room: 'power path',
  inputs: [
    {
      name: 'activation',
      symbol: 'E',
      title: 'activation energy of the mechanism',
      kind: 'energy',
      unit: 'eV',
      low: 0,
    },
    {
      name: 'temperature',
      symbol: 'T1',
      title: 'one temperature',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'higher',
      symbol: 'T2',
      title: 'other temperature',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'factor', title: 'rate at T2 over rate at T1', kind: 'ratio', unit: '1' }],
  source: 'JEDEC dictionary, acceleration factor, temperature (JEP122, JESD74); CODATA 2018',
  requires: [],
  valid: [{ says: 'activation energy from 0.3 eV to 1.5 eV', holds: (x) => x[0] >= 4.8e-20 && x[0] <= 2.41e-19 }],
  example: {
    inputs: { activation: '0.323 eV', temperature: '35 °C', higher: '70 °C' },
    result: { factor: '3.46' },
    source: 'ReliaWiki, Arrhenius-exponential model, after Yang, Life Cycle Reliability Engineering, 2007, example 7.1',
    tolerance: 0.0015,
  },
  compute(x, y) {
    y[0] = agingFactor(x[0], x[1], x[2]);
    return 'solved';
  },
};
