import { buckDuty } from '../../electrical/buck-duty.ts';
import { outputRipple } from '../../electrical/output-ripple-cancellation.ts';
import type { Formula } from '../../formula.ts';

export const outputRippleFormula: Formula = {
  name: 'output-ripple',
  title: 'ripple current of all phases of a buck converter together',
  equation: 'ΔI_all = ΔI·N·(D − m/N)·((m + 1)/N − D)/(D·(1 − D)), D = U_out/U_in, m = ⌊N·D⌋',
  room: 'power path',
  inputs: [
    { name: 'phases', symbol: 'N', title: 'phases, evenly interleaved', kind: 'count', unit: '1', low: 1, high: 100 },
    {
      name: 'input-voltage',
      symbol: 'U_in',
      title: 'input voltage',
      kind: 'voltage',
      unit: 'V',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'output-voltage',
      symbol: 'U_out',
      title: 'output voltage',
      kind: 'voltage',
      unit: 'V',
      low: 0,
      lowOpen: true,
    },
    { name: 'ripple', symbol: 'ΔI', title: 'peak-to-peak ripple of one phase', kind: 'current', unit: 'A', low: 0 },
  ],
  outputs: [
    { name: 'total', title: 'peak-to-peak ripple of all phases together', kind: 'current', unit: 'A' },
    { name: 'part', title: 'that over the ripple of one phase', kind: 'ratio', unit: '1' },
  ],
  source: 'Texas Instruments, SLUU195, 2004, equation 6',
  requires: [
    { says: 'the output voltage lies below the input voltage', holds: (x) => x[2] < x[1] },
    { says: 'phases are a whole number', holds: (x) => Number.isInteger(x[0]) },
  ],
  valid: [{ says: 'up to twelve phases: more are seldom evenly interleaved', holds: (x) => x[0] <= 12 }],
  example: {
    inputs: { phases: '3', 'input-voltage': '12 V', 'output-voltage': '1.5 V', ripple: '1 A' },
    result: { total: '0.71429 A', part: '0.71429' },
    source: 'Texas Instruments, SLUU195, 2004, equation 6, worked out independently: three phases, duty 0.125',
    tolerance: 1e-5,
  },
  compute(x, y) {
    const duty = buckDuty(x[1], x[2]);
    y[0] = outputRipple(x[0], duty, x[3]);
    y[1] = outputRipple(x[0], duty, 1);
    return 'solved';
  },
};
