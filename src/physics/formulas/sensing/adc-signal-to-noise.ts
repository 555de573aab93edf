import type { Formula } from '../../formula.ts';
import { idealSignalToNoise } from '../../sensing/adc.ts';

export const adcSignalToNoiseFormula: Formula = {
  name: 'adc-signal-to-noise',
  title: 'signal-to-noise ratio of an ideal converter for a full-scale sine',
  equation: 'SNR = 20·log10(2^N·√1.5) in decibels, about 6.02·N + 1.76',
  room: 'sensing',
  inputs: [{ name: 'bits', symbol: 'N', title: 'bits', kind: 'count', unit: '1', low: 1, high: 32 }],
  outputs: [
    {
      name: 'decibels',
      title: 'signal-to-noise ratio in decibels, over the band to half the sampling rate',
      kind: 'ratio',
      unit: '1',
    },
  ],
  source: 'Analog Devices, MT-001',
  requires: [],
  valid: [{ says: 'whole number of bits', holds: (x) => Number.isInteger(x[0]) }],
  example: {
    inputs: { bits: '12' },
    result: { decibels: '74' },
    source: 'Analog Devices, MT-001, 6.02·N + 1.76 for 12 bits',
    tolerance: 0.0007,
  },
  compute(x, y) {
    y[0] = idealSignalToNoise(x[0]);
    return 'solved';
  },
};
