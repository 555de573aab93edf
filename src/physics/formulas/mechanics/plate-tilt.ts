import type { Formula } from '../../formula.ts';
import { forceOnSecond, tiltOnTwo } from '../../mechanics/two-supports.ts';

const positive = { low: 0, lowOpen: true } as const;

export const plateTiltFormula: Formula = {
  name: 'plate-tilt',
  title: 'tilt of a rigid plate on two springs or pads',
  equation: 'θ = (F2/k2 − F1/k1)/L, F2 = F·x/L, F1 = F − F2; positive: the second sinks more',
  room: 'plate and pads',
  inputs: [
    { name: 'force', symbol: 'F', title: 'on the plate', kind: 'force', unit: 'N', low: 0 },
    { name: 'position', symbol: 'x', title: 'of the force from the first support', kind: 'length', unit: 'mm', low: 0 },
    { name: 'distance', symbol: 'L', title: 'of the supports', kind: 'length', unit: 'mm', ...positive },
    { name: 'first-stiffness', symbol: 'k1', title: 'first support', kind: 'stiffness', unit: 'N/mm', ...positive },
    { name: 'second-stiffness', symbol: 'k2', title: 'second support', kind: 'stiffness', unit: 'N/mm', ...positive },
  ],
  outputs: [
    { name: 'tilt', title: 'tilt', kind: 'angle', unit: 'deg' },
    { name: 'first-force', title: 'force on the first support', kind: 'force', unit: 'N' },
    { name: 'second-force', title: 'force on the second support', kind: 'force', unit: 'N' },
    { name: 'first-sink', title: 'how far the first sinks', kind: 'length', unit: 'mm' },
    { name: 'second-sink', title: 'how far the second sinks', kind: 'length', unit: 'mm' },
  ],
  source: 'law of the lever; R. C. Hibbeler, Engineering Mechanics: Statics, chapter 5',
  requires: [{ says: 'the force acts between the supports', holds: (x) => x[1] <= x[2] }],
  valid: [
    {
      says: 'tilt below 5°',
      holds: (x) => Math.abs(tiltOnTwo(x[0], x[1], 0, x[2], x[3], x[4])) < (5 * Math.PI) / 180,
    },
  ],
  example: {
    inputs: {
      force: '800 N',
      position: '1 m',
      distance: '3 m',
      'first-stiffness': '5 N/mm',
      'second-stiffness': '5 N/mm',
    },
    result: { tilt: '-1.02 deg' },
    source: 'R. C. Hibbeler, Engineering Mechanics: Statics, chapter 5, beam on two springs of 5 kN/m (from memory)',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = tiltOnTwo(x[0], x[1], 0, x[2], x[3], x[4]);
    y[2] = forceOnSecond(x[0], x[1], 0, x[2]);
    y[1] = x[0] - y[2];
    y[3] = y[1] / x[3];
    y[4] = y[2] / x[4];
    return 'solved';
  },
};
