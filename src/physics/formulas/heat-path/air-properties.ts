import type { Formula } from '../../formula.ts';
import { airDensity } from '../../thermal/air-heating.ts';
import { airConductivity, airHeatCapacity, airPrandtl, airViscosity } from '../../thermal/air-properties.ts';

export const airPropertiesFormula: Formula = {
  name: 'air-properties',
  title: 'properties of dry air',
  equation:
    'ρ = p/(R·T); µ = 1.4592e-6·T^1.5/(109.10 + T); k = 2.334e-3·T^1.5/(164.54 + T); c = 1030.5 − 0.19975·T + 3.9734e-4·T²; ν = µ/ρ, a = k/(ρ·c), Pr = ν/a',
  room: 'heat path',
  inputs: [
    {
      name: 'temperature',
      symbol: 'T',
      title: 'temperature of the air',
      kind: 'temperature',
      unit: '°C',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'density', title: 'density', kind: 'density', unit: 'kg/m³' },
    { name: 'viscosity', title: 'kinematic viscosity', kind: 'diffusivity', unit: 'mm²/s' },
    { name: 'conductivity', title: 'thermal conductivity', kind: 'thermal-conductivity', unit: 'W/(m·K)' },
    { name: 'diffusivity', title: 'thermal diffusivity', kind: 'diffusivity', unit: 'mm²/s' },
    { name: 'prandtl', title: 'Prandtl number', kind: 'ratio', unit: '1' },
  ],
  source: 'ISO 2533:1975 (density); correlations as printed on egichem.com',
  requires: [],
  valid: [
    { says: 'from 250 K to 600 K near sea level; within 2 % of the tables', holds: (x) => x[0] >= 250 && x[0] <= 600 },
  ],
  example: {
    inputs: { temperature: '25 °C' },
    result: { density: '1.184 kg/m³', viscosity: '15.62 mm²/s' },
    source: 'Çengel, Heat and Mass Transfer, table A-15',
    tolerance: 0.004,
  },
  compute(x, y) {
    y[0] = airDensity(x[0]);
    y[1] = airViscosity(x[0]) / y[0];
    y[2] = airConductivity(x[0]);
    y[3] = y[2] / (y[0] * airHeatCapacity(x[0]));
    y[4] = airPrandtl(x[0]);
    return 'solved';
  },
};
