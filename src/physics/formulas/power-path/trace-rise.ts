import { traceFits, traceRise } from '../../electrical/trace-rise.ts';
import type { Formula } from '../../formula.ts';

export const traceRiseFormula: Formula = {
  name: 'trace-rise',
  title: 'rise of a trace over the board around it',
  equation: 'ΔT = 215.3·I²·w^−1.15/t on an outer layer, 200·I^1.9·w^−1.1·t^−1.52 on an inner one, w and t in mils',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'direct or rms current', kind: 'current', unit: 'A', low: 0 },
    { name: 'width', symbol: 'w', title: 'width of the copper', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'thickness',
      symbol: 't',
      title: 'of the copper; one ounce is 35 µm',
      kind: 'length',
      unit: 'µm',
      low: 0,
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'outer', title: 'rise on an outer layer', kind: 'temperature-difference', unit: 'K' },
    { name: 'inner', title: 'rise on an inner layer of one ounce', kind: 'temperature-difference', unit: 'K' },
  ],
  source:
    'D. Brooks and J. Adam, Trace Currents and Temperatures Revisited, 2015, table 3-1, fits to the charts of IPC-2152',
  requires: [],
  valid: [
    {
      says: 'copper of one ounce, 30 µm to 40 µm: the fit for inner layers is for that weight only',
      holds: (x) => x[2] >= 30e-6 && x[2] <= 40e-6,
    },
  ],
  example: {
    inputs: { current: '1.4164291 A', width: '20 mil', thickness: '1.378 mil' },
    result: { outer: '10 K' },
    source:
      'D. Brooks and J. Adam, Trace Currents and Temperatures Revisited, 2015, table 3-1; values from the tests of an open-source board-design calculator: the current for 10 K',
    tolerance: 1e-6,
  },
  compute(x, y) {
    y[0] = traceRise(x[0], x[1], x[2], traceFits.outer);
    y[1] = traceRise(x[0], x[1], x[2], traceFits['inner, one ounce']);
    return 'solved';
  },
};
