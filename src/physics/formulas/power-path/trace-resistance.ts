import { resistanceAt } from '../../electrical/resistance-at-temperature.ts';
import { barResistance, copperResistivity } from '../../electrical/trace-resistance.ts';
import type { Formula } from '../../formula.ts';

export const traceResistanceFormula: Formula = {
  name: 'trace-resistance',
  title: 'resistance of a copper trace or plane',
  equation: 'R = ρ·l/(w·t)·(1 + α·(T − 20 °C)), ρ = 1/58 Ω·mm²/m, α = 0.00393/K',
  room: 'power path',
  inputs: [
    { name: 'length', symbol: 'l', title: 'along the current', kind: 'length', unit: 'mm', low: 0 },
    { name: 'width', symbol: 'w', title: 'of the trace', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'thickness',
      symbol: 't',
      title: 'of the copper; one ounce is 35 µm',
      kind: 'length',
      unit: 'µm',
      low: 0,
      lowOpen: true,
    },
    { name: 'temperature', symbol: 'T', title: 'of the copper', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [{ name: 'resistance', title: 'resistance', kind: 'resistance', unit: 'mΩ' }],
  source: 'IEC 60028:1925 (copper)',
  requires: [],
  valid: [
    { says: 'temperature from −50 °C to 200 °C', holds: (x) => x[3] >= 223.15 && x[3] <= 473.15 },
    {
      says: 'length above the width: below, the current spreads and the resistance is higher',
      holds: (x) => x[0] >= x[1],
    },
  ],
  example: {
    inputs: { length: '100 mm', width: '0.5 mm', thickness: '35 µm', temperature: '20 °C' },
    result: { resistance: '98.3 mΩ' },
    source: 'hypercode, PCB design course, lesson 1 (it takes 1.72e-8 Ω·m)',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = resistanceAt(barResistance(copperResistivity, x[0], x[1] * x[2]), 3.93e-3, x[3], 293.15);
    return 'solved';
  },
};
