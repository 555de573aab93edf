import type { Formula } from '../../formula.ts';
import { padPressure, padStrain } from '../../mechanics/pad.ts';

const positive = { low: 0, lowOpen: true } as const;
const share = { low: 0, lowOpen: true, high: 1 } as const;

export const padCompressionFormula: Formula = {
  name: 'pad-compression',
  title: 'force of a gap pad, from two points of its data sheet',
  equation: 'F = A·p, p = p1·(ε/ε1)^m, m = ln(p2/p1)/ln(ε2/ε1), ε = (t − s)/t; none without contact',
  room: 'plate and pads',
  inputs: [
    { name: 'thickness', symbol: 't', title: 'free pad', kind: 'length', unit: 'mm', ...positive },
    { name: 'space', symbol: 's', title: 'between the surfaces', kind: 'length', unit: 'mm', low: 0 },
    { name: 'area', symbol: 'A', title: 'area that touches', kind: 'area', unit: 'mm²', low: 0 },
    { name: 'strain-1', symbol: 'ε1', title: 'of one point', kind: 'ratio', unit: '%', ...share },
    { name: 'pressure-1', symbol: 'p1', title: 'at that strain', kind: 'pressure', unit: 'kPa', ...positive },
    { name: 'strain-2', symbol: 'ε2', title: 'of another, larger', kind: 'ratio', unit: '%', ...share },
    { name: 'pressure-2', symbol: 'p2', title: 'at that strain', kind: 'pressure', unit: 'kPa', ...positive },
  ],
  outputs: [
    { name: 'strain', title: 'strain', kind: 'ratio', unit: '%' },
    { name: 'pressure', title: 'pressure', kind: 'pressure', unit: 'kPa' },
    { name: 'force', title: 'force', kind: 'force', unit: 'N' },
  ],
  source: 'straight line in double logarithmic scale between points measured by ASTM D575',
  requires: [
    { says: 'the second strain is larger than the first', holds: (x) => x[5] > x[3] },
    { says: 'the second pressure is larger than the first', holds: (x) => x[6] > x[4] },
  ],
  valid: [
    {
      says: 'strain between the two points',
      holds: (x) => padStrain(x[0], x[1]) >= x[3] && padStrain(x[0], x[1]) <= x[5],
    },
    {
      says: 'strain from 20 % to 45 %',
      holds: (x) => padStrain(x[0], x[1]) >= 0.2 && padStrain(x[0], x[1]) <= 0.45,
    },
  ],
  example: {
    inputs: {
      thickness: '1 mm',
      space: '0.7 mm',
      area: '100 mm²',
      'strain-1': '20 %',
      'pressure-1': '100 kPa',
      'strain-2': '40 %',
      'pressure-2': '400 kPa',
    },
    result: { strain: '30 %', pressure: '225 kPa', force: '22.5 N' },
    source: 'worked out by hand: twice the strain at four times the pressure is a square, 100 kPa · 1.5²; invented pad',
    tolerance: 0.0001,
  },
  compute(x, y) {
    y[0] = padStrain(x[0], x[1]);
    y[1] = y[0] > 0 ? padPressure(y[0], x[3], x[4], x[5], x[6]) : 0;
    y[2] = y[1] * x[2];
    return 'solved';
  },
};
