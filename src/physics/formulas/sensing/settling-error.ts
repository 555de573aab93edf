import type { Formula } from '../../formula.ts';
import { settlingError } from '../../sensing/rc-filter.ts';

export const settlingErrorFormula: Formula = {
  name: 'settling-error',
  title: 'part of a step that a first-order filter still lacks after a time',
  equation: 'ε = exp(−t/(R·C)), N = t/(R·C·ln 2)',
  room: 'sensing',
  inputs: [
    {
      name: 'resistance',
      symbol: 'R',
      title: "resistance, the source's own included",
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    { name: 'capacitance', symbol: 'C', title: 'capacitance', kind: 'capacitance', unit: 'nF', low: 0, lowOpen: true },
    { name: 'time', symbol: 't', title: 'time since the step', kind: 'time', unit: 'us', low: 0 },
  ],
  outputs: [
    { name: 'left', title: 'part of the step that is left', kind: 'ratio', unit: '%' },
    { name: 'bits', title: 'bits it has settled to', kind: 'ratio', unit: '1' },
  ],
  source: 'Texas Instruments, Analog Engineer’s Pocket Reference SLYW038',
  requires: [],
  valid: [
    {
      says: 'time up to 25 time constants: beyond, leakage and soakage of the capacitor rule',
      holds: (x) => x[2] <= 25 * x[0] * x[1],
    },
  ],
  example: {
    inputs: { resistance: '1 kΩ', capacitance: '100 nF', time: '500 us' },
    result: { bits: '7.21' },
    source:
      'Texas Instruments, Analog Engineer’s Pocket Reference SLYW038D, settling of RC circuits, five time constants',
    tolerance: 0.0007,
  },
  compute(x, y) {
    y[0] = settlingError(x[0], x[1], x[2]);
    y[1] = x[2] / (x[0] * x[1] * Math.LN2);
    return 'solved';
  },
};
