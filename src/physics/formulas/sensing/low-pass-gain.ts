import type { Formula } from '../../formula.ts';
import { lowPassGain } from '../../sensing/rc-filter.ts';

export const lowPassGainFormula: Formula = {
  name: 'low-pass-gain',
  title: 'part of a sine that a first-order low-pass filter passes',
  equation: 'g = 1/√(1 + (f/f_c)²)',
  room: 'sensing',
  inputs: [
    { name: 'frequency', symbol: 'f', title: 'frequency of the sine', kind: 'frequency', unit: 'Hz', low: 0 },
    { name: 'cutoff', symbol: 'f_c', title: 'cut-off frequency', kind: 'frequency', unit: 'Hz', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'gain', title: 'part that passes', kind: 'ratio', unit: '1' },
    { name: 'decibels', title: 'the same in decibels', kind: 'ratio', unit: '1' },
  ],
  source: 'first-order system, closed form',
  requires: [],
  valid: [
    {
      says: 'up to a thousand times the cut-off frequency: beyond, strays of the parts rule',
      holds: (x) => x[0] <= 1000 * x[1],
    },
  ],
  example: {
    inputs: { frequency: '10 kHz', cutoff: '1591.549 Hz' },
    result: { decibels: '-16.072' },
    source: 'closed form, by an independent program: 1 kΩ and 100 nF at 10 kHz',
    tolerance: 1e-4,
  },
  compute(x, y) {
    y[0] = lowPassGain(x[0], x[1]);
    y[1] = 20 * Math.log10(y[0]);
    return 'solved';
  },
};
