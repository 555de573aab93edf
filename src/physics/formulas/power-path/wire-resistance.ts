import { resistanceAt } from '../../electrical/resistance-at-temperature.ts';
import { wireResistance } from '../../electrical/wire-gauge.ts';
import type { Formula } from '../../formula.ts';

export const wireResistanceFormula: Formula = {
  name: 'wire-resistance',
  title: 'resistance of copper wire by its gauge (AWG)',
  equation:
    'R = ρ·l/(π·d²/4)·(1 + α·(T − 20 °C)), ρ = 1/58 Ω·mm²/m, α = 0.00393/K; for a gauge n, d = 0.127 mm · 92^((36 − n)/39)',
  room: 'power path',
  inputs: [
    {
      name: 'wire',
      symbol: 'd',
      title: 'gauge, as in AWG 24, or diameter',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
    { name: 'length', symbol: 'l', title: 'length of conductor, both ways', kind: 'length', unit: 'm', low: 0 },
    { name: 'temperature', symbol: 'T', title: 'temperature of the wire', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [{ name: 'resistance', title: 'resistance', kind: 'resistance', unit: 'mΩ' }],
  source: 'ASTM B258 (diameter); IEC 60028:1925 (copper)',
  requires: [],
  valid: [
    { says: 'diameter from 0.08 mm (AWG 40) to 11.7 mm (AWG 0000)', holds: (x) => x[0] >= 7.9e-5 && x[0] <= 0.0117 },
    { says: 'temperature from −50 °C to 200 °C', holds: (x) => x[2] >= 223.15 && x[2] <= 473.15 },
  ],
  example: {
    inputs: { wire: 'AWG 24', length: '1 km', temperature: '20 °C' },
    result: { resistance: '84.22 Ω' },
    source: 'National Bureau of Standards, Handbook 100, Copper Wire Tables, 1966 (84.2 Ω/km as widely reprinted)',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = resistanceAt(wireResistance(x[0], x[1]), 3.93e-3, x[2], 293.15);
    return 'solved';
  },
};
