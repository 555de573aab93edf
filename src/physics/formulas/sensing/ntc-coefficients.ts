import type { Formula } from '../../formula.ts';
import { type SteinhartHart, steinhartHartFalls } from '../../sensing/steinhart-hart.ts';
import { steinhartHartThrough, type ThermistorPoint } from '../../sensing/steinhart-hart-fit.ts';

const resistance = { kind: 'resistance', unit: 'kΩ', low: 0, lowOpen: true } as const;
const temperature = { kind: 'temperature', unit: '°C', low: 0, lowOpen: true } as const;
const coefficient = { kind: 'temperature-coefficient', unit: '1/K' } as const;

export const ntcCoefficientsFormula: Formula = {
  name: 'ntc-coefficients',
  title: 'Steinhart–Hart coefficients of a thermistor from three points',
  equation: '1/T = A + B·L + C·L³, L = ln(R/Ω), through (R1, T1), (R2, T2), (R3, T3)',
  room: 'sensing',
  inputs: [
    { name: 'resistance-1', symbol: 'R1', title: 'resistance at the first point', ...resistance },
    { name: 'temperature-1', symbol: 'T1', title: 'temperature of the first point', ...temperature },
    { name: 'resistance-2', symbol: 'R2', title: 'resistance at the second point', ...resistance },
    { name: 'temperature-2', symbol: 'T2', title: 'temperature of the second point', ...temperature },
    { name: 'resistance-3', symbol: 'R3', title: 'resistance at the third point', ...resistance },
    { name: 'temperature-3', symbol: 'T3', title: 'temperature of the third point', ...temperature },
  ],
  outputs: [
    { name: 'a', title: 'first coefficient', ...coefficient },
    { name: 'b', title: 'second coefficient', ...coefficient },
    { name: 'c', title: 'third coefficient', ...coefficient },
  ],
  source: 'J. S. Steinhart and S. R. Hart, Deep-Sea Research 15 (1968) 497–503',
  requires: [{ says: 'three different resistances', holds: (x) => through(x) !== null }],
  valid: [
    {
      says: 'resistance falls as temperature rises at all three points',
      holds: (x) => {
        const coefficients = through(x);
        return coefficients === null || [x[0], x[2], x[4]].every((r) => steinhartHartFalls(coefficients, r));
      },
    },
    { says: 'points at least 10 K apart', holds: (x) => apart(x[1], x[3]) && apart(x[3], x[5]) && apart(x[1], x[5]) },
  ],
  example: {
    inputs: {
      'resistance-1': '25 kΩ',
      'temperature-1': '5 °C',
      'resistance-2': '10 kΩ',
      'temperature-2': '25 °C',
      'resistance-3': '4 kΩ',
      'temperature-3': '45 °C',
    },
    result: { a: '0.002108508173 1/K', b: '0.00007979204727 1/K', c: '0.0000006535076315 1/K' },
    source: 'default points of a laboratory thermistor calculator, as widely reprinted',
    tolerance: 1e-9,
  },
  compute(x, y) {
    const { a, b, c } = through(x)!;
    y[0] = a;
    y[1] = b;
    y[2] = c;
    return 'solved';
  },
};

function through(x: Float64Array): SteinhartHart | null {
  const [first, second, third] = [0, 2, 4].map((i): ThermistorPoint => ({ resistance: x[i], temperature: x[i + 1] }));
  return steinhartHartThrough(first, second, third);
}

function apart(one: number, other: number): boolean {
  return Math.abs(one - other) >= 10;
}
