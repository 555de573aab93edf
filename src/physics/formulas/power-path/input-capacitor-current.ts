import { buckDuty } from '../../electrical/buck-duty.ts';
import { inputCapacitorCurrent } from '../../electrical/input-capacitor-current.ts';
import type { Formula } from '../../formula.ts';

export const inputCapacitorCurrentFormula: Formula = {
  name: 'input-capacitor-current',
  title: 'ripple current of the input capacitors of a multiphase buck converter',
  equation:
    'I = √(K1²·I_out² + K2²·ΔI²), D = U_out/U_in, m = ⌈N·D⌉, K1² = (N·D − m + 1)·(m − N·D)/N², K2² = [m²·(N·D − m + 1)³ + (m − 1)²·(m − N·D)³]/(12·N²·D²)',
  room: 'power path',
  inputs: [
    { name: 'phases', symbol: 'N', title: 'active phases', kind: 'count', unit: '1', low: 1, high: 100 },
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
      name: 'output-current',
      symbol: 'I_out',
      title: 'output current of all phases together',
      kind: 'current',
      unit: 'A',
      low: 0,
    },
    { name: 'ripple', symbol: 'ΔI', title: 'peak-to-peak ripple of one phase', kind: 'current', unit: 'A', low: 0 },
  ],
  outputs: [
    { name: 'capacitor-current', title: 'rms current of all input capacitors together', kind: 'current', unit: 'A' },
  ],
  source: 'Intersil, ISL6366 data sheet, equations 49–51',
  requires: [
    { says: 'the output voltage is not above the input voltage', holds: (x) => x[2] <= x[1] },
    { says: 'phases are a whole number', holds: (x) => Number.isInteger(x[0]) },
  ],
  valid: [
    {
      says: 'continuous conduction: current of a phase above half its ripple',
      holds: (x) => x[3] / x[0] >= x[4] / 2,
    },
  ],
  example: {
    inputs: {
      phases: '2',
      'input-voltage': '10.8 V',
      'output-voltage': '1.5 V',
      'output-current': '32 A',
      ripple: '2.66 A',
    },
    result: { 'capacitor-current': '7.2 A' },
    source: 'Texas Instruments, TPS40140 data sheet SLUS660H, 2013, two-phase example',
    tolerance: 0.005,
  },
  compute(x, y) {
    y[0] = inputCapacitorCurrent(x[0], buckDuty(x[1], x[2]), x[3], x[4]);
    return 'solved';
  },
};
