import { liquidCapacitorLifeWithRipple } from '../../electrical/capacitor-life.ts';
import type { Formula } from '../../formula.ts';

export const liquidCapacitorLifeFormula: Formula = {
  name: 'liquid-capacitor-life',
  title: 'life of an aluminium capacitor with liquid electrolyte',
  equation: 'L = L0·2^((T0 − T)/10 K)·K^((1 − (I/I0)²)·ΔT0/10 K), K = 2, above rated ripple 4',
  room: 'power path',
  inputs: [
    {
      name: 'rated-life',
      symbol: 'L0',
      title: 'at the rated temperature and ripple',
      kind: 'time',
      unit: 'h',
      low: 0,
      lowOpen: true,
    },
    { name: 'rated-temperature', symbol: 'T0', title: 'rated temperature', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'ambient', symbol: 'T', title: 'of the air around it', kind: 'temperature', unit: '°C', low: 0 },
    {
      name: 'rated-ripple',
      symbol: 'I0',
      title: 'rated ripple current',
      kind: 'current',
      unit: 'A',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'ripple',
      symbol: 'I',
      title: 'ripple current, at the frequency of the rating',
      kind: 'current',
      unit: 'A',
      low: 0,
    },
    {
      name: 'rated-rise',
      symbol: 'ΔT0',
      title: 'rise of its core at rated ripple',
      kind: 'temperature-difference',
      unit: 'K',
      low: 0,
    },
  ],
  outputs: [{ name: 'life', title: 'life', kind: 'time', unit: 'h' }],
  source: 'A. Albertsen, Electrolytic Capacitor Lifetime Estimation, Jianghai Europe, 2012',
  requires: [],
  valid: [
    { says: 'ambient from 40 °C to the rated temperature', holds: (x) => x[2] >= 313.15 && x[2] <= x[1] },
    { says: 'ripple up to its rating', holds: (x) => x[4] <= x[3] },
  ],
  example: {
    inputs: {
      'rated-life': '1000 h',
      'rated-temperature': '105 °C',
      ambient: '45 °C',
      'rated-ripple': '2 A',
      ripple: '2 A',
      'rated-rise': '5 K',
    },
    result: { life: '64000 h' },
    source: 'COSEL, technical note A0057',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = liquidCapacitorLifeWithRipple(x[0], x[1], x[2], x[3], x[4], x[5]);
    return 'solved';
  },
};
