import { senseFilterError } from '../../electrical/sense-filter-error.ts';
import type { Formula } from '../../formula.ts';

export const senseFilterErrorFormula: Formula = {
  name: 'sense-filter-error',
  title: 'error from filter resistors before a current-sense amplifier',
  equation: 'e = 1 − R_b·R_int/(R_b·R_s + R_b·R_int + R_s·R_int)',
  room: 'power path',
  inputs: [
    {
      name: 'filter',
      symbol: 'R_s',
      title: 'filter resistor in each sense line',
      kind: 'resistance',
      unit: 'Ω',
      low: 0,
    },
    {
      name: 'internal',
      symbol: 'R_int',
      title: "amplifier's internal input resistor",
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'network',
      symbol: 'R_b',
      title: 'bias network between its inputs',
      kind: 'resistance',
      unit: 'Ω',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'error', title: 'part by which it reads low', kind: 'ratio', unit: '%' }],
  source: 'Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8.4.1, equations 1 and 2',
  requires: [],
  valid: [
    {
      says: 'filter resistors up to 10 % of the internal ones, which hold ±30 % only',
      holds: (x) => x[0] <= 0.1 * x[1],
    },
  ],
  example: {
    inputs: { filter: '10 Ω', internal: '1 kΩ', network: '1250 Ω' },
    result: { error: '1.77 %' },
    source: 'Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, table 2, INA212',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = senseFilterError(x[0], x[1], x[2]);
    return 'solved';
  },
};
