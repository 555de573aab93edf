import type { Formula } from '../../formula.ts';
import { contactConductance } from '../../thermal/contact.ts';

export const contactConductanceFormula: Formula = {
  name: 'contact-conductance',
  title: 'conductance of the contact between two bare, rough surfaces',
  equation: 'h = 1.25·k·(m/σ)·(p/H)^0.95, k = 2·k1·k2/(k1 + k2), σ² = σ1² + σ2², m² = m1² + m2²',
  room: 'heat path',
  inputs: [
    {
      name: 'conductivity',
      symbol: 'k1',
      title: 'thermal conductivity of one side',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'other-conductivity',
      symbol: 'k2',
      title: 'thermal conductivity of the other side',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'roughness',
      symbol: 'σ',
      title: 'combined rms roughness of both sides',
      kind: 'length',
      unit: 'µm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'slope',
      symbol: 'm',
      title: 'combined mean slope of the roughness',
      kind: 'ratio',
      unit: '1',
      low: 0,
      lowOpen: true,
    },
    { name: 'pressure', symbol: 'p', title: 'pressure on the contact', kind: 'pressure', unit: 'MPa', low: 0 },
    {
      name: 'hardness',
      symbol: 'H',
      title: 'micro-hardness of the softer side',
      kind: 'pressure',
      unit: 'GPa',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    {
      name: 'conductance',
      title: 'conductance of the contact, without what fills its gaps',
      kind: 'film-coefficient',
      unit: 'W/(m²·K)',
    },
  ],
  source:
    'M. M. Yovanovich, IEEE Trans. Components and Packaging Technologies 28 (2005) 182–206, after Cooper, Mikic and Yovanovich, 1969 (coefficient from memory)',
  requires: [],
  valid: [
    {
      says: 'flat sides in vacuum, pressed together for the first time, pressure from 1e-5 to 2e-2 of the hardness',
      holds: (x) => x[4] >= 1e-5 * x[5] && x[4] <= 2e-2 * x[5],
    },
  ],
  example: {
    inputs: {
      conductivity: '390 W/(m·K)',
      'other-conductivity': '180 W/(m·K)',
      roughness: '1.1313708 µm',
      slope: '0.14142136',
      pressure: '0.5 MPa',
      hardness: '1.1 GPa',
    },
    result: { conductance: '25705 W/(m²·K)' },
    source:
      'Yovanovich, 2005 (coefficient from memory), evaluated by a separate program: copper on aluminium, 0.8 µm and 0.1 on each side',
    tolerance: 4e-5,
  },
  compute(x, y) {
    y[0] = contactConductance(x[0], x[1], x[2], x[3], x[4], x[5]);
    return 'solved';
  },
};
