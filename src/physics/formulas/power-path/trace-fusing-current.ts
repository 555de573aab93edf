import { fastFusingCurrent } from '../../electrical/fusing-current.ts';
import type { Formula } from '../../formula.ts';

export const traceFusingCurrentFormula: Formula = {
  name: 'trace-fusing-current',
  title: 'current that melts a copper trace within a short time',
  equation: 'I = A·√(log10(1 + (1083 °C − T)/(234 °C + T))/(33·τ)), A = w·t in circular mils, τ in seconds',
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
    { name: 'time', symbol: 'τ', title: 'until it melts', kind: 'time', unit: 's', low: 0, lowOpen: true },
    {
      name: 'temperature',
      symbol: 'T',
      title: 'of the copper at the start',
      kind: 'temperature',
      unit: '°C',
      low: 39.15,
      lowOpen: true,
      high: 1356.15,
    },
  ],
  outputs: [
    { name: 'current', title: 'melting current; no current that a trace may carry', kind: 'current', unit: 'A' },
  ],
  source: "Onderdonk's equation, as in D. Brooks, Fusing Current, Printed Circuit Design (constants from memory)",
  requires: [],
  valid: [{ says: 'time up to 10 s: after that heat flows off', holds: (x) => x[2] <= 10 }],
  example: {
    inputs: { width: '100 mil', thickness: '1.378 mil', time: '1 s', temperature: '25 °C' },
    result: { current: '25.7 A' },
    source: 'pcbinsider.com, fusing current of one-ounce traces',
    tolerance: 0.003,
  },
  compute(x, y) {
    y[0] = fastFusingCurrent(x[0] * x[1], x[2], x[3]);
    return 'solved';
  },
};
