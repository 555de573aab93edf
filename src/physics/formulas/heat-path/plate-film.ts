import type { Formula } from '../../formula.ts';
import { plateFilm } from '../../thermal/flat-plate-film.ts';

export const plateFilmFormula: Formula = {
  name: 'plate-film',
  title: 'film coefficient of a plate in an air stream along it',
  equation: 'h = Nu·k/L, Nu = 0.664·√Re·Pr^⅓ up to Re = 5e5, (0.037·Re^0.8 − 871)·Pr^⅓ above, Re = v·L/ν',
  room: 'heat path',
  inputs: [
    { name: 'velocity', symbol: 'v', title: 'velocity of the air', kind: 'speed', unit: 'm/s', low: 0, lowOpen: true },
    {
      name: 'length',
      symbol: 'L',
      title: 'length of the plate along the air',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'air-conductivity',
      symbol: 'k',
      title: 'thermal conductivity of air at the mean of surface and air',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'viscosity',
      symbol: 'ν',
      title: 'kinematic viscosity of air, there too',
      kind: 'diffusivity',
      unit: 'mm²/s',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'prandtl',
      symbol: 'Pr',
      title: 'Prandtl number of air, there too',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'film', title: 'film coefficient', kind: 'film-coefficient', unit: 'W/(m²·K)' },
    { name: 'reynolds', title: 'Reynolds number', kind: 'ratio', unit: '1' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 7.30 and 7.38',
  requires: [],
  valid: [
    { says: 'Reynolds number from 100 to 1e8', holds: (x) => x[0] * x[1] > 100 * x[3] && x[0] * x[1] < 1e8 * x[3] },
    { says: 'Prandtl number from 0.6 to 60', holds: (x) => x[4] >= 0.6 && x[4] <= 60 },
  ],
  example: {
    inputs: {
      velocity: '10 m/s',
      length: '0.5 m',
      'air-conductivity': '0.0364 W/(m·K)',
      viscosity: '520.8 mm²/s',
      prandtl: '0.687',
    },
    result: { film: '4.18 W/(m²·K)', reynolds: '9600' },
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 7.1: 570 W/m from 0.5 m at 273 K',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[0] = plateFilm(x[0], x[1], x[2], x[3], x[4]);
    y[1] = (x[0] * x[1]) / x[3];
    return 'solved';
  },
};
