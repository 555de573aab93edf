import { dividerGain } from '../../src/physics/electrical/divider.ts';
import { ratedCurrent } from '../../src/physics/electrical/rated-current.ts';
import type { Figure, Topic } from '../topic.ts';

const lastDigit = 'half of the last printed digit';
const ina = 'INA210–INA215 data sheet SBOS437F, Texas Instruments, 2014';
const bias = 1250;

const ratedCurrents: [watts: number, milliohms: number, amperes: number][] = [
  [0.5, 1, 22.36],
  [1, 1, 31.62],
  [1, 0.5, 44.72],
  [1.5, 0.5, 54.77],
  [2, 0.5, 63.25],
  [3, 0.5, 77.46],
  [4, 0.25, 126.49],
];

const gains: [part: string, input: number, published: number, tolerance: number, where: string][] = [
  ['INA212', 1e3, 0.982, 0.0005, 'section 8.4.1, table 2'],
  ['INA213', 20e3, 0.991, 0.0006, 'section 8.4.1, table 2 (cut, not rounded)'],
  ['INA210', 5e3, 1000 / 1010, 1e-6, 'table 1, 1000/(Rs + 1000)'],
  ['INA211', 2e3, 10000 / 10130, 1e-6, 'table 1, 10000/(13·Rs + 10000)'],
  ['INA214', 10e3, 10000 / 10090, 1e-6, 'table 1, 10000/(9·Rs + 10000)'],
];

const gainErrors: [part: string, input: number, percent: number, tolerance: number][] = [
  ['INA212', 1e3, 1.77, 0.005],
  ['INA213', 20e3, 0.84, 0.004],
];

export const topic: Topic = {
  title: 'Sense resistors and their dividers',
  field: 'electrical',
  figures: [
    ...ratedCurrents.map(([watts, milliohms, published]): Figure => {
      return {
        what: `rated current of ${milliohms} mΩ, ${watts} W [A]`,
        computed: ratedCurrent(watts, milliohms * 1e-3),
        published,
        tolerance: 0.005,
        why: lastDigit,
        source: 'LRS series data sheet, American Accurate Components, table of rated currents',
        tier: 'B',
      };
    }),
    ...gains.map(([part, input, published, tolerance, where]): Figure => {
      return {
        what: `gain of 10 Ω in each line before an ${part} [1]`,
        computed: dividerGain(10, bias, input),
        published,
        tolerance,
        why: tolerance > 1e-5 ? lastDigit : 'the figure is exact to the digits printed',
        source: `${ina}, ${where}`,
        tier: 'B',
      };
    }),
    ...gainErrors.map(([part, input, published, tolerance]): Figure => {
      return {
        what: `gain error of 10 Ω in each line before an ${part} [%]`,
        computed: 100 - 100 * dividerGain(10, bias, input),
        published,
        tolerance,
        why: lastDigit,
        source: `${ina}, section 8.4.1, table 2`,
        tier: 'B',
      };
    }),
  ],
};
