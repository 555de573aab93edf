import { converterInputCurrent, efficiency } from '../../electrical/efficiency.ts';
import type { Formula } from '../../formula.ts';

export const converterEfficiencyFormula: Formula = {
  name: 'converter-efficiency',
  title: 'efficiency and input current of a converter from its loss',
  equation: 'η = P/(P + P_loss), I = (P + P_loss)/U',
  room: 'power path',
  inputs: [
    { name: 'output', symbol: 'P', title: 'output power', kind: 'power', unit: 'W', low: 0, lowOpen: true },
    { name: 'loss', symbol: 'P_loss', title: 'all losses', kind: 'power', unit: 'W', low: 0 },
    { name: 'input', symbol: 'U', title: 'input voltage', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'efficiency', title: 'efficiency', kind: 'ratio', unit: '%' },
    { name: 'current', title: 'input current', kind: 'current', unit: 'A' },
  ],
  source: 'conservation of energy',
  requires: [],
  valid: [{ says: 'loss below the output power', holds: (x) => x[1] <= x[0] }],
  example: {
    inputs: { output: '6.6 W', loss: '1.499 W', input: '12 V' },
    result: { efficiency: '81.5 %' },
    source:
      'Texas Instruments, LMR12015 data sheet SNVS817, section 8.2.1.10.8 (loss published; efficiency worked out independently)',
    tolerance: 0.0008,
  },
  compute(x, y) {
    y[0] = efficiency(x[0], x[1]);
    y[1] = converterInputCurrent(x[0], x[1], x[2]);
    return 'solved';
  },
};
