import { realPower } from '../../electrical/sense-real-power.ts';
import type { Formula } from '../../formula.ts';

export const senseRealPowerFormula: Formula = {
  name: 'sense-real-power',
  title: 'real power when a limiter that reads one sense resistor holds',
  equation: 'P = P_allowed·R_assumed/R',
  room: 'power path',
  inputs: [
    {
      name: 'allowed',
      symbol: 'P_allowed',
      title: 'power the limiter allows, by its own reading',
      kind: 'power',
      unit: 'W',
      low: 0,
    },
    {
      name: 'assumed',
      symbol: 'R_assumed',
      title: 'resistance the firmware believes in',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'effective',
      symbol: 'R',
      title: 'resistance that is really there',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'real-power', title: 'real power', kind: 'power', unit: 'W', unitOf: 'allowed' },
    { name: 'factor', title: 'real power over reading', kind: 'ratio', unit: '1' },
  ],
  source: "Ohm's law",
  requires: [],
  valid: [
    {
      says: 'resistance really there above a tenth of the assumed one: below, offset and joints rule the reading and the limiter hardly limits',
      holds: (x) => x[2] > 0.1 * x[1],
    },
  ],
  example: {
    inputs: { allowed: '10 mW', assumed: '0.5 mΩ', effective: '0.53 mΩ' },
    result: { factor: '0.943' },
    source:
      'two-pad sensing of 0.5 mΩ with two joints of 15 µΩ reads 6.0 % high (M. O’Sullivan, Analog Dialogue 46-06, 2012: sense value plus two joints), so real power is 1/1.06 of what is read',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = realPower(x[0], x[1], x[2]);
    y[1] = realPower(1, x[1], x[2]);
    return 'solved';
  },
};
