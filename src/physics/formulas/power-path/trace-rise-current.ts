import { traceFits, traceRiseCurrent } from '../../electrical/trace-rise.ts';
import type { Formula } from '../../formula.ts';

export const traceRiseCurrentFormula: Formula = {
  name: 'trace-rise-current',
  title: 'current that warms a trace by a rise over the board around it',
  equation:
    'I = (ΔT·w^1.15·t/215.3)^(1/2) on an outer layer, (ΔT·w^1.1·t^1.52/200)^(1/1.9) on an inner one, w and t in mils',
  room: 'power path',
  inputs: [
    {
      name: 'rise',
      symbol: 'ΔT',
      title: 'rise of the trace over the board',
      kind: 'temperature-difference',
      unit: 'K',
      low: 0,
    },
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
    { name: 'outer', title: 'current on an outer layer', kind: 'current', unit: 'A' },
    { name: 'inner', title: 'current on an inner layer of one ounce', kind: 'current', unit: 'A' },
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
    inputs: { rise: '10 K', width: '20 mil', thickness: '1.378 mil' },
    result: { outer: '1.416429103 A', inner: '1.513124408 A' },
    source:
      'D. Brooks and J. Adam, Trace Currents and Temperatures Revisited, 2015, table 3-1; values from the tests of an open-source board-design calculator',
    tolerance: 1e-8,
  },
  compute(x, y) {
    y[0] = traceRiseCurrent(x[0], x[1], x[2], traceFits.outer);
    y[1] = traceRiseCurrent(x[0], x[1], x[2], traceFits['inner, one ounce']);
    return 'solved';
  },
};
