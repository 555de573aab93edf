import type { Formula } from '../../formula.ts';
import { cutoffFrequency, noiseBandwidth, settlingTime } from '../../sensing/rc-filter.ts';

export const rcSettlingFormula: Formula = {
  name: 'rc-settling',
  title: 'how long an RC filter takes to settle for a converter, and what it lets through',
  equation: 't = R·C·ln(2^N/p), f_c = 1/(2π·R·C), B = 1/(4·R·C)',
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
    { name: 'bits', symbol: 'N', title: 'bits', kind: 'count', unit: '1', low: 1, high: 32 },
    {
      name: 'part',
      symbol: 'p',
      title: 'part of one step to settle to, usually 0.5',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
      high: 1,
    },
  ],
  outputs: [
    { name: 'time', title: 'settling time after a full-scale step', kind: 'time', unit: 'us' },
    { name: 'cutoff', title: 'cut-off frequency', kind: 'frequency', unit: 'Hz' },
    { name: 'noise-bandwidth', title: 'noise bandwidth', kind: 'frequency', unit: 'Hz' },
  ],
  source: 'Texas Instruments, Analog Engineer’s Pocket Reference SLYW038',
  requires: [],
  valid: [{ says: 'whole number of bits', holds: (x) => Number.isInteger(x[2]) }],
  example: {
    inputs: { resistance: '100 kΩ', capacitance: '10 pF', bits: '12', part: '0.125' },
    result: { time: '10.4 us' },
    source: '3roam, settling time of an RC circuit: 12 bits to an eighth of a step, 100 kΩ, 10 pF',
    tolerance: 0.005,
  },
  compute(x, y) {
    y[0] = settlingTime(x[0], x[1], x[3] / 2 ** x[2]);
    y[1] = cutoffFrequency(x[0], x[1]);
    y[2] = noiseBandwidth(x[0], x[1]);
    return 'solved';
  },
};
