import { buckDuty } from '../../src/physics/electrical/buck-duty.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../../src/physics/electrical/buck-losses.ts';
import { inductorRipple } from '../../src/physics/electrical/buck-ripple.ts';
import { peakCurrent, rmsCurrent } from '../../src/physics/electrical/inductor-current.ts';
import { inputCapacitorCurrent } from '../../src/physics/electrical/input-capacitor-current.ts';
import { onResistanceAt } from '../../src/physics/electrical/on-resistance.ts';
import { parallelResistance } from '../../src/physics/electrical/parallel-resistance.ts';
import type { Figure, Topic } from '../topic.ts';

const lastDigit = 'half of the last printed digit';
const tps = 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, section 6.1';
const ltc3728 = 'LTC3728 data sheet, Linear Technology, design example';
const ripple = inductorRipple(13.2, 1.5, 1e-6, 500e3);
const rohmRipple = inductorRipple(12, 5, 4.7e-6, 1e6);

// The same note's example, its other terms: each is one product of the inputs, worked out by hand.
const otherTerms: [what: string, computed: number, published: number][] = [
  ['reverse recovery, 0.3 A, 25 ns', 1e3 * recoveryLoss(0.5 * 0.3 * 25e-9, 12, 1e6), 45],
  ['gate, 2 nC at 5 V', 1e3 * gateLoss(2e-9, 5, 1e6), 10],
  ['dead times, 0.5 V, 2 × 30 ns', 1e3 * deadTimeLoss(0.5, 3, 60e-9, 1e6), 90],
  ['output charge, two of 80 pF', 1e3 * outputChargeLoss(160e-12 * 12, 12, 1e6), 11.5],
  ['overlap, 4 ns and 6 ns', 1e3 * switchingLoss(12, 3, 10e-9, 1e6), 180],
  ['winding, 80 mΩ', 1e3 * conductionLoss(3, rohmRipple, 80e-3, 1), 722.6],
];

export const topic: Topic = {
  title: 'Buck regulators',
  field: 'electrical',
  figures: [
    {
      what: 'ripple, 13.2 V to 1.5 V, 1 µH, 500 kHz [A]',
      computed: ripple,
      published: 2.66,
      tolerance: 0.005,
      why: lastDigit,
      source: tps,
      tier: 'B',
    },
    {
      what: 'rms current of the high side, 12 V to 1.5 V, 20 A [A]',
      computed: rmsCurrent(20, 2.66) * Math.sqrt(buckDuty(12, 1.5)),
      published: 7.07,
      tolerance: 0.01,
      why: 'last printed digit, cut',
      source: tps,
      tier: 'B',
    },
    {
      what: 'rms current of the low side [A]',
      computed: rmsCurrent(20, 2.66) * Math.sqrt(1 - buckDuty(12, 1.5)),
      published: 18.7,
      tolerance: 0.05,
      why: lastDigit,
      source: tps,
      tier: 'B',
    },
    {
      what: 'low-side conduction, two of 4 mΩ in parallel [W]',
      computed: conductionLoss(20, 2.66, parallelResistance(4e-3, 4e-3), 1 - buckDuty(12, 1.5)),
      published: 0.7,
      tolerance: 0.005,
      why: lastDigit,
      source: tps,
      tier: 'B',
    },
    {
      what: 'high-side conduction, 12 V to 5 V, 3 A, 100 mΩ, 4.7 µH, 1 MHz [mW]',
      computed: 1e3 * conductionLoss(3, rohmRipple, 0.1, buckDuty(12, 5)),
      published: 376,
      tolerance: 0.5,
      why: `${lastDigit}; without the ripple it is 375.0`,
      source: 'Efficiency of Buck Converter, application note 64AN035E rev. 2, ROHM, 2021',
      tier: 'B',
    },
    {
      what: 'peak current, 22 V to 1.8 V, 5 A, 3.3 µH, 300 kHz [A]',
      computed: peakCurrent(5, inductorRipple(22, 1.8, 3.3e-6, 300e3)),
      published: 5.84,
      tolerance: 0.01,
      why: 'last printed digit',
      source: ltc3728,
      tier: 'B',
    },
    {
      // Its overlap term 1.7·U²·I·C·f is ½·U·I·t·f with t = 2·1.7·U·C.
      what: 'high-side loss, 22 V to 1.8 V, 5 A, 42 mΩ at 50 °C, 300 kHz [mW]',
      computed:
        1e3 *
        (conductionLoss(5, 0, onResistanceAt(42e-3, 0.005, 323.15), buckDuty(22, 1.8)) +
          switchingLoss(22, 5, 2 * 1.7 * 22 * 100e-12, 300e3)),
      published: 220,
      tolerance: 0.5,
      why: lastDigit,
      source: ltc3728,
      tier: 'B',
    },
    {
      what: 'low-side loss at short circuit, 3.2 A, 42 mΩ times 1.1 [mW]',
      computed: 1e3 * conductionLoss(3.2, 0, onResistanceAt(42e-3, 0.005, 318.15), 1 - buckDuty(22, 1.8)),
      published: 434,
      tolerance: 0.5,
      why: lastDigit,
      source: ltc3728,
      tier: 'B',
    },
    {
      what: 'low-side conduction, 18 V to 12 V, 5 A, 9 mΩ times 1.2 [mW]',
      computed: 1e3 * conductionLoss(5, 0, 9e-3 * 1.2, 1 - buckDuty(18, 12)),
      published: 90,
      tolerance: 0.5,
      why: lastDigit,
      source: 'LTC3780 data sheet, Linear Technology, page 23',
      tier: 'B',
    },
    {
      what: 'overlap, 25 V, 3 A, 20 ns each edge, 150 kHz [W]',
      computed: switchingLoss(25, 3, 40e-9, 150e3),
      published: 0.225,
      tolerance: 0.0005,
      why: lastDigit,
      source: 'LT8708 data sheet, Linear Technology, page 53',
      tier: 'B',
    },
    {
      what: 'output charge, 25 V, two of 685 pF, 150 kHz [W]',
      computed: outputChargeLoss(2 * 685e-12 * 25, 25, 150e3),
      published: 0.064,
      tolerance: 0.0003,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'LT8708 data sheet, Linear Technology, page 53',
      tier: 'B',
    },
    ...otherTerms.map(([what, computed, published]): Figure => {
      return {
        what: `${what} [mW]`,
        computed,
        published,
        tolerance: 0.003 * published,
        why: 'digits given',
        source:
          'Efficiency of Buck Converter, application note 64AN035E rev. 2, ROHM, 2021, its equations worked out by hand',
        tier: 'C',
      };
    }),
    {
      what: 'input capacitors, two phases, 10.8 V to 1.5 V, 32 A [A]',
      computed: inputCapacitorCurrent(2, 1.5 / 10.8, 32, 2.66),
      published: 7.2,
      tolerance: 0.04,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, two-phase example',
      tier: 'B',
    },
    {
      what: 'input capacitors, one phase, 12 V to 1.5 V, 20 A, ripple neglected [A]',
      computed: inputCapacitorCurrent(1, 0.125, 20, 0),
      published: 6.6,
      tolerance: 0.03,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, section 6.1',
      tier: 'B',
    },
  ],
  traps: [
    {
      what: 'conduction loss, 13/25 of (3 A)² through 6.9 mΩ times 1.5 [W]',
      computed: conductionLoss(3, 0, 6.9e-3 * 1.5, 13 / 25),
      published: 0.13,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'LT8708 data sheet, Linear Technology, page 53',
      reason: 'its own equation gives 0.048 W',
    },
    {
      what: 'input capacitor current, 14 V to 1.8 V, 10 A [A]',
      computed: inputCapacitorCurrent(1, 1.8 / 14, 10, 2.6),
      published: 2.37,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'TPS40192 data sheet SLUS719E, Texas Instruments, equation 16',
      reason: 'subtracts an average from an rms value; the rms of the wave is 3.36 A',
    },
  ],
  unchecked: [
    'phase current sharing by resistance: Kirchhoff only',
    'loss curve of a power stage: it is the data sheet itself',
  ],
};
