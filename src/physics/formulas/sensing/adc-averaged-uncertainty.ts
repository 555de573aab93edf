import type { Formula } from '../../formula.ts';
import { averagedUncertainty } from '../../sensing/adc.ts';

export const adcAveragedUncertaintyFormula: Formula = {
  name: 'adc-averaged-uncertainty',
  title: 'standard uncertainty of the mean of several readings, from resolution and noise',
  equation: 'u = √((q²/12 + σ²)/M) where σ ≥ q/2, else √(q²/12 + σ²/M)',
  room: 'sensing',
  inputs: [
    { name: 'step', symbol: 'q', title: 'step between neighbouring values', kind: 'voltage', unit: 'mV', low: 0 },
    {
      name: 'noise',
      symbol: 'σ',
      title: 'standard deviation of one reading before rounding',
      kind: 'voltage',
      unit: 'mV',
      low: 0,
    },
    {
      name: 'readings',
      symbol: 'M',
      title: 'readings, apart enough to be independent',
      kind: 'count',
      unit: '1',
      low: 1,
    },
  ],
  outputs: [
    { name: 'uncertainty', title: 'standard uncertainty of their mean', kind: 'voltage', unit: 'mV', unitOf: 'step' },
  ],
  source:
    'R. M. Gray and T. G. Stockham, Dithered quantizers, IEEE Trans. Inf. Theory 39 (1993) 805–812; the limit of half a step is common practice, no source',
  requires: [],
  valid: [{ says: 'whole number of readings', holds: (x) => Number.isInteger(x[2]) }],
  example: {
    inputs: { step: '0.805664 mV', noise: '0.0805664 mV', readings: '16' },
    result: { uncertainty: '0.2334457 mV' },
    source: 'closed form, by an independent program: 12 bits over 3.3 V, noise a tenth of a step',
    tolerance: 5e-6,
  },
  compute(x, y) {
    y[0] = averagedUncertainty(x[0], x[1], x[2]);
    return 'solved';
  },
};
