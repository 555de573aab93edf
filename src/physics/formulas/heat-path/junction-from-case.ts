import type { Formula } from '../../formula.ts';
import { junctionFromCase } from '../../thermal/junction.ts';

export const junctionFromCaseFormula: Formula = {
  name: 'junction-from-case',
  title: 'junction from the face of the case that the heat leaves through',
  equation: 'Tj = Tc + θ·s·P',
  room: 'heat path',
  inputs: [
    { name: 'face', symbol: 'Tc', title: 'temperature of that face', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'resistance', symbol: 'θ', title: 'θJC of that face', kind: 'thermal-resistance', unit: 'K/W', low: 0 },
    { name: 'power', symbol: 'P', title: 'all of the loss of the part', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'share',
      symbol: 's',
      title: 'share of the loss that leaves through that face; there is no result without it',
      kind: 'ratio',
      unit: '%',
      low: 0,
      high: 1,
    },
  ],
  outputs: [{ name: 'junction', title: 'junction', kind: 'temperature', unit: '°C', unitOf: 'face' }],
  source: 'JEDEC JESD51-14; Texas Instruments, SPRA953, Semiconductor and IC Package Thermal Metrics',
  requires: [],
  valid: [
    {
      says: 'nearly all of the heat leaves through that face (90 % or more), as it did when θJC was measured: a heat sink or cold plate on it; for a bare top use junction-from-surface with ψJT',
      holds: (x) => x[3] >= 0.9,
    },
  ],
  example: {
    inputs: { face: '76 °C', resistance: '3.125 K/W', power: '3.9 W', share: '100 %' },
    result: { junction: '88 °C' },
    source: 'course notes on heat sinks with a TIP31 on one, 76 °C + 3.125 K/W · 3.9 W, dropdoc.ru/doc/754049',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = junctionFromCase(x[0], x[1], x[2], x[3]);
    return 'solved';
  },
};
