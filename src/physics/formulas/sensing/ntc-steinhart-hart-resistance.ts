import type { Formula } from '../../formula.ts';
import { steinhartHartResistance } from '../../sensing/steinhart-hart.ts';

export const ntcSteinhartHartResistanceFormula: Formula = {
  name: 'ntc-steinhart-hart-resistance',
  title: 'resistance of a thermistor at a temperature, by its Steinhart–Hart coefficients',
  equation:
    'L = ∛(y − x/2) − ∛(y + x/2), x = (A − 1/T)/C, y = √((B/(3·C))³ + x²/4), R = exp(L) Ω; for C = 0, L = (1/T − A)/B',
  room: 'sensing',
  inputs: [
    { name: 'temperature', symbol: 'T', title: 'temperature', kind: 'temperature', unit: '°C', low: 0, lowOpen: true },
    { name: 'a', symbol: 'A', title: 'first coefficient', kind: 'temperature-coefficient', unit: '1/K' },
    {
      name: 'b',
      symbol: 'B',
      title: 'second coefficient',
      kind: 'temperature-coefficient',
      unit: '1/K',
      low: 0,
      lowOpen: true,
    },
    { name: 'c', symbol: 'C', title: 'third coefficient', kind: 'temperature-coefficient', unit: '1/K', low: 0 },
  ],
  outputs: [{ name: 'resistance', title: 'resistance there', kind: 'resistance', unit: 'kΩ' }],
  source:
    'solution of the depressed cubic (Cardano) of the equation of J. S. Steinhart and S. R. Hart, Deep-Sea Research 15 (1968) 497–503',
  requires: [
    {
      says: 'a resistance that can be written',
      holds: (x) => Number.isFinite(steinhartHartResistance({ a: x[1], b: x[2], c: x[3] }, x[0])),
    },
  ],
  valid: [{ says: 'temperature from −80 °C to 260 °C', holds: (x) => x[0] >= 193.15 && x[0] <= 533.15 }],
  example: {
    inputs: { temperature: '45 °C', a: '0.002108508173 1/K', b: '0.00007979204727 1/K', c: '0.0000006535076315 1/K' },
    result: { resistance: '4 kΩ' },
    source:
      'points of a laboratory thermistor calculator (25 kΩ, 10 kΩ, 4 kΩ at 5, 25, 45 °C), coefficients as widely reprinted',
    tolerance: 1e-7,
  },
  compute(x, y) {
    y[0] = steinhartHartResistance({ a: x[1], b: x[2], c: x[3] }, x[0]);
    return 'solved';
  },
};
