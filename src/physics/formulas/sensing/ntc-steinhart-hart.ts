import type { Formula } from '../../formula.ts';
import { steinhartHartFalls, steinhartHartTemperature } from '../../sensing/steinhart-hart.ts';

const coefficient = { kind: 'temperature-coefficient', unit: '1/K' } as const;

export const ntcSteinhartHartFormula: Formula = {
  name: 'ntc-steinhart-hart',
  title: 'temperature from the resistance of a thermistor, by its Steinhart–Hart coefficients',
  equation: '1/T = A + B·L + C·L³, L = ln(R/Ω)',
  room: 'sensing',
  inputs: [
    { name: 'resistance', symbol: 'R', title: 'resistance', kind: 'resistance', unit: 'kΩ', low: 0, lowOpen: true },
    { name: 'a', symbol: 'A', title: 'first coefficient', ...coefficient },
    { name: 'b', symbol: 'B', title: 'second coefficient', ...coefficient },
    { name: 'c', symbol: 'C', title: 'third coefficient', ...coefficient },
  ],
  outputs: [{ name: 'temperature', title: 'temperature', kind: 'temperature', unit: '°C' }],
  source: 'J. S. Steinhart and S. R. Hart, Deep-Sea Research 15 (1968) 497–503',
  requires: [
    {
      says: '1/T is positive',
      holds: (x) => x[1] + x[2] * Math.log(x[0]) + x[3] * Math.log(x[0]) ** 3 > 0,
    },
  ],
  valid: [
    {
      says: 'temperature from −80 °C to 260 °C',
      holds: (x) => {
        const temperature = steinhartHartTemperature({ a: x[1], b: x[2], c: x[3] }, x[0]);
        return temperature >= 193.15 && temperature <= 533.15;
      },
    },
    {
      says: 'resistance falls as temperature rises: B + 3·C·L² is positive',
      holds: (x) => steinhartHartFalls({ a: x[1], b: x[2], c: x[3] }, x[0]),
    },
  ],
  example: {
    inputs: { resistance: '10 kΩ', a: '0.002108508173 1/K', b: '0.00007979204727 1/K', c: '0.0000006535076315 1/K' },
    result: { temperature: '25 °C' },
    source:
      'default points of a laboratory thermistor calculator (25 kΩ, 10 kΩ, 4 kΩ at 5, 25, 45 °C), coefficients as widely reprinted',
    tolerance: 1e-6,
  },
  compute(x, y) {
    y[0] = steinhartHartTemperature({ a: x[1], b: x[2], c: x[3] }, x[0]);
    return 'solved';
  },
};
