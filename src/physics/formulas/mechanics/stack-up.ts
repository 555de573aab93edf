import type { Formula } from '../../formula.ts';
import { gapOverPad, rootSumSquare, worstCase } from '../../mechanics/stack-up.ts';

const notNegative = { low: 0 } as const;
const tolerances = [0, 0, 0];

export const stackUpFormula: Formula = {
  name: 'stack-up',
  title: 'gap between plate and pad with its tolerances; negative: the pad is compressed',
  equation: 'g = H − h − t; worst case ± (tH + th + tt); root sum square ± √(tH² + th² + tt²)',
  room: 'plate and pads',
  inputs: [
    { name: 'plate', symbol: 'H', title: 'plate over the board', kind: 'length', unit: 'mm', ...notNegative },
    { name: 'component', symbol: 'h', title: 'component over the board', kind: 'length', unit: 'mm', ...notNegative },
    { name: 'pad', symbol: 't', title: 'free pad', kind: 'length', unit: 'mm', ...notNegative },
    { name: 'plate-tolerance', symbol: 'tH', title: '± of the plate', kind: 'length', unit: 'mm', ...notNegative },
    {
      name: 'component-tolerance',
      symbol: 'th',
      title: '± of the component',
      kind: 'length',
      unit: 'mm',
      ...notNegative,
    },
    { name: 'pad-tolerance', symbol: 'tt', title: '± of the pad', kind: 'length', unit: 'mm', ...notNegative },
  ],
  outputs: [
    { name: 'gap', title: 'gap', kind: 'length', unit: 'mm' },
    { name: 'worst-case', title: '± at most', kind: 'length', unit: 'mm' },
    { name: 'root-sum-square', title: '± as a rule', kind: 'length', unit: 'mm' },
    { name: 'least', title: 'least gap', kind: 'length', unit: 'mm' },
    { name: 'greatest', title: 'greatest gap', kind: 'length', unit: 'mm' },
  ],
  source: 'ASME Y14.5 practice, arithmetic and statistical tolerance stacks',
  requires: [],
  valid: [
    {
      says: 'tolerances no larger than their sizes',
      holds: (x) => x[3] <= x[0] && x[4] <= x[1] && x[5] <= x[2],
    },
  ],
  example: {
    inputs: {
      plate: '20 mm',
      component: '10 mm',
      pad: '5 mm',
      'plate-tolerance': '0.2 mm',
      'component-tolerance': '0.1 mm',
      'pad-tolerance': '0.05 mm',
    },
    result: { 'worst-case': '0.35 mm', 'root-sum-square': '0.2291 mm' },
    source:
      'a tolerance calculator’s reference case of 20, 10 and 5 mm (tolstackup.com); single tolerances inferred from both results',
    tolerance: 0.0005,
  },
  compute(x, y) {
    for (let i = 0; i < 3; i++) tolerances[i] = x[3 + i];
    y[0] = gapOverPad(x[0], x[1], x[2]);
    y[1] = worstCase(tolerances);
    y[2] = rootSumSquare(tolerances);
    y[3] = y[0] - y[1];
    y[4] = y[0] + y[1];
    return 'solved';
  },
};
