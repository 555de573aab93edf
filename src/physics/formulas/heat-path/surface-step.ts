import type { Formula } from '../../formula.ts';
import { surfaceStepRise } from '../../thermal/surface-step.ts';

export const surfaceStepFormula: Formula = {
  name: 'surface-step',
  title: "rise of a thick body's surface after a step of heat into it",
  equation: 'ΔT = (P/A)·2·√(t/(π·k·ρ·c)) while √(10·k·t/(ρ·c)) < L',
  room: 'heat path',
  inputs: [
    { name: 'power', symbol: 'P', title: 'heat into the surface', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'area',
      symbol: 'A',
      title: 'area that it enters through',
      kind: 'area',
      unit: 'mm²',
      low: 0,
      lowOpen: true,
    },
    { name: 'time', symbol: 't', title: 'time since the step', kind: 'time', unit: 'ms', low: 0 },
    {
      name: 'conductivity',
      symbol: 'k',
      title: 'thermal conductivity',
      kind: 'thermal-conductivity',
      unit: 'W/(m·K)',
      low: 0,
      lowOpen: true,
    },
    { name: 'density', symbol: 'ρ', title: 'density', kind: 'density', unit: 'kg/m³', low: 0, lowOpen: true },
    {
      name: 'specific-heat',
      symbol: 'c',
      title: 'specific heat',
      kind: 'specific-heat',
      unit: 'J/(kg·K)',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'thickness',
      symbol: 'L',
      title: 'thickness of the body',
      kind: 'length',
      unit: 'mm',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'rise', title: 'rise of the surface', kind: 'temperature-difference', unit: 'K' },
    {
      name: 'reached',
      title: 'how far the heat has gone, √(10·k·t/(ρ·c)); it has to stay inside the body',
      kind: 'length',
      unit: 'mm',
    },
  ],
  source:
    'H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., section 2.9; JEDEC JESD51-14, annex (from memory)',
  requires: [],
  valid: [
    {
      says: 'before the heat reaches the far side',
      holds: (x) => x[2] * x[3] < 0.1 * x[6] * x[6] * x[4] * x[5],
    },
  ],
  example: {
    inputs: {
      power: '5 W',
      area: '100 mm²',
      time: '250 ms',
      conductivity: '148 W/(m·K)',
      density: '2330 kg/m³',
      'specific-heat': '700 J/(kg·K)',
      thickness: '20 mm',
    },
    result: { rise: '1.81567 K' },
    source:
      'H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, section 2.9, worked by hand: thick silicon, 5e4 W/m², after 0.25 s',
    tolerance: 6e-6,
  },
  compute(x, y) {
    y[0] = surfaceStepRise(x[0] / x[1], x[2], x[3], x[4], x[5]);
    y[1] = Math.sqrt((10 * x[3] * x[2]) / (x[4] * x[5]));
    return 'solved';
  },
};
