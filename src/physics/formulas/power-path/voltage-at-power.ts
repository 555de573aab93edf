import { voltageAtPower } from '../../electrical/constant-power-droop.ts';
import type { Formula } from '../../formula.ts';

export const voltageAtPowerFormula: Formula = {
  name: 'voltage-at-power',
  title: 'voltage at a load that takes a constant power',
  equation: 'U = U0/2 + √(U0²/4 − P·R)',
  room: 'power path',
  inputs: [
    { name: 'no-load', symbol: 'U0', title: 'voltage at no load', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    { name: 'power', symbol: 'P', title: 'power taken at the load', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'of source, cable and connectors, both ways',
      kind: 'resistance',
      unit: 'mΩ',
      low: 0,
    },
  ],
  outputs: [
    { name: 'voltage', title: 'voltage at the load', kind: 'voltage', unit: 'V' },
    { name: 'current', title: 'current', kind: 'current', unit: 'A' },
    { name: 'lost', title: 'power lost on the way', kind: 'power', unit: 'W' },
  ],
  source: "Ohm's law",
  requires: [
    { says: 'power up to U0²/(4·R): above, the voltage collapses', holds: (x) => x[1] * x[2] <= (x[0] * x[0]) / 4 },
  ],
  valid: [
    { says: 'drop up to 10 %: above, most machines switch off', holds: (x) => x[1] * x[2] <= 0.09 * x[0] * x[0] },
  ],
  example: {
    inputs: { 'no-load': '20 V', power: '97.5 W', resistance: '0.1 Ω' },
    result: { voltage: '19.5 V', current: '5 A' },
    source: "Ohm's law worked out by hand: 5 A through 0.1 Ω is 0.5 V, and 19.5 V times 5 A is 97.5 W",
    tolerance: 0.0001,
  },
  compute(x, y) {
    const voltage = voltageAtPower(x[0], x[1], x[2]) ?? Number.NaN;
    y[0] = voltage;
    y[1] = x[1] / voltage;
    y[2] = y[1] * y[1] * x[2];
    return 'solved';
  },
};
