import type { Formula } from '../../formula.ts';
import { turbulentTubeNusselt } from '../../thermal/tube-film.ts';

export const tubeFilmFormula: Formula = {
  name: 'tube-film',
  title: 'film coefficient of turbulent flow in a tube',
  equation: 'h = 0.023·Re^0.8·Pr^n·k/D, Re = v·D/ν, n = 0.3: the tube cools the fluid',
  room: 'heat path',
  inputs: [
    { name: 'velocity', symbol: 'v', title: 'mean velocity', kind: 'speed', unit: 'm/s', low: 0, lowOpen: true },
    { name: 'diameter', symbol: 'D', title: 'inner diameter', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'fluid-conductivity',
      symbol: 'k',
      title: 'thermal conductivity of the fluid',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'viscosity',
      symbol: 'ν',
      title: 'kinematic viscosity of the fluid',
      kind: 'diffusivity',
      unit: 'mm²/s',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'prandtl',
      symbol: 'Pr',
      title: 'Prandtl number of the fluid',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    {
      name: 'cooling',
      title: 'film coefficient, the tube cools the fluid',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
    },
    {
      name: 'heating',
      title: 'film coefficient, the tube heats the fluid (n = 0.4)',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
    },
    { name: 'reynolds', title: 'Reynolds number', kind: 'ratio', unit: '1' },
  ],
  source: 'Dittus and Boelter, 1930, as in Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 8.60',
  requires: [],
  valid: [
    { says: 'Reynolds number from 1e4 on', holds: (x) => x[0] * x[1] >= 1e4 * x[3] },
    { says: 'Prandtl number from 0.6 to 160', holds: (x) => x[4] >= 0.6 && x[4] <= 160 },
  ],
  example: {
    inputs: {
      velocity: '2.8294 m/s',
      diameter: '150 mm',
      'fluid-conductivity': '0.030 W/(m·K)',
      viscosity: '20.82 mm²/s',
      prandtl: '0.7',
    },
    result: { cooling: '11.6 W/(m²·K)', reynolds: '20384' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 8.6: 0.05 kg/s of air in a duct of 0.15 m, viscosity 208.2e-7 Pa·s; stated here for a density of 1 kg/m³ (film coefficient from memory)',
    tolerance: 0.004,
  },
  compute(x, y) {
    const reynolds = (x[0] * x[1]) / x[3];
    y[0] = (turbulentTubeNusselt(reynolds, x[4], false) * x[2]) / x[1];
    y[1] = (turbulentTubeNusselt(reynolds, x[4], true) * x[2]) / x[1];
    y[2] = reynolds;
    return 'solved';
  },
};
