import { dividerGain } from '../../electrical/divider.ts';
import type { Formula } from '../../formula.ts';

const resistor = { kind: 'resistance', unit: 'Ω', low: 0 } as const;

export const senseDividerGainFormula: Formula = {
  name: 'sense-divider-gain',
  title: 'gain of a divider on the sense lines',
  equation: 'g = p/(p + s), p = R_p·R_in/(R_p + R_in)',
  room: 'power path',
  inputs: [
    { name: 'series', symbol: 's', title: 'all series resistance in the two sense lines', ...resistor },
    {
      name: 'parallel',
      symbol: 'R_p',
      title: 'resistor across the sense lines at the amplifier',
      ...resistor,
      lowOpen: true,
    },
    { name: 'input', symbol: 'R_in', title: "amplifier's own input resistance", ...resistor, lowOpen: true },
  ],
  outputs: [
    { name: 'gain', title: 'part of the sense voltage that reaches the amplifier', kind: 'ratio', unit: '1' },
    { name: 'factor', title: 'real power over reading', kind: 'ratio', unit: '1' },
  ],
  source: 'Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8.4.1',
  requires: [],
  valid: [
    {
      says: "series resistance up to a tenth of the amplifier's own: above, its input resistance, seldom known within 30 %, rules the gain",
      holds: (x) => x[0] <= 0.1 * x[2],
    },
  ],
  example: {
    inputs: { series: '10 Ω', parallel: '1250 Ω', input: '1 kΩ' },
    result: { gain: '0.982' },
    source: 'Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, table 2, INA212 with 10 Ω in each line',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = dividerGain(x[0], x[1], x[2]);
    y[1] = 1 / y[0];
    return 'solved';
  },
};
