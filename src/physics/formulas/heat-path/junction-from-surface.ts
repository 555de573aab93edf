import type { Formula } from '../../formula.ts';
import { junctionFromSurface } from '../../thermal/junction.ts';

export const junctionFromSurfaceFormula: Formula = {
  name: 'junction-from-surface',
  title: 'junction from a temperature measured on the top of the package, or on the board beside it',
  equation: 'Tj = Tx + ψ·P',
  room: 'heat path',
  inputs: [
    {
      name: 'surface',
      symbol: 'Tx',
      title: 'measured on the spot that ψ belongs to: ψJT the top, ψJB the board',
      kind: 'temperature',
      unit: '°C',
      low: 0,
    },
    {
      name: 'characterisation',
      symbol: 'ψ',
      title: 'ψJT or ψJB of the data sheet; never θJC: most of the heat does not pass this spot',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
    { name: 'power', symbol: 'P', title: 'all of the loss of the part', kind: 'power', unit: 'W', low: 0 },
  ],
  outputs: [{ name: 'junction', title: 'junction', kind: 'temperature', unit: '°C', unitOf: 'surface' }],
  source: 'JEDEC JESD51-2A; Texas Instruments, SPRA953, Semiconductor and IC Package Thermal Metrics',
  requires: [],
  valid: [
    {
      says: 'ψ is a few K/W; above 30 K/W it is most likely a θ, which needs the share of the heat: use junction-from-case',
      holds: (x) => x[1] <= 30,
    },
  ],
  example: {
    inputs: { surface: '95.26 °C', characterisation: '6.1 K/W', power: '0.51 W' },
    result: { junction: '98.37 °C' },
    source: 'Texas Instruments, E2E forum thread 930658, TLV758P: 98.37 °C; 145.6 °C with θJC(top) = 98.7 K/W is wrong',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = junctionFromSurface(x[0], x[1], x[2]);
    return 'solved';
  },
};
