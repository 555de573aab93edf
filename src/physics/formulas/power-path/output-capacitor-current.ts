import { capacitorLoss, outputCapacitorCurrent } from '../../electrical/capacitor-loss.ts';
import type { Formula } from '../../formula.ts';

export const outputCapacitorCurrentFormula: Formula = {
  name: 'output-capacitor-current',
  title: "current and loss of a buck converter's output capacitors",
  equation: 'I = ΔI/(2·√3), P = I²·R',
  room: 'power path',
  inputs: [
    { name: 'ripple', symbol: 'ΔI', title: 'peak-to-peak ripple that they carry', kind: 'current', unit: 'A', low: 0 },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'series resistance of all together',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
    },
  ],
  outputs: [
    { name: 'current', title: 'rms current of all together', kind: 'current', unit: 'A' },
    { name: 'loss', title: 'loss of all together', kind: 'power', unit: 'mW' },
  ],
  source: 'ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021',
  requires: [],
  valid: [{ says: 'series resistance up to 1 Ω: above, the load takes part of the ripple', holds: (x) => x[1] <= 1 }],
  example: {
    inputs: { ripple: '0.620567 A', resistance: '1 mΩ' },
    result: { current: '0.17914 A', loss: '0.0321 mW' },
    source:
      'ROHM, Efficiency of Buck Converter, application note 64AN035E rev. 2, 2021, worked out independently: 12 V to 5 V, 4.7 µH, 1 MHz',
    tolerance: 0.0016,
  },
  compute(x, y) {
    y[0] = outputCapacitorCurrent(x[0]);
    y[1] = capacitorLoss(y[0], x[1]);
    return 'solved';
  },
};
