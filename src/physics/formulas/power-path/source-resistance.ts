import { sourceResistance } from '../../electrical/constant-power-droop.ts';
import type { Formula } from '../../formula.ts';

export const sourceResistanceFormula: Formula = {
  name: 'source-resistance',
  title: 'resistance of a source from its voltage at no load and under load',
  equation: 'R = (U0 − U)/I',
  room: 'power path',
  inputs: [
    { name: 'no-load', symbol: 'U0', title: 'voltage at no load', kind: 'voltage', unit: 'V', low: 0, lowOpen: true },
    { name: 'loaded', symbol: 'U', title: 'voltage at the current', kind: 'voltage', unit: 'V', low: 0 },
    { name: 'current', symbol: 'I', title: 'current', kind: 'current', unit: 'A', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'resistance', title: 'of source, cable and connectors together', kind: 'resistance', unit: 'mΩ' }],
  source: "Thévenin's theorem",
  requires: [{ says: 'the voltage under load is not above that at no load', holds: (x) => x[1] <= x[0] }],
  valid: [
    {
      says: 'drop up to half of the voltage at no load: beyond, the supply is at its limit',
      holds: (x) => x[1] >= 0.5 * x[0],
    },
  ],
  example: {
    inputs: { 'no-load': '5 V', loaded: '4.5742 V', current: '0.5 A' },
    result: { resistance: '0.8516 Ω' },
    source:
      'Copper Wire Tables, National Bureau of Standards Handbook 100, 1966, worked out by hand: 4 m of AWG 28 at 212.9 mΩ/m',
    tolerance: 1e-5,
  },
  compute(x, y) {
    y[0] = sourceResistance(x[0], x[1], x[2]);
    return 'solved';
  },
};
