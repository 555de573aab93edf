import type { Formula } from '../../formula.ts';
import { betaResistance } from '../../sensing/ntc-beta.ts';

export const ntcBetaResistanceFormula: Formula = {
  name: 'ntc-beta-resistance',
  title: 'resistance of a thermistor at a temperature, by its β value',
  equation: 'R = R0·exp(β·(1/T − 1/T0))',
  room: 'sensing',
  inputs: [
    {
      name: 'nominal',
      symbol: 'R0',
      title: 'nominal resistance',
      kind: 'resistance',
      unit: 'kΩ',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'nominal-temperature',
      symbol: 'T0',
      title: 'temperature of the nominal resistance',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    { name: 'beta', symbol: 'β', title: 'β value', kind: 'temperature-difference', unit: 'K', low: 0, lowOpen: true },
    { name: 'temperature', symbol: 'T', title: 'temperature', kind: 'temperature', unit: '°C', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'resistance', title: 'resistance there', kind: 'resistance', unit: 'kΩ', unitOf: 'nominal' }],
  source: 'IEC 60539-1, B-value',
  requires: [
    { says: 'a resistance that can be written', holds: (x) => Number.isFinite(betaResistance(x[0], x[1], x[2], x[3])) },
  ],
  valid: [
    {
      says: 'temperature from 0 °C to 125 °C; beyond, β alone is off by a kelvin or more',
      holds: (x) => x[3] >= 273.15 && x[3] <= 398.15,
    },
  ],
  example: {
    inputs: { nominal: '10 kΩ', 'nominal-temperature': '25 °C', beta: '3950 K', temperature: '50 °C' },
    result: { resistance: '3.59 kΩ' },
    source: 'FM Workbench, NTC Thermistor Calculator, example values for 10 kΩ, B 3950',
    tolerance: 0.0014,
  },
  compute(x, y) {
    y[0] = betaResistance(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
