import type { Formula } from '../../formula.ts';
import { downwardPlateNusselt, rayleigh, upwardPlateNusselt } from '../../thermal/natural-convection.ts';

export const levelPlateConvectionFormula: Formula = {
  name: 'level-plate-convection',
  title: 'film coefficients of a level plate in still air',
  equation:
    'h = Nu·k/L; warm face up: Nu = 0.54·Ra^¼ up to Ra = 1e7, 0.15·Ra^⅓ above; warm face down: Nu = 0.27·Ra^¼; Ra = g·β·|Ts − Ta|·L³/(ν·a), β = 2/(Ts + Ta)',
  room: 'heat path',
  inputs: [
    {
      name: 'surface',
      symbol: 'Ts',
      title: 'temperature of the plate',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'ambient',
      symbol: 'Ta',
      title: 'temperature of the air',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'length',
      symbol: 'L',
      title: 'area of the plate over its perimeter',
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
      name: 'diffusivity',
      symbol: 'a',
      title: 'thermal diffusivity of air, there too',
      kind: 'diffusivity',
      unit: 'mm²/s',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'upward', title: 'warm face up, or cold face down', kind: 'film-coefficient', unit: 'W/(m²·K)' },
    { name: 'downward', title: 'warm face down, or cold face up', kind: 'film-coefficient', unit: 'W/(m²·K)' },
    { name: 'rayleigh', title: 'Rayleigh number', kind: 'ratio', unit: '1' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th ed., equations 9.30 to 9.32',
  requires: [],
  valid: [{ says: 'Rayleigh number from 1e5 to 1e10', holds: (x) => rayleighOf(x) >= 1e5 && rayleighOf(x) <= 1e10 }],
  example: {
    inputs: {
      surface: '45 °C',
      ambient: '15 °C',
      length: '0.375 m',
      'air-conductivity': '0.0265 W/(m·K)',
      viscosity: '16.2 mm²/s',
      diffusivity: '22.9 mm²/s',
    },
    result: { upward: '5.47 W/(m²·K)', downward: '2.07 W/(m²·K)' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.3: top and bottom of an air duct (results from memory)',
    tolerance: 0.0048,
  },
  compute(x, y) {
    y[2] = rayleighOf(x);
    y[0] = (upwardPlateNusselt(y[2]) * x[3]) / x[2];
    y[1] = (downwardPlateNusselt(y[2]) * x[3]) / x[2];
    return 'solved';
  },
};

function rayleighOf(x: Float64Array): number {
  return rayleigh(2 / (x[0] + x[1]), x[0] - x[1], x[2], x[4], x[5]);
}
