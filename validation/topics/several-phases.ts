import { inductorRipple } from '../../src/physics/electrical/buck-ripple.ts';
import { inputCapacitorCurrent } from '../../src/physics/electrical/input-capacitor-current.ts';
import { outputRipple } from '../../src/physics/electrical/output-ripple-cancellation.ts';
import { phaseCurrent } from '../../src/physics/electrical/phase-current.ts';
import { mismatchCurrent, sharePhases } from '../../src/physics/electrical/phase-sharing.ts';
import type { Figure, Topic } from '../topic.ts';

const twoForms =
  'Intersil ISL6366 data sheet, equations 49–51, and Texas Instruments SLUU195, 2004, equation 3, with a simulation in the time domain: all three agree';
const inputs: [phases: number, duty: number, output: number, ripple: number, amperes: number][] = [
  [1, 0.125, 36, 0, 11.9059],
  [1, 0.125, 36, 7, 11.9273],
  [2, 0.138889, 32, 0, 7.1665],
  [2, 0.138889, 32, 2.66, 7.1779],
  [3, 0.125, 36, 7, 5.9398],
  [3, 0.4, 30, 6, 4.1392],
  [4, 0.125, 100, 5, 12.5416],
  [4, 0.65, 50, 5, 6.1788],
  [6, 0.07, 150, 8, 12.4294],
  [6, 1 / 19, 120, 10, 9.4371],
];

const ratios: [phases: number, duty: number, ratio: number][] = [
  [2, 0.125, 0.85714],
  [3, 0.125, 0.71429],
  [3, 0.4, 0.22222],
  [4, 0.125, 0.57143],
  [4, 0.65, 0.26374],
  [6, 0.07, 0.62366],
];

const hand = "Kirchhoff's laws, worked out independently";
const two = sharePhases(60, 12, [0.1, 0.1], [1e-3, 1.1e-3]);
const resistances = [2.0e-3, 2.1e-3, 2.2e-3, 1.9e-3];
const four = sharePhases(100, 12, [0.1, 0.1, 0.1, 0.1], resistances);
const conductances = resistances.reduce((sum, resistance) => sum + 1 / resistance, 0);
const skewed = sharePhases(40, 19, [0.051, 0.05], [2.2e-3, 2.2e-3]);

const shares: [what: string, computed: number, published: number][] = [
  ['60 A over 1.00 mΩ and 1.10 mΩ: first', two[0], 31.429],
  ['60 A over 1.00 mΩ and 1.10 mΩ: second', two[1], 28.571],
  ['100 A over four unequal phases: first', four[0], 25.549],
  ['100 A over four unequal phases: second', four[1], 24.332],
  ['100 A over four unequal phases: third', four[2], 23.226],
  ['100 A over four unequal phases: fourth', four[3], 26.893],
  ['the same by conductance: fourth', phaseCurrent(100, 1 / 1.9e-3, conductances), 26.893],
  ['40 A, duty one thousandth apart at 19 V, 2.2 mΩ each: first', skewed[0], 24.318],
  ['40 A, duty one thousandth apart at 19 V, 2.2 mΩ each: second', skewed[1], 15.682],
];

export const topic: Topic = {
  title: 'Several phases',
  field: 'electrical',
  figures: [
    {
      what: 'input capacitors, three phases, 12 V to 1.5 V, 36 A, about 7 A of ripple [A]',
      computed: inputCapacitorCurrent(3, 0.125, 36, 7),
      published: 5.9,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: 'ISL6366 data sheet, Intersil, page 15',
      tier: 'B',
      coarse: 'printed with two digits',
    },
    {
      what: 'output ripple of three phases over 45 A, 20 V to 1.3 V, 0.6 µH, 400 kHz [%]',
      computed: (100 / 45) * outputRipple(3, 0.065, inductorRipple(20, 1.3, 0.6e-6, 400e3)),
      published: 9.69,
      tolerance: 0.005,
      why: 'half of the last digit given; the data sheet says less than 11 %',
      source: 'LTC3731 data sheet, Linear Technology, page 26: U/(L·f)·(1 − N·D), worked out independently',
      tier: 'C',
    },
    ...inputs.map(([phases, duty, output, ripple, published]): Figure => {
      return {
        what: `input capacitors, ${phases} phases, duty ${duty.toPrecision(4)}, ${output} A, ripple ${ripple} A [A]`,
        computed: inputCapacitorCurrent(phases, duty, output, ripple),
        published,
        tolerance: 1e-4,
        why: 'last digit given',
        source: twoForms,
        tier: 'C',
      };
    }),
    ...ratios.map(([phases, duty, published]): Figure => {
      return {
        what: `output ripple over one phase’s, ${phases} phases, duty ${duty} [1]`,
        computed: outputRipple(phases, duty, 1),
        published,
        tolerance: 5e-6,
        why: 'half of the last digit given',
        source: 'Texas Instruments, SLUU195, 2004, equation 6, worked out independently',
        tier: 'C',
      };
    }),
    ...shares.map(([what, computed, published]): Figure => {
      return {
        what: `${what} [A]`,
        computed,
        published,
        tolerance: 5.5e-4,
        why: 'half of the last digit given',
        source: hand,
        tier: 'C',
      };
    }),
    {
      what: 'current moved by one thousandth of duty at 19 V over 2.2 mΩ twice [A]',
      computed: mismatchCurrent(1e-3, 19, 2.2e-3, 2.2e-3),
      published: 4.32,
      tolerance: 0.005,
      why: 'half of the last digit given',
      source: hand,
      tier: 'C',
    },
  ],
  traps: [
    {
      what: 'input capacitors, four phases, 12 V to 1.5 V, 100 A [A]',
      computed: inputCapacitorCurrent(4, 0.125, 100, 5),
      published: 3.18,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'SLUU195, Texas Instruments, 2004, equation 4',
      reason: 'the factor is applied to one phase’s 25 A; the document’s own equation 3 gives 12.4 A',
    },
    {
      what: 'output ripple, two phases, 13.2 V to 1.5 V, 1 µH, 500 kHz [A]',
      computed: outputRipple(2, 1.5 / 13.2, inductorRipple(13.2, 1.5, 1e-6, 500e3)),
      published: 4.374,
      tolerance: 0.0005,
      why: 'half of the last printed digit',
      source: 'TPS40140 data sheet SLUS660H, Texas Instruments, two-phase example',
      reason: 'it needs about half of the example’s own inductance',
    },
  ],
  unchecked: ['a published example of phases sharing by resistance, with numbers: none was found'],
};
