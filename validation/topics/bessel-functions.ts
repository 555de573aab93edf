import { besselI, besselJ, besselK } from '../../src/physics/thermal/bessel.ts';
import type { Figure, Topic } from '../topic.ts';

const functions = { J: besselJ, I: besselI, K: besselK };

const table: readonly [name: 'J' | 'I' | 'K', order: 0 | 1, x: number, value: number, lastDigit: number][] = [
  ['J', 0, 1, 0.7651976866, 1e-10],
  ['J', 1, 1, 0.4400505857, 1e-10],
  ['J', 0, 5, -0.1775967713, 1e-10],
  ['J', 1, 5, -0.3275791376, 1e-10],
  ['J', 0, 29, -0.1478487647, 1e-10],
  ['J', 0, 50, 0.0558123277, 1e-10],
  ['J', 1, 50, -0.0975118281, 1e-10],
  ['J', 0, 100, 0.0199858503, 1e-10],
  ['J', 1, 100, -0.077145352, 1e-10],
  ['J', 0, 3.8317059702, -0.4027593957, 1e-10],
  ['I', 0, 1, 1.266065878, 1e-9],
  ['I', 1, 1, 0.565159104, 1e-9],
  ['I', 0, 5, 27.23987182, 1e-8],
  ['I', 1, 5, 24.33564214, 1e-8],
  ['I', 0, 10, 2815.716628, 1e-6],
  ['I', 1, 10, 2670.988304, 1e-6],
  ['K', 0, 0.1, 2.427069025, 1e-9],
  ['K', 1, 0.1, 9.853844781, 1e-9],
  ['K', 0, 1, 0.4210244382, 1e-10],
  ['K', 1, 1, 0.6019072302, 1e-10],
  ['K', 0, 5, 0.003691098334, 1e-12],
  ['K', 1, 5, 0.004044613445, 1e-12],
];

export const topic: Topic = {
  title: 'Bessel functions of annular fins and round plates',
  field: 'thermal',
  figures: table.map(([name, order, x, value, lastDigit]): Figure => {
    return {
      what: `${name}${order}(${x}) [1]`,
      computed: functions[name](order, x),
      published: value,
      tolerance: lastDigit,
      why: 'last printed digit',
      source:
        'NBS, Handbook of Mathematical Functions (Abramowitz and Stegun), tables 9.1 and 9.8 (from memory; the same by SciPy 1.10)',
      tier: 'A',
    };
  }),
};
