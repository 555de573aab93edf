import type { Formula } from '../../formula.ts';
import { radiatedHeat, radiationFilm } from '../../thermal/radiation.ts';

export const radiatedHeatFormula: Formula = {
  name: 'radiated-heat',
  title: 'heat that a surface radiates to its surroundings',
  equation: 'q = ε·σ·A·(T⁴ − Ts⁴), σ = 5.670374e-8 W/(m²·K⁴)',
  room: 'heat path',
  inputs: [
    { name: 'emissivity', symbol: 'ε', title: 'emissivity of the surface', kind: 'ratio', unit: '1', low: 0, high: 1 },
    { name: 'area', symbol: 'A', title: 'area of the surface', kind: 'area', unit: 'cm²', low: 0 },
    { name: 'temperature', symbol: 'T', title: 'temperature of the surface', kind: 'temperature', unit: '°C', low: 0 },
    {
      name: 'surroundings',
      symbol: 'Ts',
      title: 'temperature of what it sees',
      kind: 'temperature',
      unit: '°C',
      low: 0,
    },
  ],
  outputs: [
    { name: 'heat', title: 'heat by radiation', kind: 'power', unit: 'W' },
    { name: 'film', title: 'the same as a film coefficient', kind: 'film-coefficient', unit: 'W/(m²·K)' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 1.7 and 1.9',
  requires: [],
  valid: [
    {
      says: 'surroundings much larger than the surface; bare metal has an emissivity of 0.05 to 0.2, paint and anodising 0.8 to 0.95',
      holds: (x) => x[0] > 0,
    },
  ],
  example: {
    inputs: { emissivity: '0.95', area: '1.4 m²', temperature: '303 K', surroundings: '298 K' },
    result: { heat: '40.9 W' },
    source: 'Çengel, Heat and Mass Transfer, example on radiation in a room in summer (from memory)',
    tolerance: 0.002,
  },
  compute(x, y) {
    y[0] = radiatedHeat(x[0], x[1], x[2], x[3]);
    y[1] = radiationFilm(x[0], x[2], x[3]);
    return 'solved';
  },
};
