import { buckDuty, onTime } from '../../src/physics/electrical/buck-duty.ts';
import { type BuckPhase, buckLosses, totalLoss } from '../../src/physics/electrical/buck-loss-sum.ts';
import { conductionLoss, deadTimeLoss, switchingLoss } from '../../src/physics/electrical/buck-losses.ts';
import { inductanceForRipple, inductorRipple } from '../../src/physics/electrical/buck-ripple.ts';
import {
  capacitorLoss,
  leastInputCapacitance,
  mostInputResistance,
  outputCapacitorCurrent,
} from '../../src/physics/electrical/capacitor-loss.ts';
import { converterInputCurrent, efficiency, lossFromEfficiency } from '../../src/physics/electrical/efficiency.ts';
import { peakCurrent, saturationLimit, valleyCurrent } from '../../src/physics/electrical/inductor-current.ts';
import { millerOverlapLoss } from '../../src/physics/electrical/miller-overlap-loss.ts';
import { onResistanceAt, onResistanceGrowing } from '../../src/physics/electrical/on-resistance.ts';
import type { Figure, Tier, Topic } from '../topic.ts';

const lastDigit = 'half of the last printed digit';
const tps = 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, section 6.1';
const ltc3728 = 'LTC3728 data sheet, Linear Technology, design example';
const ltc3731 = 'LTC3731 data sheet, Linear Technology, page 23';
const lmr = 'LMR12015 data sheet SNVS817, Texas Instruments, section 8.2.1.10.8';
const rohm = 'Efficiency of Buck Converter, application note 64AN035E rev. 2, ROHM, 2021';

/** The note's example; its charges are U·C of the capacitances it gives. */
const example: BuckPhase = {
  inputVoltage: 12,
  outputVoltage: 5,
  current: 3,
  frequency: 1e6,
  inductance: 4.7e-6,
  highResistance: 0.1,
  lowResistance: 0.07,
  windingResistance: 0.08,
  highEdges: 10e-9,
  lowEdges: 4e-9,
  diodeVoltage: 0.5,
  recoveryCharge: 0.5 * 0.3 * 25e-9,
  deadTime: 60e-9,
  outputCharge: 160e-12 * 12,
  gateCharge: 2e-9,
  driveVoltage: 5,
  controllerCurrent: 1e-3,
  inputResistance: 3e-3,
  outputResistance: 1e-3,
};
const losses = buckLosses(example);
const total = totalLoss(losses);
const terms: [term: keyof typeof losses, milliwatts: number][] = [
  ['highConduction', 376.34],
  ['lowConduction', 368.81],
  ['highOverlap', 180],
  ['lowOverlap', 3],
  ['recovery', 45],
  ['outputCharge', 11.52],
  ['deadTime', 90],
  ['gate', 10],
  ['controller', 12],
  ['winding', 722.57],
  ['inputCapacitors', 6.56],
  ['outputCapacitors', 0.0321],
];
const ripple = inductorRipple(12, 5, 4.7e-6, 1e6);

type Row = [what: string, computed: number, published: number, tolerance: number, source: string, coarse?: string];

/** Published results, each within half of its last digit. */
const printed: Row[] = [
  [
    'inductance for 15 % of 20 A, 13.2 V to 1.5 V, 500 kHz [µH]',
    1e6 * inductanceForRipple(13.2, 1.5, 3, 500e3),
    0.89,
    0.005,
    tps,
  ],
  ['input capacitance for 100 mV [µF]', 1e6 * leastInputCapacitance(20, buckDuty(12, 1.5), 0.1, 500e3), 50, 0.05, tps],
  [
    'series resistance of the input capacitors for 50 mV [mΩ]',
    1e3 * mostInputResistance(0.05, 20, 2.66),
    2.3,
    0.05,
    tps,
    'printed with two digits',
  ],
  ['on-time, 22 V to 1.8 V, 300 kHz [ns]', 1e9 * onTime(22, 1.8, 300e3), 273, 0.5, ltc3728],
  [
    'ripple over 5 A, 22 V to 1.8 V, 3.3 µH, 300 kHz [%]',
    20 * inductorRipple(22, 1.8, 3.3e-6, 300e3),
    33,
    0.5,
    ltc3728,
    'printed with two digits',
  ],
  [
    'ripple over 5 A with 4.7 µH [%]',
    20 * inductorRipple(22, 1.8, 4.7e-6, 300e3),
    23,
    0.5,
    ltc3728,
    'printed with two digits',
  ],
  [
    'growth of the on-resistance to 50 °C by 0.005/K [1]',
    onResistanceAt(1, 0.005, 323.15),
    1.125,
    1e-9,
    'LTC1539 data sheet, Linear Technology, page 14',
  ],
  [
    'growth of the on-resistance to 125 °C by 0.4 % for each kelvin [1]',
    onResistanceGrowing(1, 0.004, 398.15),
    1.5,
    0.01,
    'LT8705 data sheet, Linear Technology, page 26 (about 0.4 %/K, ρ = 1.5)',
    'both are said to be about so',
  ],
  ['on-time, 20 V to 1.3 V, 400 kHz [ns]', 1e9 * onTime(20, 1.3, 400e3), 162, 0.6, ltc3731],
  [
    'inductance for 30 % of 15 A, 20 V to 1.3 V, 400 kHz [µH]',
    1e6 * inductanceForRipple(20, 1.3, 4.5, 400e3),
    0.68,
    0.005,
    ltc3731,
    'printed with two digits',
  ],
  [
    'ripple over 15 A with 0.6 µH [%]',
    (100 / 15) * inductorRipple(20, 1.3, 0.6e-6, 400e3),
    34,
    0.5,
    ltc3731,
    'printed with two digits',
  ],
  [
    'high-side loss, 20 V to 1.3 V, 15 A, 7 mΩ at 50 °C, 400 kHz [W]',
    conductionLoss(15, 0, onResistanceAt(7e-3, 0.005, 323.15), buckDuty(20, 1.3)) +
      millerOverlapLoss(20, 15, 2, 1e-9, 5, 1.8, 400e3),
    2.2,
    0.01,
    ltc3731,
  ],
  ['switch conduction, 2 A, 0.15 Ω, 31.4 % [mW]', 1e3 * conductionLoss(2, 0, 0.15, 0.314), 188, 0.5, lmr],
  [
    'switching, 12 V, 2 A, 20 ns, 2 MHz [mW]',
    1e3 * switchingLoss(12, 2, 20e-9, 2e6),
    480,
    0.5,
    `${lmr} (edges of 20 ns follow from 480 mW)`,
  ],
  [
    'diode, 0.5 V, 2 A, 68.6 % [mW]',
    1e3 * deadTimeLoss(0.5, 2, 0.686 / 2e6, 2e6),
    686,
    0.5,
    `${lmr} (0.5 V follows from 686 mW)`,
  ],
  ['inductor, 2 A, 20 mΩ [mW]', 1e3 * conductionLoss(2, 0, 20e-3, 1), 80, 0.5, `${lmr} (20 mΩ follows from 80 mW)`],
  [
    'input current at 6.6 W with 1.499 W of loss, times 12 V [W]',
    12 * converterInputCurrent(6.6, 1.499, 12),
    8.099,
    0.0005,
    lmr,
  ],
];

/** The same, worked out independently or in closed form. */
const workedOut: Row[] = [
  ['all losses together [W]', total, 1.8258, 5e-5, `${rohm}, its equations worked out independently`],
  [
    'efficiency, 15 W [%]',
    100 * efficiency(15, total),
    89.15,
    0.005,
    `${rohm}, its equations worked out independently`,
  ],
  [
    'efficiency, 6.6 W with 1.5001 W of loss [%]',
    100 * efficiency(6.6, 1.5001),
    81.5,
    0.05,
    `${lmr}, worked out independently`,
  ],
  ['loss of 15 W at 90 % [W]', lossFromEfficiency(15, 0.9), 5 / 3, 1e-9, 'conservation of energy worked out by hand'],
  ['peak current [A]', peakCurrent(3, ripple), 3.3103, 5e-5, `${rohm}, worked out independently`],
  ['valley current [A]', valleyCurrent(3, ripple), 2.6897, 5e-5, `${rohm}, worked out independently`],
  [
    'current at which a ripple of 4 A reaches 20 A of saturation [A]',
    saturationLimit(20, 4),
    18,
    1e-12,
    'worked out by hand',
  ],
  [
    'output capacitors’ current [A]',
    outputCapacitorCurrent(ripple),
    0.17914,
    5e-6,
    `${rohm}, worked out independently`,
  ],
  [
    'loss of 1.4790 A in 3 mΩ [mW]',
    1e3 * capacitorLoss(1.479, 3e-3),
    6.562,
    0.0005,
    `${rohm}, worked out independently`,
  ],
  [
    'growth of the on-resistance over 100 K by 0.4 % [1]',
    onResistanceGrowing(1, 0.004, 398.15),
    1.4906,
    5e-5,
    'power of 1.004, worked out independently',
  ],
  [
    'growth of the on-resistance over 100 K by 0.5 % [1]',
    onResistanceGrowing(1, 0.005, 398.15),
    1.6466,
    8e-5,
    'power of 1.005, worked out independently',
  ],
  [
    'overlap by the driver alone, plateau at 1.8 V [W]',
    millerOverlapLoss(20, 15, 2, 1e-9, 5, 1.8, 400e3),
    2.0833,
    5e-5,
    `${ltc3731}, worked out independently`,
  ],
];

const figure =
  (tier: Tier) =>
  (row: Row): Figure => {
    const [what, computed, published, tolerance, source, coarse] = row;
    return { what, computed, published, tolerance, why: lastDigit, source, tier, ...(coarse && { coarse }) };
  };

export const topic: Topic = {
  title: 'Tables of losses of buck converters',
  field: 'electrical',
  figures: [
    ...printed.map(figure('B')),
    {
      what: 'all losses of the worked table [W]',
      computed: total,
      published: 1.83,
      tolerance: 0.005,
      why: lastDigit,
      source: `${rohm}, total (from memory)`,
      tier: 'B',
    },
    ...terms.map(([term, published]): Figure => {
      return {
        what: `worked table, term ${term} [mW]`,
        computed: 1e3 * losses[term],
        published,
        tolerance: Math.max(0.005, published * 1e-4) * (published < 1 ? 0.01 : 1),
        why: lastDigit,
        source: `${rohm}, its equations worked out independently`,
        tier: 'C',
      };
    }),
    ...workedOut.map(figure('C')),
  ],
  traps: [
    {
      what: 'conduction of M1, (13/25) of (3 A)² through 6.9 mΩ times 1.5, printed with the square of the duty [W]',
      computed: conductionLoss(3, 0, 6.9e-3 * 1.5, 13 / 25),
      published: 0.06,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'LT8708 data sheet, Linear Technology, page 53',
      reason: 'the duty is squared, although the rms current already holds its root',
    },
    {
      what: 'winding loss of 4 A in 0.104 Ω [W]',
      computed: conductionLoss(4, 0, 0.104, 1),
      published: 0.1664,
      tolerance: 0.00005,
      why: 'half of the last printed digit',
      source: 'SLVA390A, Texas Instruments, as copied in a forum answer',
      reason: 'the winding has 10.4 mΩ; the printed sum uses ten times that',
    },
  ],
  unchecked: [
    'core loss: no published formula with its material data was read',
    'gate and dead-time terms of TPS40140: their inputs could not be read',
  ],
};
