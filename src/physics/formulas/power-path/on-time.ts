import { buckDuty, onTime } from '../../electrical/buck-duty.ts';
import type { Formula } from '../../formula.ts';

export const onTimeFormula: Formula = {
  name: 'on-time',
  title: 'on-time and duty of a buck converter',
  equation: 't = U_out/(U_in·f)',
  room: 'power path',
  inputs: [
    { name: 'input', symbol: 'U_in', title: 'input voltage', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    { name: 'output', symbol: 'U_out', title: 'output voltage', kind: 'voltage', unit: 'V', low: 0 },
    {
      name: 'frequency',
      symbol: 'f',
      title: 'switching frequency of the phase',
      kind: 'frequency',
      unit: 'kHz',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'time', title: 'time that the high side conducts', kind: 'time', unit: 'ns' },
    { name: 'duty', title: 'duty', kind: 'ratio', unit: '%' },
  ],
  source: 'Linear Technology, LTC3728 data sheet, design example',
  requires: [{ says: 'output voltage below the input voltage', holds: (x) => x[1] <= x[0] }],
  valid: [
    { says: 'on-time of at least 20 ns: below, controllers skip pulses', holds: (x) => x[1] >= 20e-9 * x[0] * x[2] },
  ],
  example: {
    inputs: { input: '22 V', output: '1.8 V', frequency: '300 kHz' },
    result: { time: '273 ns' },
    source: 'Linear Technology, LTC3728 data sheet, design example',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[0] = onTime(x[0], x[1], x[2]);
    y[1] = buckDuty(x[0], x[1]);
    return 'solved';
  },
};
