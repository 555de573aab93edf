import { innerTrace, outerTrace, traceWidth } from '../../electrical/trace-current.ts';
import type { Formula } from '../../formula.ts';

export const traceWidthFormula: Formula = {
  name: 'trace-width',
  title: 'width of a trace for a current and a rise',
  equation: 'w = (I/(k·ΔT^0.44))^(1/0.725)/t in mils, k = 0.048 on an outer layer, 0.024 on an inner one',
  room: 'power path',
  inputs: [
    { name: 'current', symbol: 'I', title: 'direct or rms current', kind: 'current', unit: 'A', low: 0 },
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
      lowOpen: true,
    },
  ],
  outputs: [
    { name: 'outer', title: 'width on an outer layer', kind: 'length', unit: 'mm' },
    { name: 'inner', title: 'width on an inner layer', kind: 'length', unit: 'mm' },
  ],
  source: 'IPC-2221, chart of conductor sizes, as the fit that is in general use',
  requires: [],
  valid: [
    { says: 'rise from 10 K to 100 K', holds: (x) => x[2] >= 10 && x[2] <= 100 },
    { says: 'current up to 17.5 A, on outer layers 35 A', holds: (x) => x[0] <= 35 },
  ],
  example: {
    inputs: { current: '1 A', thickness: '1.378 mil', rise: '10 K' },
    result: { outer: '11.83 mil', inner: '30.76 mil' },
    source: 'polestark.com, trace width after IPC-2221, its worked case',
    tolerance: 0.0005,
  },
  compute(x, y) {
    y[0] = traceWidth(x[0], x[1], x[2], outerTrace);
    y[1] = traceWidth(x[0], x[1], x[2], innerTrace);
    return 'solved';
  },
};
