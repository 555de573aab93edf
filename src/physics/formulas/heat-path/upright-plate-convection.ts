import type { Formula } from '../../formula.ts';
import { rayleigh, verticalPlateNusselt } from '../../thermal/natural-convection.ts';

export const uprightPlateConvectionFormula: Formula = {
  name: 'upright-plate-convection',
  title: 'heat from an upright plate to still air',
  equation:
    'q = Nu·k/H·A·(Ts − Ta), Nu = {0.825 + 0.387·Ra^(1/6)/[1 + (0.492·a/ν)^(9/16)]^(8/27)}², Ra = g·β·|Ts − Ta|·H³/(ν·a), β = 2/(Ts + Ta)',
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
    { name: 'height', symbol: 'H', title: 'height of the plate', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'area', symbol: 'A', title: 'area of the plate, one side', kind: 'area', unit: 'cm²', low: 0 },
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
    { name: 'heat', title: 'heat by convection', kind: 'power', unit: 'W' },
    { name: 'film', title: 'film coefficient', kind: 'film-coefficient', unit: 'W/(m²·K)' },
  ],
  source:
    'S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1323; Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 9.26',
  requires: [],
  valid: [{ says: 'Rayleigh number up to 1e12', holds: (x) => rayleighOf(x) <= 1e12 }],
  example: {
    inputs: {
      surface: '232 °C',
      ambient: '23 °C',
      height: '0.71 m',
      area: '0.7242 m²',
      'air-conductivity': '0.0338 W/(m·K)',
      viscosity: '26.4 mm²/s',
      diffusivity: '38.3 mm²/s',
    },
    result: { heat: '1060 W' },
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.2',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[1] = (verticalPlateNusselt(rayleighOf(x), x[5] / x[6]) * x[4]) / x[2];
    y[0] = y[1] * x[3] * (x[0] - x[1]);
    return 'solved';
  },
};

function rayleighOf(x: Float64Array): number {
  return rayleigh(2 / (x[0] + x[1]), x[0] - x[1], x[2], x[5], x[6]);
}
