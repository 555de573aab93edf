import type { Formula } from '../../formula.ts';
import { reversedResistance, thermalVoltage } from '../../sensing/four-wire.ts';

export const fourWireResistanceFormula: Formula = {
  name: 'four-wire-resistance',
  title: 'small resistance by four wires, with the current turned round against thermal voltages',
  equation: 'R = (U_f − U_r)/(2·I), U_th = (U_f + U_r)/2',
  room: 'sensing',
  inputs: [
    { name: 'forward', symbol: 'U_f', title: 'voltage with the current forward', kind: 'voltage', unit: 'mV' },
    { name: 'reversed', symbol: 'U_r', title: 'voltage with the current reversed', kind: 'voltage', unit: 'mV' },
    { name: 'current', symbol: 'I', title: 'current', kind: 'current', unit: 'A', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'resistance', title: 'resistance between the voltage leads', kind: 'resistance', unit: 'mΩ' },
    { name: 'thermal', title: 'thermal voltage taken out', kind: 'voltage', unit: 'uV' },
  ],
  source: 'Keithley, Low Level Measurements Handbook, 7th edition, current-reversal method',
  requires: [],
  valid: [
    {
      says: 'thermal voltage up to a tenth of the signal: more must be found, not averaged out',
      holds: (x) => Math.abs(thermalVoltage(x[0], x[1])) <= 0.05 * Math.abs(x[0] - x[1]),
    },
  ],
  example: {
    inputs: { forward: '10.013 mV', reversed: '-10.007 mV', current: '10 A' },
    result: { resistance: '1.001 mΩ', thermal: '3 uV' },
    source: 'closed form: (10.013 + 10.007)/20 and (10.013 − 10.007)/2',
    tolerance: 1e-9,
  },
  compute(x, y) {
    y[0] = reversedResistance(x[0], x[1], x[2]);
    y[1] = thermalVoltage(x[0], x[1]);
    return 'solved';
  },
};
