import type { Formula } from '../../formula.ts';
import { betaTemperature } from '../../sensing/ntc-beta.ts';

const resistance = { kind: 'resistance', unit: 'kΩ', low: 0, lowOpen: true } as const;

export const ntcBetaFormula: Formula = {
  name: 'ntc-beta',
  title: 'temperature from the resistance of a thermistor, by its β value',
  equation: '1/T = 1/T0 + ln(R/R0)/β',
  room: 'sensing',
  inputs: [
    { name: 'resistance', symbol: 'R', title: 'resistance', ...resistance },
    { name: 'nominal', symbol: 'R0', title: 'nominal resistance', ...resistance },
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
  ],
  outputs: [{ name: 'temperature', title: 'temperature', kind: 'temperature', unit: '°C' }],
  source: 'IEC 60539-1, B-value',
  requires: [
    { says: 'resistance below where 1/T reaches zero', holds: (x) => x[3] / x[2] + Math.log(x[0] / x[1]) > 0 },
  ],
  valid: [
    {
      says: 'resistance from a tenth to three times the nominal; beyond, β alone is off by half a kelvin or more',
      holds: (x) => x[0] >= 0.1 * x[1] && x[0] <= 3 * x[1],
    },
  ],
  example: {
    inputs: { resistance: '1.07 kΩ', nominal: '10 kΩ', 'nominal-temperature': '25 °C', beta: '3977 K' },
    result: { temperature: '85 °C' },
    source:
      'Amphenol Thermometrics, Sensor Temperature Resistance Curves, Rev. C, 2014, material type 1: β(25/85) and resistance ratio at 85 °C',
    tolerance: 2e-4,
  },
  compute(x, y) {
    y[0] = betaTemperature(x[1], x[2], x[3], x[0]);
    return 'solved';
  },
};
