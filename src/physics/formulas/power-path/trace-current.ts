import { innerTrace, outerTrace, traceCurrent } from '../../electrical/trace-current.ts';
import type { Formula } from '../../formula.ts';

export const traceCurrentFormula: Formula = {
  name: 'trace-current',
  title: 'current that warms a trace by a rise',
  equation: 'I = k·ΔT^0.44·(w·t)^0.725 in mils, k = 0.048 on an outer layer, 0.024 on an inner one',
  room: 'power path',
  inputs: [
    { name: 'width', symbol: 'w', title: 'of the trace', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
    {
      name: 'thickness',
      symbol: 't',
      title: 'of the copper; one ounce is 35 µm',
      kind: 'length',
      unit: 'µm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'rise',
      symbol: 'ΔT',
      title: 'rise of the trace over the board',
      kind: 'temperature-difference',
      unit: 'K',
      low: 0,
    },
  ],
  outputs: [
    { name: 'outer', title: 'current on an outer layer', kind: 'current', unit: 'A' },
    { name: 'inner', title: 'current on an inner layer', kind: 'current', unit: 'A' },
  ],
  source: 'IPC-2221, chart of conductor sizes, as the fit that is in general use',
  requires: [],
  valid: [
    { says: 'rise from 10 K to 100 K', holds: (x) => x[2] >= 10 && x[2] <= 100 },
    { says: 'width up to 400 mil (10.2 mm)', holds: (x) => x[0] <= 0.01017 },
  ],
  example: {
    inputs: { width: '11.83 mil', thickness: '1.378 mil', rise: '10 K' },
    result: { outer: '1 A' },
    source: 'polestark.com, trace width after IPC-2221, its worked case',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = traceCurrent(x[0], x[1], x[2], outerTrace);
    y[1] = traceCurrent(x[0], x[1], x[2], innerTrace);
    return 'solved';
  },
};
