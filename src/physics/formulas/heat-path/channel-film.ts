import type { Formula } from '../../formula.ts';
import { channelNusselt } from '../../thermal/channel-film.ts';

export const channelFilmFormula: Formula = {
  name: 'channel-film',
  title: 'film coefficient between plate fins, air forced through',
  equation: 'h = Nu·k/b, Nu = [(Re*·Pr/2)^−3 + (0.664·√Re*·Pr^⅓·√(1 + 3.65/√Re*))^−3]^(−⅓), Re* = (v·b/ν)·(b/L)',
  room: 'heat path',
  inputs: [
    {
      name: 'velocity',
      symbol: 'v',
      title: 'velocity between the fins',
      kind: 'speed',
      unit: 'm/s',
      low: 0,
      lowOpen: true,
    },
    { name: 'gap', symbol: 'b', title: 'gap between two fins', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'length',
      symbol: 'L',
      title: 'length of the fins along the air',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'air-conductivity',
      symbol: 'k',
      title: 'thermal conductivity of air',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'viscosity',
      symbol: 'ν',
      title: 'kinematic viscosity of air',
      kind: 'diffusivity',
      unit: 'mm²/s',
      low: 0,
      lowOpen: true,
    },
    { name: 'prandtl', symbol: 'Pr', title: 'Prandtl number of air', kind: 'ratio', unit: '1', low: 0, lowOpen: true },
  ],
  outputs: [
    {
      name: 'film',
      title: 'film coefficient, against the air as it enters',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
    },
    { name: 'nusselt', title: 'Nusselt number of the gap', kind: 'ratio', unit: '1' },
    { name: 'reynolds', title: 'Reynolds number of the channel, Re*', kind: 'ratio', unit: '1' },
  ],
  source:
    'P. Teertstra, M. M. Yovanovich, J. R. Culham, T. Lemczyk, SEMI-THERM 1999; J. R. Culham, Y. S. Muzychka, IEEE Trans. Components and Packaging Technologies 24 (2001)',
  requires: [],
  valid: [{ says: 'laminar, Re* from 0.1 to 100', holds: (x) => reynoldsOf(x) >= 0.1 && reynoldsOf(x) <= 100 }],
  example: {
    inputs: {
      velocity: '4 m/s',
      gap: '2 mm',
      length: '100 mm',
      'air-conductivity': '0.026 W/(m·K)',
      viscosity: '16 mm²/s',
      prandtl: '0.71',
    },
    result: { nusselt: '2.42103', reynolds: '10' },
    source:
      'model of Teertstra, Yovanovich, Culham and Lemczyk, 1999, as quoted from Culham and Muzychka, 2001, evaluated by a separate program at Re* = 10, Pr = 0.71',
    tolerance: 5e-6,
  },
  compute(x, y) {
    y[2] = reynoldsOf(x);
    y[1] = channelNusselt(y[2], x[5]);
    y[0] = (y[1] * x[3]) / x[1];
    return 'solved';
  },
};

function reynoldsOf(x: Float64Array): number {
  return (x[0] * x[1] * x[1]) / (x[4] * x[2]);
}
