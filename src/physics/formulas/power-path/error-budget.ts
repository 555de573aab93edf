import { rootSumSquare } from '../../electrical/error-budget.ts';
import type { Formula } from '../../formula.ts';

const errors = [0, 0, 0];

export const errorBudgetFormula: Formula = {
  name: 'error-budget',
  title: 'sum of independent errors',
  equation: 'e = √(a² + b² + c²)',
  room: 'power path',
  inputs: [
    { name: 'a', symbol: 'a', title: 'one error', kind: 'ratio', unit: '%', low: 0 },
    { name: 'b', symbol: 'b', title: 'another', kind: 'ratio', unit: '%', low: 0 },
    { name: 'c', symbol: 'c', title: 'a third; 0 if there is none', kind: 'ratio', unit: '%', low: 0 },
  ],
  outputs: [
    { name: 'error', title: 'together', kind: 'ratio', unit: '%' },
    { name: 'worst', title: 'if all add up straight: a + b + c', kind: 'ratio', unit: '%' },
  ],
  source:
    'Texas Instruments, INA240 data sheet SBOS662C, total error by root sum of squares; GUM (JCGM 100:2008), 5.1.2',
  requires: [],
  valid: [
    { says: 'errors up to 10 %: above, products of errors count', holds: (x) => Math.max(x[0], x[1], x[2]) <= 0.1 },
  ],
  example: {
    inputs: { a: '0.70 %', b: '1.40 %', c: '0.01 %' },
    result: { error: '1.56 %' },
    source: 'Texas Instruments, INA28x data sheet SBOS554C, error budget',
    tolerance: 0.004,
  },
  compute(x, y) {
    for (let i = 0; i < 3; i++) errors[i] = x[i];
    y[0] = rootSumSquare(errors);
    y[1] = x[0] + x[1] + x[2];
    return 'solved';
  },
};
