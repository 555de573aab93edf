import { buckDuty } from '../../electrical/buck-duty.ts';
import { leastInputCapacitance, mostInputResistance } from '../../electrical/capacitor-loss.ts';
import type { Formula } from '../../formula.ts';

export const inputCapacitanceFormula: Formula = {
  name: 'input-capacitance',
  title: 'input capacitance and series resistance that keep the ripple voltage of a buck phase below a limit',
  equation: 'C = I·D/(ΔU_C·f), D = U_out/U_in, R = ΔU_R/(I + ΔI/2)',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'current of the phase', kind: 'current', unit: 'A', low: 0, lowOpen: true },
    {
      name: 'input-voltage',
      symbol: 'U_in',
      title: 'input voltage',
      kind: 'voltage',
      unit: 'V',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'output-voltage',
      symbol: 'U_out',
      title: 'output voltage',
      kind: 'voltage',
      unit: 'V',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'by-capacitance',
      symbol: 'ΔU_C',
      title: 'peak-to-peak ripple voltage that the capacitance may cause',
      kind: 'voltage',
      unit: 'mV',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'by-resistance',
      symbol: 'ΔU_R',
      title: 'ripple voltage that the series resistance may cause',
      kind: 'voltage',
      unit: 'mV',
      low: 0,
    },
    {
      name: 'frequency',
      symbol: 'f',
      title: 'switching frequency',
      kind: 'frequency',
      unit: 'kHz',
      low: 0,
      lowOpen: true,
    },
    { name: 'ripple', symbol: 'ΔI', title: 'peak-to-peak ripple of the phase', kind: 'current', unit: 'A', low: 0 },
  ],
  outputs: [
    { name: 'capacitance', title: 'least capacitance', kind: 'capacitance', unit: 'uF' },
    { name: 'resistance', title: 'largest series resistance', kind: 'resistance', unit: 'mΩ' },
  ],
  source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1',
  requires: [{ says: 'the output voltage is not above the input voltage', holds: (x) => x[2] <= x[1] }],
  valid: [{ says: 'continuous conduction: current above half the ripple', holds: (x) => x[0] >= x[6] / 2 }],
  example: {
    inputs: {
      current: '20 A',
      'input-voltage': '12 V',
      'output-voltage': '1.5 V',
      'by-capacitance': '100 mV',
      'by-resistance': '50 mV',
      frequency: '500 kHz',
      ripple: '2.66 A',
    },
    result: { capacitance: '50 uF' },
    source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = leastInputCapacitance(x[0], buckDuty(x[1], x[2]), x[3], x[5]);
    y[1] = mostInputResistance(x[4], x[0], x[6]);
    return 'solved';
  },
};
