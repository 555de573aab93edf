import { capacitorLoss } from '../../electrical/capacitor-loss.ts';
import type { Formula } from '../../formula.ts';

export const capacitorLossFormula: Formula = {
  name: 'capacitor-loss',
  title: "loss in a capacitor's series resistance",
  equation: 'P = I²·R',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'rms ripple current', kind: 'current', unit: 'A', low: 0 },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'series resistance at the frequency and temperature of the ripple',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
    },
  ],
  outputs: [{ name: 'loss', title: 'loss', kind: 'power', unit: 'mW' }],
  source: 'ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021',
  requires: [],
  valid: [{ says: 'series resistance up to 10 Ω', holds: (x) => x[1] <= 10 }],
  example: {
    inputs: { current: '1.479 A', resistance: '3 mΩ' },
    result: { loss: '6.562 mW' },
    source: 'ROHM, Efficiency of Buck Converter, application note 64AN035E rev. 2, 2021, worked out independently',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = capacitorLoss(x[0], x[1]);
    return 'solved';
  },
};
