import type { Formula } from '../../formula.ts';
import { contactShare, highestPressure, lowestPressure } from '../../mechanics/edge-pressure.ts';

const positive = { low: 0, lowOpen: true } as const;

export const diePressureFormula: Formula = {
  name: 'die-pressure',
  title: 'pressure on a die that is pressed off its centre',
  equation:
    'p = (F/(w·d))·(1 ± 6·e/w) for e ≤ w/6; beyond, p = 2·F/(3·d·(w/2 − e)) at the edge, the other edge lifts off',
  room: 'plate and pads',
  inputs: [
    { name: 'force', symbol: 'F', title: 'force on the die', kind: 'force', unit: 'N', low: 0 },
    { name: 'width', symbol: 'w', title: 'side along the offset', kind: 'length', unit: 'mm', ...positive },
    { name: 'depth', symbol: 'd', title: 'other side', kind: 'length', unit: 'mm', ...positive },
    { name: 'offset', symbol: 'e', title: 'of the force from the centre', kind: 'length', unit: 'mm', low: 0 },
  ],
  outputs: [
    { name: 'mean', title: 'mean pressure', kind: 'pressure', unit: 'kPa' },
    { name: 'highest', title: 'at the pressed edge', kind: 'pressure', unit: 'kPa' },
    { name: 'lowest', title: 'at the other edge', kind: 'pressure', unit: 'kPa' },
    { name: 'contact', title: 'share that touches', kind: 'ratio', unit: '%' },
  ],
  source: "theory of rigid footings; Roark's Formulas for Stress and Strain, section 12.4 (from memory)",
  requires: [{ says: 'the force acts on the die', holds: (x) => x[3] < x[1] / 2 }],
  valid: [{ says: 'the whole die touches: offset up to a sixth of the width', holds: (x) => x[3] <= x[1] / 6 }],
  example: {
    inputs: { force: '240 N', width: '15 mm', depth: '12 mm', offset: '1 mm' },
    result: { mean: '1333.3 kPa', highest: '1866.7 kPa', lowest: '800 kPa', contact: '100 %' },
    source: 'worked out by hand: 240 N/180 mm², times 1.4 and 0.6',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = x[0] / (x[1] * x[2]);
    y[1] = highestPressure(x[0], x[1], x[2], x[3]);
    y[2] = lowestPressure(x[0], x[1], x[2], x[3]);
    y[3] = contactShare(x[1], x[3]);
    return 'solved';
  },
};
