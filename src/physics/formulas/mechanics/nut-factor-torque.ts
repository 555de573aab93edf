import type { Formula } from '../../formula.ts';
import { torqueForPreload } from '../../mechanics/nut-factor.ts';

export const nutFactorTorqueFormula: Formula = {
  name: 'nut-factor-torque',
  title: 'tightening torque for a preload, by the nut factor',
  equation: 'T = K·d·F',
  room: 'plate and pads',
  inputs: [
    { name: 'preload', symbol: 'F', title: 'preload', kind: 'force', unit: 'N', low: 0 },
    {
      name: 'nut-factor',
      symbol: 'K',
      title: '0.20 dry, 0.15 lubricated',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
    { name: 'diameter', symbol: 'd', title: 'nominal diameter', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'torque', title: 'tightening torque', kind: 'torque', unit: 'N·m' }],
  source: "Shigley's Mechanical Engineering Design, section 8-8; NASA TM-106943, 1995",
  requires: [],
  valid: [{ says: 'nut factor from 0.08 to 0.35', holds: (x) => x[1] >= 0.08 && x[1] <= 0.35 }],
  example: {
    inputs: { preload: '25000 lbf', 'nut-factor': '0.20', diameter: '0.75 in' },
    result: { torque: '3750 lbf·in' },
    source: "Shigley's Mechanical Engineering Design, example 8-3 (from memory): 3/4-16",
    tolerance: 0.0003,
  },
  compute(x, y) {
    y[0] = torqueForPreload(x[0], x[1], x[2]);
    return 'solved';
  },
};
