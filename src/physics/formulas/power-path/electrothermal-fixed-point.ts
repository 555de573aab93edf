import type { Formula } from '../../formula.ts';
import { settledTemperature } from '../../thermal/electrothermal-fixed-point.ts';

export const electrothermalFixedPointFormula: Formula = {
  name: 'electrothermal-fixed-point',
  title: 'steady temperature of a part whose loss grows with its temperature',
  equation: 'T = Ta + R·(P0 + P1·(1 + α·(T − T0))), no solution from R·P1·α = 1 on (thermal runaway)',
  room: 'power path',
  inputs: [
    {
      name: 'ambient',
      symbol: 'Ta',
      title: 'temperature of its surroundings',
      kind: 'temperature',
      unit: '°C',
      low: 0,
    },
    {
      name: 'resistance',
      symbol: 'R',
      title: 'from the part to its surroundings',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
    {
      name: 'fixed',
      symbol: 'P0',
      title: "loss that doesn't depend on temperature",
      kind: 'power',
      unit: 'W',
      low: 0,
    },
    { name: 'growing', symbol: 'P1', title: 'the growing loss at T0', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'coefficient',
      symbol: 'α',
      title: 'its relative growth',
      kind: 'temperature-coefficient',
      unit: '1/K',
    },
    { name: 'reference', symbol: 'T0', title: 'reference temperature', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [
    { name: 'temperature', title: 'steady temperature', kind: 'temperature', unit: '°C', unitOf: 'ambient' },
    { name: 'loss', title: 'loss at that temperature', kind: 'power', unit: 'W' },
    { name: 'loop-gain', title: 'loop gain; 1 is runaway', kind: 'ratio', unit: '1' },
  ],
  source:
    'closed form of the iteration in Maxim Integrated, tutorial 1832, Guide to MOSFET Power Dissipation Calculation',
  requires: [],
  valid: [
    {
      says: 'loop gain below 0.5: above, small errors of the inputs move the temperature by more than their own share',
      holds: (x) => x[1] * x[3] * x[4] < 0.5,
    },
  ],
  example: {
    inputs: {
      ambient: '70 °C',
      resistance: '40 K/W',
      fixed: '0.09 W',
      growing: '0 W',
      coefficient: '0.005 1/K',
      reference: '25 °C',
    },
    result: { temperature: '73.6 °C' },
    source:
      'Linear Technology, LTC3780 data sheet, page 23: 0.09 W over 40 K/W above 70 °C (the growing part has no published example; it is checked by iterating)',
    tolerance: 0.0001,
  },
  compute(x, y) {
    const temperature = settledTemperature(x[0], x[1], x[2], x[3], x[4], x[5]);
    if (temperature === Number.POSITIVE_INFINITY) return 'runaway';
    y[0] = temperature;
    y[1] = x[2] + x[3] * (1 + x[4] * (temperature - x[5]));
    y[2] = x[1] * x[3] * x[4];
    return 'solved';
  },
};
