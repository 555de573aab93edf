import type { Formula } from '../../formula.ts';
import { preloadFromTorque } from '../../mechanics/nut-factor.ts';

export const torquePreloadFormula: Formula = {
  name: 'torque-preload',
  title: 'preload of a screw from its torque, by the nut factor',
  equation: 'F = T/(K·d)',
  room: 'plate and pads',
  inputs: [
    { name: 'torque', symbol: 'T', title: 'tightening torque', kind: 'torque', unit: 'N·m', low: 0 },
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
  outputs: [{ name: 'preload', title: 'preload', kind: 'force', unit: 'N' }],
  source: "Shigley's Mechanical Engineering Design, section 8-8; NASA TM-106943, 1995",
  requires: [],
  valid: [{ says: 'nut factor from 0.08 to 0.35', holds: (x) => x[1] >= 0.08 && x[1] <= 0.35 }],
  example: {
    inputs: { torque: '231 lbf·in', 'nut-factor': '0.20', diameter: '0.3125 in' },
    result: { preload: '3702 lbf' },
    source: 'torque-tension table for SAE J429 grade 5, 5/16-24, K = 0.20, as reprinted in a machine manual',
    tolerance: 0.0025,
  },
  compute(x, y) {
    y[0] = preloadFromTorque(x[0], x[1], x[2]);
    return 'solved';
  },
};
