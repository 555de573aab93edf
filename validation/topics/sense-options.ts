import { dividerGain } from '../../src/physics/electrical/divider.ts';
import { rootSumSquare } from '../../src/physics/electrical/error-budget.ts';
import { senseFilterError } from '../../src/physics/electrical/sense-filter-error.ts';
import { seriesResistance, severalInParallel } from '../../src/physics/electrical/several-resistances.ts';
import { resistorToStack, stackedReading } from '../../src/physics/electrical/stacked-sense.ts';
import { dividerRatio } from '../../src/physics/electrical/voltage-divider.ts';
import type { Figure, Topic } from '../topic.ts';

const lastDigit = 'half of the last printed digit';
const ina210 = 'INA210–INA215 data sheet SBOS437F, Texas Instruments, 2014';
const ina240 = 'INA240 data sheet SBOS662C, Texas Instruments, error budget';
const ina28x = 'INA28x data sheet SBOS554C, Texas Instruments, error budget';
const collegePhysics = 'College Physics, OpenStax, 2012';

const budgets: [parts: number[], published: number, unit: string, source: string, coarse?: string][] = [
  [[0.05, 0.05, 0.01], 0.07, '%', ina240, 'printed with one digit'],
  [[5, 12.1, 5], 14, 'µV', ina240, 'printed with two digits'],
  [[0.14, 0.05, 0.01], 0.15, '%', ina240, 'printed with two digits'],
  [[0.2, 0.4, 0.01], 0.45, '%', ina28x, 'printed with two digits'],
  [[0.7, 1.4, 0.01], 1.56, '%', ina28x],
];

/** Gain factors as the data sheet simplifies them, at a filter resistor. */
const simplified: [part: string, internal: number, filter: number, published: number, form: string][] = [
  ['INA210', 5e3, 100, 1000 / 1100, '1000/(Rs + 1000)'],
  ['INA211', 2e3, 100, 10_000 / 11_300, '10000/(13·Rs + 10000)'],
  ['INA214', 10e3, 100, 10_000 / 10_900, '10000/(9·Rs + 10000)'],
];

const stacks: [original: number, stacked: number, effective: number, digits: number][] = [
  [5, 5, 2.5, 1e-9],
  [5, 10, 3.3333, 5e-5],
  [5, 3, 1.875, 1e-9],
  [5, 100, 4.7619, 5e-5],
];

export const topic: Topic = {
  title: 'Stacked resistors, dividers and error budgets',
  field: 'electrical',
  figures: [
    ...budgets.map(([parts, published, unit, source, coarse]): Figure => {
      return {
        what: `root sum of squares of ${parts.join(', ')} [${unit}]`,
        computed: rootSumSquare(parts),
        published,
        tolerance: unit === 'µV' ? 0.5 : published > 1 ? 0.006 : 0.005,
        why: published === 1.56 ? 'last printed digit, cut' : lastDigit,
        source,
        tier: 'B',
        ...(coarse && { coarse }),
      };
    }),
    {
      what: 'root sum of squares of 3 and 4 [1]',
      computed: rootSumSquare([3, -4]),
      published: 5,
      tolerance: 1e-12,
      why: 'exact, whatever the sign',
      source: 'theorem of Pythagoras',
      tier: 'C',
    },
    ...simplified.map(([part, internal, filter, published, form]): Figure => {
      return {
        what: `gain with ${filter} Ω in each line before an ${part} [1]`,
        computed: 1 - senseFilterError(filter, internal, 1250),
        published,
        tolerance: 1e-9,
        why: 'exact',
        source: `${ina210}, table 1, ${form}`,
        tier: 'B',
      };
    }),
    ...(
      [
        ['INA212', 1e3, 1.77, 0.005],
        ['INA213', 20e3, 0.84, 0.004],
      ] as const
    ).map(([part, internal, published, tolerance]): Figure => {
      return {
        what: `error of 10 Ω in each line before an ${part} [%]`,
        computed: 100 * senseFilterError(10, internal, 1250),
        published,
        tolerance,
        why: 'half of the last printed digit, or less so that one per cent shows',
        source: `${ina210}, section 8.4.1, table 2`,
        tier: 'B',
      };
    }),
    {
      what: 'the same error from the divider’s gain, INA215, 10 Ω [%]',
      computed: 100 - 100 * dividerGain(10, 1250, 13_300),
      published: 0.868,
      tolerance: 0.0005,
      why: lastDigit,
      source: `${ina210}, equation 1, worked out independently`,
      tier: 'C',
    },
    ...stacks.map(([original, stacked, published, tolerance]): Figure => {
      return {
        what: `${original} mΩ with ${stacked} mΩ across it [mΩ]`,
        computed: severalInParallel([original, stacked]),
        published,
        tolerance,
        why: lastDigit,
        source: "Ohm's law worked out by hand",
        tier: 'C',
      };
    }),
    {
      what: '1.00, 6.00 and 13.0 Ω in series [Ω]',
      computed: seriesResistance([1, 6, 13]),
      published: 20,
      tolerance: 0.05,
      why: lastDigit,
      source: `${collegePhysics}, example 21.1`,
      tier: 'B',
    },
    {
      what: '1.00, 6.00 and 13.0 Ω in parallel at once [Ω]',
      computed: severalInParallel([1, 6, 13]),
      published: 0.804,
      tolerance: 0.0005,
      why: lastDigit,
      source: `${collegePhysics}, example 21.2`,
      tier: 'B',
    },
    {
      what: '0.5 mΩ read together with two joints of 15 µΩ [mΩ]',
      computed: seriesResistance([0.5, 0.015, 0.015]),
      published: 0.53,
      tolerance: 1e-12,
      why: 'exact: 6 % more',
      source: 'worked out by hand; joints inside the sense points as in Analog Dialogue 46-06, 2012',
      tier: 'C',
    },
    {
      what: 'true 60 W with 10 mΩ across 5 mΩ, as read [W]',
      computed: stackedReading(60, 5e-3, 10e-3),
      published: 40,
      tolerance: 1e-9,
      why: 'exact',
      source: "Ohm's law worked out by hand",
      tier: 'C',
    },
    {
      what: 'true 10 W with nothing across 5 mΩ, as read [W]',
      computed: stackedReading(10, 5e-3, Number.POSITIVE_INFINITY),
      published: 10,
      tolerance: 1e-12,
      why: 'exact: an open joint changes nothing',
      source: "Ohm's law worked out by hand",
      tier: 'C',
    },
    {
      what: 'resistor across 1 mΩ for 1.25 times the power [mΩ]',
      computed: 1e3 * resistorToStack(1e-3, 1.25),
      published: 4,
      tolerance: 1e-9,
      why: 'exact: 4 mΩ beside 1 mΩ is 0.8 mΩ',
      source: "Ohm's law worked out by hand",
      tier: 'C',
    },
    {
      what: 'resistor across 1 mΩ for 1.10 times the power [mΩ]',
      computed: 1e3 * resistorToStack(1e-3, 1.1),
      published: 10,
      tolerance: 1e-9,
      why: 'exact: 10 mΩ beside 1 mΩ is 0.909 mΩ',
      source: "Ohm's law worked out by hand",
      tier: 'C',
    },
    {
      what: 'output voltage from 0.8 V by 32.4 kΩ over 25.5 kΩ [V]',
      computed: 0.8 / dividerRatio(32.4e3, 25.5e3, Number.POSITIVE_INFINITY),
      published: 1.816,
      tolerance: 0.001,
      why: 'last printed digit, cut',
      source: 'LTC3728 data sheet, Linear Technology, design example',
      tier: 'B',
    },
    {
      what: 'divider of 10 kΩ over 20 kΩ, loaded with 20 kΩ [1]',
      computed: dividerRatio(10e3, 20e3, 20e3),
      published: 0.5,
      tolerance: 1e-12,
      why: 'exact: 20 kΩ beside 20 kΩ is 10 kΩ',
      source: "Kirchhoff's laws worked out by hand",
      tier: 'C',
    },
  ],
  unchecked: [
    'measured errors of footprints for four-wire sensing (Analog Dialogue 46-06): its table could not be read',
  ],
};
