import { buckDuty } from '../../electrical/buck-duty.ts';
import { inductorRipple } from '../../electrical/buck-ripple.ts';
import { peakCurrent, rmsCurrent } from '../../electrical/inductor-current.ts';
import type { Formula } from '../../formula.ts';

const positive = { low: 0, lowOpen: true } as const;

export const inductorRippleFormula: Formula = {
  name: 'inductor-ripple',
  title: 'ripple, peak and rms current in the inductor of one buck phase',
  equation: 'ΔI = (U_in − U_out)·U_out/(U_in·L·f), I_peak = I + ΔI/2, I_rms = √(I² + ΔI²/12)',
  room: 'power path',
  inputs: [
    { name: 'input-voltage', symbol: 'U_in', title: 'input voltage', kind: 'voltage', unit: 'V', ...positive },
    { name: 'output-voltage', symbol: 'U_out', title: 'output voltage', kind: 'voltage', unit: 'V', ...positive },
    { name: 'inductance', symbol: 'L', title: 'at the working current', kind: 'inductance', unit: 'nH', ...positive },
    { name: 'frequency', symbol: 'f', title: 'switching frequency', kind: 'frequency', unit: 'kHz', ...positive },
    { name: 'current', symbol: 'I', title: 'average current of the phase', kind: 'current', unit: 'A', low: 0 },
  ],
  outputs: [
    { name: 'ripple', title: 'peak-to-peak ripple', kind: 'current', unit: 'A' },
    { name: 'peak', title: 'peak current', kind: 'current', unit: 'A' },
    { name: 'rms', title: 'rms current', kind: 'current', unit: 'A' },
    { name: 'duty', title: 'duty, losses neglected', kind: 'ratio', unit: '1' },
  ],
  source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1',
  requires: [{ says: 'the output voltage lies below the input voltage', holds: (x) => x[1] < x[0] }],
  valid: [
    {
      says: 'continuous conduction: current above half the ripple',
      holds: (x) => x[4] >= inductorRipple(x[0], x[1], x[2], x[3]) / 2,
    },
  ],
  example: {
    inputs: {
      'input-voltage': '13.2 V',
      'output-voltage': '1.5 V',
      inductance: '1 µH',
      frequency: '500 kHz',
      current: '20 A',
    },
    result: { ripple: '2.66 A' },
    source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1, ripple with 1 µH at the highest input',
    tolerance: 0.001,
  },
  compute(x, y) {
    const ripple = inductorRipple(x[0], x[1], x[2], x[3]);
    y[0] = ripple;
    y[1] = peakCurrent(x[4], ripple);
    y[2] = rmsCurrent(x[4], ripple);
    y[3] = buckDuty(x[0], x[1]);
    return 'solved';
  },
};
