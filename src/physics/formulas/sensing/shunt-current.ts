import type { Formula } from '../../formula.ts';
import { shuntCurrent } from '../../sensing/shunt-current.ts';

export const shuntCurrentFormula: Formula = {
  name: 'shunt-current',
  title: 'current through a shunt from the output of its amplifier',
  equation: 'I = (U − U0)/(G·R)',
  room: 'sensing',
  inputs: [
    { name: 'output', symbol: 'U', title: "amplifier's output", kind: 'voltage', unit: 'V' },
    { name: 'at-no-current', symbol: 'U0', title: 'output at no current', kind: 'voltage', unit: 'V' },
    { name: 'gain', symbol: 'G', title: 'gain', kind: 'ratio', unit: '1', low: 0, lowOpen: true },
    {
      name: 'shunt',
      symbol: 'R',
      title: 'resistance of the shunt',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'current', title: 'current', kind: 'current', unit: 'A' },
    { name: 'heat', title: 'power in the shunt', kind: 'power', unit: 'mW' },
  ],
  source: 'Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8',
  requires: [],
  valid: [
    {
      says: 'up to 200 mV across the shunt, as sense amplifiers take',
      holds: (x) => Math.abs(x[0] - x[1]) <= 0.2 * x[2],
    },
  ],
  example: {
    inputs: { output: '2.65 V', 'at-no-current': '1.65 V', gain: '50', shunt: '5 mΩ' },
    result: { current: '4 A', heat: '80 mW' },
    source: 'closed form: 1 V over a gain of 50 is 20 mV, over 5 mΩ 4 A, 80 mW',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = shuntCurrent(x[0], x[1], x[2], x[3]);
    y[1] = y[0] * y[0] * x[3];
    return 'solved';
  },
};
