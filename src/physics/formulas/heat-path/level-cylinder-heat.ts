import type { Formula } from '../../formula.ts';
import { levelCylinderNusselt, rayleigh } from '../../thermal/natural-convection.ts';
import { radiatedHeat } from '../../thermal/radiation.ts';

export const levelCylinderHeatFormula: Formula = {
  name: 'level-cylinder-heat',
  title: 'heat from a level cylinder to still air, with its radiation',
  equation:
    'q = h·A·(Ts − Ta) + ε·s·A·(Ts⁴ − Ta⁴), A = π·D·L, h = Nu·k/D, Nu = {0.60 + 0.387·Ra^(1/6)/[1 + (0.559·a/ν)^(9/16)]^(8/27)}², Ra = g·β·|Ts − Ta|·D³/(ν·a), β = 2/(Ts + Ta), s = 5.67e-8 W/(m²·K⁴)',
  room: 'heat path',
  inputs: [
    {
      name: 'surface',
      symbol: 'Ts',
      title: 'temperature of the cylinder',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'ambient',
      symbol: 'Ta',
      title: 'temperature of air and surroundings',
      kind: 'temperature',
      unit: '°C',
      low: 0,
    },
    { name: 'diameter', symbol: 'D', title: 'diameter', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    { name: 'length', symbol: 'L', title: 'length', kind: 'length', unit: 'mm', low: 0 },
    {
      name: 'emissivity',
      symbol: 'ε',
      title: 'emissivity; 0 leaves the radiation out',
      kind: 'ratio',
      unit: '1',
      low: 0,
      high: 1,
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
    { name: 'heat', title: 'by convection and radiation', kind: 'power', unit: 'W' },
    { name: 'convected', title: 'by convection alone', kind: 'power', unit: 'W' },
    { name: 'film', title: 'film coefficient of the convection', kind: 'film-coefficient', unit: 'W/(m²·K)' },
  ],
  source:
    'S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049; Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 9.34',
  requires: [],
  valid: [{ says: 'Rayleigh number up to 1e12; ends left out', holds: (x) => rayleighOf(x) <= 1e12 }],
  example: {
    inputs: {
      surface: '438 K',
      ambient: '296 K',
      diameter: '100 mm',
      length: '1 m',
      emissivity: '0.85',
      'air-conductivity': '0.0313 W/(m·K)',
      viscosity: '22.8 mm²/s',
      diffusivity: '32.8 mm²/s',
    },
    result: { heat: '763 W' },
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.4: a steam pipe, 763 W/m',
    tolerance: 0.0014,
  },
  compute(x, y) {
    const area = Math.PI * x[2] * x[3];
    y[2] = (levelCylinderNusselt(rayleighOf(x), x[6] / x[7]) * x[5]) / x[2];
    y[1] = y[2] * area * (x[0] - x[1]);
    y[0] = y[1] + radiatedHeat(x[4], area, x[0], x[1]);
    return 'solved';
  },
};

function rayleighOf(x: Float64Array): number {
  return rayleigh(2 / (x[0] + x[1]), x[0] - x[1], x[2], x[6], x[7]);
}
