import type { Formula } from '../../formula.ts';
import { stressArea } from '../../mechanics/thread.ts';

const positive = { low: 0, lowOpen: true } as const;

export const screwStressFormula: Formula = {
  name: 'screw-stress',
  title: 'stress area of a metric screw, and the tension in it',
  equation: 'σ = F/A, A = (π/4)·(d − 0.9382·P)²',
  room: 'plate and pads',
  inputs: [
    { name: 'preload', symbol: 'F', title: 'preload', kind: 'force', unit: 'N', low: 0 },
    { name: 'diameter', symbol: 'd', title: 'nominal diameter', kind: 'length', unit: 'mm', ...positive },
    { name: 'pitch', symbol: 'P', title: 'pitch', kind: 'length', unit: 'mm', ...positive },
  ],
  outputs: [
    { name: 'area', title: 'stress area', kind: 'area', unit: 'mm²' },
    { name: 'stress', title: 'tension', kind: 'pressure', unit: 'MPa' },
  ],
  source: 'ISO 898-1, nominal stress area',
  requires: [{ says: 'the pitch is less than half the diameter', holds: (x) => x[2] < x[1] / 2 }],
  valid: [{ says: 'diameter from 1 mm to 39 mm', holds: (x) => x[1] >= 1e-3 && x[1] <= 0.039 }],
  example: {
    inputs: { preload: '4020 N', diameter: '3 mm', pitch: '0.5 mm' },
    result: { area: '5.03 mm²', stress: '800 MPa' },
    source: 'ISO 898-1, M3: nominal stress area; least ultimate load of class 8.8 at 800 MPa',
    tolerance: 0.0015,
  },
  compute(x, y) {
    y[0] = stressArea(x[1], x[2]);
    y[1] = x[0] / y[0];
    return 'solved';
  },
};
