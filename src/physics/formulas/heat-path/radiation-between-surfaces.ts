import type { Formula } from '../../formula.ts';
import { exchangedHeat } from '../../thermal/radiation.ts';

export const radiationBetweenSurfacesFormula: Formula = {
  name: 'radiation-between-surfaces',
  title: 'heat by radiation between two grey surfaces that see only each other',
  equation: 'q = σ·(T1⁴ − T2⁴)/[(1 − ε1)/(ε1·A1) + 1/A1 + (1 − ε2)/(ε2·A2)]',
  room: 'heat path',
  inputs: [
    {
      name: 'first-emissivity',
      symbol: 'ε1',
      title: 'emissivity of the first surface',
      kind: 'ratio',
      unit: '1',
      low: 0,
      high: 1,
      lowOpen: true,
    },
    {
      name: 'first-area',
      symbol: 'A1',
      title: 'area of the first surface, the one inside',
      kind: 'area',
      unit: 'cm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'first-temperature', symbol: 'T1', title: 'its temperature', kind: 'temperature', unit: '°C', low: 0 },
    {
      name: 'second-emissivity',
      symbol: 'ε2',
      title: 'emissivity of the second surface',
      kind: 'ratio',
      unit: '1',
      low: 0,
      high: 1,
      lowOpen: true,
    },
    {
      name: 'second-area',
      symbol: 'A2',
      title: 'area of the second surface',
      kind: 'area',
      unit: 'cm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'second-temperature', symbol: 'T2', title: 'its temperature', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [{ name: 'heat', title: 'heat from the first to the second', kind: 'power', unit: 'W' }],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 13.18',
  requires: [],
  valid: [
    {
      says: 'the first lies inside the second, or both are parallel and close: first area not larger than the second',
      holds: (x) => x[1] <= x[4] * 1.000001,
    },
  ],
  example: {
    inputs: {
      'first-emissivity': '0.02',
      'first-area': '0.06283 m²',
      'first-temperature': '77 K',
      'second-emissivity': '0.05',
      'second-area': '0.15708 m²',
      'second-temperature': '300 K',
    },
    result: { heat: '-0.50 W' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 13.5: tubes of 20 mm and 50 mm, one metre',
    tolerance: 0.004,
  },
  compute(x, y) {
    y[0] = exchangedHeat(
      { emissivity: x[0], area: x[1], temperature: x[2] },
      { emissivity: x[3], area: x[4], temperature: x[5] },
      1,
    );
    return 'solved';
  },
};
