import type { Formula } from '../../formula.ts';
import { selfHeating } from '../../sensing/self-heating.ts';

export const selfHeatingFormula: Formula = {
  name: 'self-heating',
  title: 'how much a sensor warms itself',
  equation: 'ΔT = P/δ',
  room: 'sensing',
  inputs: [
    { name: 'power', symbol: 'P', title: 'power in the sensor', kind: 'power', unit: 'mW', low: 0 },
    {
      name: 'dissipation',
      symbol: 'δ',
      title: 'dissipation constant',
      kind: 'thermal-conductance',
      unit: 'mW/K',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'excess', title: 'excess temperature', kind: 'temperature-difference', unit: 'K' }],
  source: 'IEC 60539-1, dissipation factor',
  requires: [],
  valid: [{ says: 'excess up to 10 K', holds: (x) => x[0] <= 10 * x[1] }],
  example: {
    inputs: { power: '0.27225 mW', dissipation: '1.5 mW/K' },
    result: { excess: '0.1815 K' },
    source: 'closed form: 0.27225/1.5; 1.5 mW/K is stated for a small bead in air (EPCOS, B57861 data sheet, 2006)',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = selfHeating(x[0], x[1]);
    return 'solved';
  },
};
