import { connectorFactor, selfHeatingCurrent } from '../../electrical/connector-derating.ts';
import type { Formula } from '../../formula.ts';

export const connectorCurrentFormula: Formula = {
  name: 'connector-current',
  title: "a connector's current at another ambient temperature",
  equation: 'I = I1·√((T_max − T)/(T_max − T1)), usable 0.8·I',
  room: 'power path',
  inputs: [
    {
      name: 'current',
      symbol: 'I1',
      title: 'current of its base curve at one ambient temperature',
      kind: 'current',
      unit: 'A',
      low: 0,
    },
    { name: 'at', symbol: 'T1', title: 'that ambient temperature', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'limit', symbol: 'T_max', title: 'its limiting temperature', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'ambient', symbol: 'T', title: 'ambient temperature', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [
    { name: 'base', title: 'current of the base curve there', kind: 'current', unit: 'A' },
    { name: 'usable', title: 'current that may be used', kind: 'current', unit: 'A' },
  ],
  source: 'balance of I²R and heat; IEC 60512-5-2, test 5b (factor 0.8)',
  requires: [
    { says: 'its limiting temperature lies above the ambient temperature of the curve', holds: (x) => x[2] > x[1] },
  ],
  valid: [{ says: 'ambient below the limiting temperature', holds: (x) => x[3] < x[2] }],
  example: {
    inputs: { current: '21.9 A', at: '20 °C', limit: '150 °C', ambient: '140 °C' },
    result: { base: '6.1 A', usable: '4.88 A' },
    source: 'connector data sheet, insulation-displacement terminal 454302, IEC 60512-5-2 test 5b',
    tolerance: 0.0045,
  },
  compute(x, y) {
    y[0] = selfHeatingCurrent(x[0], x[1], x[2], x[3]);
    y[1] = connectorFactor * y[0];
    return 'solved';
  },
};
