import type { Formula } from '../../formula.ts';
import { airFlowFor } from '../../thermal/air-heating.ts';

export const airFlowFormula: Formula = {
  name: 'air-flow',
  title: 'air flow that carries a heat away at a given warming',
  equation: 'V = P/(ρ·c·ΔT), ρ = p/(R·T) at 101 325 Pa, c = 1007 J/(kg·K)',
  room: 'heat path',
  inputs: [
    { name: 'power', symbol: 'P', title: 'heat that the air takes up', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'rise',
      symbol: 'ΔT',
      title: 'warming of the air',
      kind: 'temperature-difference',
      unit: 'K',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'inlet',
      symbol: 'T',
      title: 'temperature of the air where the flow is counted',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [{ name: 'flow', title: 'volume flow', kind: 'volume-flow', unit: 'CFM' }],
  source: 'energy balance; ISO 2533:1975, Standard atmosphere',
  requires: [],
  valid: [
    {
      says: 'inlet from 0 °C to 100 °C, near sea level; at 1000 m 11 % more flow is needed',
      holds: (x) => x[2] >= 273.15 && x[2] <= 373.15,
    },
  ],
  example: {
    inputs: { power: '400 W', rise: '18.889 K', inlet: '21 °C' },
    result: { flow: '37.17 CFM' },
    source: 'enclosure cooling example, industrialmonitordirect.com: 400 W, 34 °F of warming',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = airFlowFor(x[0], x[1], x[2]);
    return 'solved';
  },
};
