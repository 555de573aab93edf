import type { Formula } from '../../formula.ts';
import { layerDrops } from '../../thermal/stack.ts';

export const junctionOverHeatSinkFormula: Formula = {
  name: 'junction-over-heat-sink',
  title: 'temperatures from the junction to the air, with a heat sink',
  equation: 'Tj = Ta + P·(R1 + R2 + R3)',
  room: 'heat path',
  inputs: [
    {
      name: 'ambient',
      symbol: 'Ta',
      title: 'air that the heat sink takes in',
      kind: 'temperature',
      unit: '°C',
      low: 0,
    },
    { name: 'power', symbol: 'P', title: 'heat that goes through the heat sink', kind: 'power', unit: 'W', low: 0 },
    {
      name: 'junction-to-case',
      symbol: 'R1',
      title: 'θJC of the face that the heat sink is on',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
    { name: 'case-to-sink', symbol: 'R2', title: 'interface', kind: 'thermal-resistance', unit: 'K/W', low: 0 },
    {
      name: 'sink-to-ambient',
      symbol: 'R3',
      title: 'heat sink to air',
      kind: 'thermal-resistance',
      unit: 'K/W',
      low: 0,
    },
  ],
  outputs: [
    { name: 'junction', title: 'junction', kind: 'temperature', unit: '°C', unitOf: 'ambient' },
    { name: 'case', title: 'case', kind: 'temperature', unit: '°C', unitOf: 'ambient' },
    { name: 'sink', title: 'heat sink', kind: 'temperature', unit: '°C', unitOf: 'ambient' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.1.3',
  requires: [],
  valid: [{ says: 'junction below 200 °C', holds: (x) => x[0] + x[1] * (x[2] + x[3] + x[4]) < 473.15 }],
  example: {
    inputs: {
      ambient: '50 °C',
      power: '2.78 W',
      'junction-to-case': '0.5 K/W',
      'case-to-sink': '0.45 K/W',
      'sink-to-ambient': '19.1 K/W',
    },
    result: { junction: '105.7 °C' },
    source: 'CUI, How to select a heat sink, training slides 9 and 10, 2017: 27 K/W from 125 °C to 50 °C is 2.78 W',
    tolerance: 0.0005,
  },
  compute(x, y) {
    const [inPart, inInterface, inSink] = layerDrops(x[1], [x[2], x[3], x[4]]);
    y[2] = x[0] + inSink;
    y[1] = y[2] + inInterface;
    y[0] = y[1] + inPart;
    return 'solved';
  },
};
