import { phaseCurrent } from '../../electrical/phase-current.ts';
import { mismatchCurrent } from '../../electrical/phase-sharing.ts';
import type { Formula } from '../../formula.ts';

export const phaseSharingFormula: Formula = {
  name: 'phase-sharing',
  title: 'how two phases share a current without balancing',
  equation: 'I1 = I·R2/(R1 + R2) + ΔD·U_in/(R1 + R2)',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'output current of both', kind: 'current', unit: 'A', low: 0 },
    {
      name: 'first',
      symbol: 'R1',
      title: 'resistance of the first phase',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'second',
      symbol: 'R2',
      title: 'resistance of the second phase',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'duty-difference',
      symbol: 'ΔD',
      title: 'duty of the first less that of the second',
      kind: 'ratio',
      unit: '1',
      low: -1,
      high: 1,
    },
    { name: 'input', symbol: 'U_in', title: 'input voltage', kind: 'voltage', unit: 'V', low: 0 },
  ],
  outputs: [
    { name: 'first-current', title: 'current of the first phase', kind: 'current', unit: 'A' },
    { name: 'second-current', title: 'current of the second phase', kind: 'current', unit: 'A' },
    { name: 'moved', title: 'moved from one to the other by the duty', kind: 'current', unit: 'A' },
  ],
  source: "Kirchhoff's laws",
  requires: [],
  valid: [
    {
      says: 'current that moves below half of the output current: above, one phase drives the other',
      holds: (x) => Math.abs(x[3] * x[4]) <= 0.5 * x[0] * (x[1] + x[2]),
    },
  ],
  example: {
    inputs: { current: '60 A', first: '1.00 mΩ', second: '1.10 mΩ', 'duty-difference': '0', input: '12 V' },
    result: { 'first-current': '31.429 A', 'second-current': '28.571 A' },
    source: "Kirchhoff's laws worked out by hand: 60 A times 1.10/2.10",
    tolerance: 0.0001,
  },
  compute(x, y) {
    const conductances = 1 / x[1] + 1 / x[2];
    y[2] = mismatchCurrent(x[3], x[4], x[1], x[2]);
    y[0] = phaseCurrent(x[0], 1 / x[1], conductances) + y[2];
    y[1] = x[0] - y[0];
    return 'solved';
  },
};
