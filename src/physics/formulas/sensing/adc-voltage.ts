import type { Formula } from '../../formula.ts';
import { adcStep, adcVoltage, quantisationUncertainty } from '../../sensing/adc.ts';

export const adcVoltageFormula: Formula = {
  name: 'adc-voltage',
  title: "voltage at the input from a converter's code, and what its resolution leaves open",
  equation: 'U = (n·q − U_off)/G, q = U_ref/2^N, u = q/(G·√12)',
  room: 'sensing',
  inputs: [
    { name: 'code', symbol: 'n', title: 'code, or the mean of several', kind: 'ratio', unit: '1', low: 0 },
    { name: 'bits', symbol: 'N', title: 'bits', kind: 'count', unit: '1', low: 1, high: 32 },
    { name: 'reference', symbol: 'U_ref', title: 'full scale', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    {
      name: 'gain',
      symbol: 'G',
      title: 'gain in front of the converter',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
    { name: 'offset', symbol: 'U_off', title: 'what the converter gets at 0 V in', kind: 'voltage', unit: 'mV' },
  ],
  outputs: [
    { name: 'voltage', title: 'voltage at the input', kind: 'voltage', unit: 'V' },
    { name: 'step', title: 'one step, at the input', kind: 'voltage', unit: 'mV' },
    { name: 'resolution', title: 'standard uncertainty from resolution', kind: 'voltage', unit: 'mV' },
  ],
  source: 'Analog Devices, MT-001; JCGM 100:2008 (GUM), F.2.2.1',
  requires: [{ says: 'code within the converter', holds: (x) => x[0] <= 2 ** x[1] - 1 }],
  valid: [
    {
      says: 'code clear of both ends: an end code says only "beyond"',
      holds: (x) => x[0] > 0 && x[0] < 2 ** x[1] - 1,
    },
    { says: 'whole number of bits', holds: (x) => Number.isInteger(x[1]) },
  ],
  example: {
    inputs: { code: '993', bits: '12', reference: '3.3 V', gain: '1', offset: '0 mV' },
    result: { step: '0.8057 mV', resolution: '0.2326 mV' },
    source: 'q and q/√12 of 12 bits over 3.3 V, as in Analog Devices, MT-001',
    tolerance: 2e-4,
  },
  compute(x, y) {
    const step = adcStep(x[2], x[1]);
    y[0] = adcVoltage(x[0], step, x[3], x[4]);
    y[1] = step / x[3];
    y[2] = quantisationUncertainty(y[1]);
    return 'solved';
  },
};
