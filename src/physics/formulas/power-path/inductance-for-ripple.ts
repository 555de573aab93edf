import { inductanceForRipple } from '../../electrical/buck-ripple.ts';
import type { Formula } from '../../formula.ts';

export const inductanceForRippleFormula: Formula = {
  name: 'inductance-for-ripple',
  title: 'inductance of a buck phase for a ripple current',
  equation: 'L = (U_in − U_out)·U_out/(U_in·ΔI·f)',
  room: 'power path',
  inputs: [
    { name: 'input', symbol: 'U_in', title: 'input voltage', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    { name: 'output', symbol: 'U_out', title: 'output voltage', kind: 'voltage', unit: 'V', low: 0 },
    {
      name: 'ripple',
      symbol: 'ΔI',
      title: 'peak-to-peak ripple current',
      kind: 'current',
      unit: 'A',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'frequency',
      symbol: 'f',
      title: 'switching frequency of the phase',
      kind: 'frequency',
      unit: 'kHz',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'inductance', title: 'least inductance', kind: 'inductance', unit: 'µH' }],
  source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1',
  requires: [{ says: 'output voltage below the input voltage', holds: (x) => x[1] <= x[0] }],
  valid: [
    { says: 'continuous conduction: duty from 1 % to 99 %', holds: (x) => x[1] >= 0.01 * x[0] && x[1] <= 0.99 * x[0] },
  ],
  example: {
    inputs: { input: '13.2 V', output: '1.5 V', ripple: '3 A', frequency: '500 kHz' },
    result: { inductance: '0.89 µH' },
    source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1, 15 % of 20 A',
    tolerance: 0.0045,
  },
  compute(x, y) {
    y[0] = inductanceForRipple(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
