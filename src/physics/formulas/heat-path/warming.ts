import type { Formula } from '../../formula.ts';
import { temperatureOnTheWay } from '../../thermal/lumped-warming.ts';

export const warmingFormula: Formula = {
  name: 'warming',
  title: 'temperature on the way to steady state',
  equation: 'T = Te + (T0 − Te)·exp(−t/τ); after 5·τ less than 1 % is missing',
  room: 'heat path',
  inputs: [
    { name: 'start', symbol: 'T0', title: 'temperature at the start', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'end', symbol: 'Te', title: 'temperature it ends at', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'time', symbol: 't', title: 'time since the start', kind: 'time', unit: 's', low: 0 },
    { name: 'time-constant', symbol: 'τ', title: 'time constant', kind: 'time', unit: 's', low: 0, lowOpen: true },
  ],
  outputs: [
    { name: 'temperature', title: 'temperature then', kind: 'temperature', unit: '°C', unitOf: 'end' },
    { name: 'missing', title: 'what is still missing', kind: 'temperature-difference', unit: 'K' },
  ],
  source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 5.6 and 5.10',
  requires: [],
  valid: [
    {
      says: 'body at one temperature throughout, with one time constant; a board with its heat sink has several',
      holds: (x) => x[2] > 0,
    },
  ],
  example: {
    inputs: { start: '25 °C', end: '200 °C', time: '5.16 s', 'time-constant': '1 s' },
    result: { temperature: '199 °C' },
    source:
      'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 5.1: a thermocouple in a gas stream, 199 °C after 5.2 s (5.16 s)',
    tolerance: 0.001,
  },
  compute(x, y) {
    y[0] = temperatureOnTheWay(x[0], x[1], x[2], x[3]);
    y[1] = x[1] - y[0];
    return 'solved';
  },
};
