import type { Formula } from '../../formula.ts';
import { offsetCompensatedResistance } from '../../sensing/four-wire.ts';

export const offsetCompensatedResistanceFormula: Formula = {
  name: 'offset-compensated-resistance',
  title: 'small resistance by four wires, with the current on and off against thermal voltages',
  equation: 'R = (U_on − U_off)/I',
  room: 'sensing',
  inputs: [
    { name: 'on', symbol: 'U_on', title: 'voltage with the current on', kind: 'voltage', unit: 'mV' },
    { name: 'off', symbol: 'U_off', title: 'voltage with the current off', kind: 'voltage', unit: 'mV' },
    { name: 'current', symbol: 'I', title: 'current', kind: 'current', unit: 'A', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'resistance', title: 'resistance between the voltage leads', kind: 'resistance', unit: 'mΩ' }],
  source: 'Keithley, Low Level Measurements Handbook, 7th edition, offset-compensated ohms',
  requires: [],
  valid: [
    {
      says: 'voltage with the current off up to a tenth of the signal: more must be found, not taken off',
      holds: (x) => Math.abs(x[1]) <= 0.1 * Math.abs(x[0] - x[1]),
    },
  ],
  example: {
    inputs: { on: '10.013 mV', off: '0.003 mV', current: '10 A' },
    result: { resistance: '1.001 mΩ' },
    source: 'closed form: (10.013 − 0.003)/10',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = offsetCompensatedResistance(x[0], x[1], x[2]);
    return 'solved';
  },
};
