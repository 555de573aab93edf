import type { Formula } from '../../formula.ts';
import { helicalSpringRate } from '../../mechanics/stiffness.ts';

const positive = { low: 0, lowOpen: true } as const;

export const springRateFormula: Formula = {
  name: 'spring-rate',
  title: 'rate of a compression spring, and its force',
  equation: 'k = G·d⁴/(8·D³·n), F = k·s',
  room: 'plate and pads',
  inputs: [
    { name: 'shear-modulus', symbol: 'G', title: 'of the wire', kind: 'pressure', unit: 'GPa', ...positive },
    { name: 'wire', symbol: 'd', title: 'diameter of the wire', kind: 'length', unit: 'mm', ...positive },
    { name: 'coil', symbol: 'D', title: 'mean diameter of the coil', kind: 'length', unit: 'mm', ...positive },
    { name: 'coils', symbol: 'n', title: 'active coils', kind: 'ratio', unit: '1', ...positive },
    { name: 'compression', symbol: 's', title: 'compression', kind: 'length', unit: 'mm', low: 0 },
  ],
  outputs: [
    { name: 'rate', title: 'rate', kind: 'stiffness', unit: 'N/mm' },
    { name: 'force', title: 'force', kind: 'force', unit: 'N' },
  ],
  source: "EN 13906-1; Shigley's Mechanical Engineering Design, equation 10-9",
  requires: [{ says: 'the coil is wider than the wire', holds: (x) => x[2] > x[1] }],
  valid: [
    { says: 'coil 4 to 20 times as wide as the wire', holds: (x) => x[2] >= 4 * x[1] && x[2] <= 20 * x[1] },
    { says: 'at least 2 active coils', holds: (x) => x[3] >= 2 },
  ],
  example: {
    inputs: { 'shear-modulus': '81.5 GPa', wire: '5 mm', coil: '34.6 mm', coils: '9.5', compression: '17.3 mm' },
    result: { rate: '16.181 N/mm', force: '280 N' },
    source: 'verification of a compression spring by EN 13906-1, A. Dewispelaere, 2021 (an engineering office)',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = helicalSpringRate(x[0], x[1], x[2], x[3]);
    y[1] = y[0] * x[4];
    return 'solved';
  },
};
