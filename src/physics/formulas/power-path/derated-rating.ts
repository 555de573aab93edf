import { deratedRating } from '../../electrical/derating.ts';
import type { Formula } from '../../formula.ts';

export const deratedRatingFormula: Formula = {
  name: 'derated-rating',
  title: "a part's rated power at its temperature, by a derating line",
  equation: 'full up to T1, then P·(T2 − T)/(T2 − T1), nothing from T2 on',
  room: 'power path',
  inputs: [
    { name: 'rating', symbol: 'P', title: 'full rating', kind: 'power', unit: 'W', low: 0 },
    { name: 'temperature', symbol: 'T', title: 'temperature of the part', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'from', symbol: 'T1', title: 'full rating up to here', kind: 'temperature', unit: '°C', low: 0 },
    { name: 'end', symbol: 'T2', title: 'nothing left here', kind: 'temperature', unit: '°C', low: 0 },
  ],
  outputs: [
    { name: 'derated', title: 'rating left', kind: 'power', unit: 'W', unitOf: 'rating' },
    { name: 'share', title: 'share of the full rating', kind: 'ratio', unit: '1' },
  ],
  source: 'IEC 60115-1, rated dissipation and derating curve',
  requires: [{ says: 'the end of the line lies above its start', holds: (x) => x[3] > x[2] }],
  valid: [
    { says: 'temperature from −55 °C', holds: (x) => x[1] >= 218.15 },
    { says: 'temperature up to the end of the line', holds: (x) => x[1] <= x[3] },
  ],
  example: {
    inputs: { rating: '3 W', temperature: '100 °C', from: '70 °C', end: '170 °C' },
    result: { derated: '2.1 W' },
    source:
      'data sheet of a metal-element sense resistor (LMP25): 3 W at 70 °C, straight line to nothing at 170 °C; 70 % at 100 °C read off that line',
    tolerance: 0.005,
  },
  compute(x, y) {
    y[0] = deratedRating(x[0], x[1], x[2], x[3]);
    y[1] = deratedRating(1, x[1], x[2], x[3]);
    return 'solved';
  },
};
