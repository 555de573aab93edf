import { supplyVoltage } from '../../electrical/supply-droop.ts';
import type { Formula } from '../../formula.ts';

export const supplyDroopFormula: Formula = {
  name: 'supply-droop',
  title: 'voltage of a supply under a current',
  equation: 'U = U0 − I·R',
  room: 'power path',
  inputs: [
    { name: 'no-load', symbol: 'U0', title: 'voltage at no load', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    { name: 'current', symbol: 'I', title: 'current', kind: 'current', unit: 'A', low: 0 },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'of source, cable and connectors, both ways',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
    },
  ],
  outputs: [
    { name: 'voltage', title: 'voltage under load', kind: 'voltage', unit: 'V' },
    { name: 'drop', title: 'voltage lost on the way', kind: 'voltage', unit: 'mV' },
  ],
  source: "Thévenin's theorem",
  requires: [{ says: 'the drop does not exceed the voltage at no load', holds: (x) => x[1] * x[2] <= x[0] }],
  valid: [
    {
      says: 'drop up to a tenth of the voltage at no load: beyond, most machines switch off',
      holds: (x) => x[1] * x[2] <= 0.1 * x[0],
    },
  ],
  example: {
    inputs: { 'no-load': '5 V', current: '0.5 A', resistance: '0.8516 Ω' },
    result: { voltage: '4.5742 V' },
    source:
      'Copper Wire Tables, National Bureau of Standards Handbook 100, 1966, worked out by hand: 4 m of AWG 28 at 212.9 mΩ/m',
    tolerance: 1e-4,
  },
  compute(x, y) {
    y[0] = supplyVoltage(x[0], x[1], x[2]);
    y[1] = x[0] - y[0];
    return 'solved';
  },
};
