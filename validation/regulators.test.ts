import { describe, expect, test } from 'vitest';
import { buckDuty } from '../src/physics/electrical/buck-duty.ts';
import {
  conductionLoss,
  deadTimeLoss,
  gateLoss,
  outputChargeLoss,
  recoveryLoss,
  switchingLoss,
} from '../src/physics/electrical/buck-losses.ts';
import { inductorRipple } from '../src/physics/electrical/buck-ripple.ts';
import { peakCurrent, rmsCurrent } from '../src/physics/electrical/inductor-current.ts';
import { inputCapacitorCurrent } from '../src/physics/electrical/input-capacitor-current.ts';
import { onResistanceAt } from '../src/physics/electrical/on-resistance.ts';
import { outputRipple } from '../src/physics/electrical/output-ripple-cancellation.ts';
import { parallelResistance } from '../src/physics/electrical/parallel-resistance.ts';
import { phaseCurrent } from '../src/physics/electrical/phase-current.ts';
import { type Published, testPublished } from './published.test-data.ts';

const lastDigit = 'half of the last printed digit';

describe('one buck phase', () => {
  const tps = 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, section 6.1';
  const ltc3728 = 'LTC3728 data sheet, Linear Technology, design example';
  const ripple = inductorRipple(13.2, 1.5, 1e-6, 500e3);
  const rohmRipple = inductorRipple(12, 5, 4.7e-6, 1e6);
  testPublished([
    {
      what: 'ripple, 13.2 V to 1.5 V, 1 µH, 500 kHz [A]',
      computed: ripple,
      published: 2.66,
      tolerance: 0.005,
      why: lastDigit,
      source: tps,
    },
    {
      what: 'rms current of the high side, 12 V to 1.5 V, 20 A [A]',
      computed: rmsCurrent(20, 2.66) * Math.sqrt(buckDuty(12, 1.5)),
      published: 7.07,
      tolerance: 0.01,
      why: 'last printed digit, cut',
      source: tps,
    },
    {
      what: 'rms current of the low side [A]',
      computed: rmsCurrent(20, 2.66) * Math.sqrt(1 - buckDuty(12, 1.5)),
      published: 18.7,
      tolerance: 0.05,
      why: lastDigit,
      source: tps,
    },
    {
      what: 'low-side conduction, two of 4 mΩ in parallel [W]',
      computed: conductionLoss(20, 2.66, parallelResistance(4e-3, 4e-3), 1 - buckDuty(12, 1.5)),
      published: 0.7,
      tolerance: 0.005,
      why: lastDigit,
      source: tps,
    },
    {
      what: 'high-side conduction, 12 V to 5 V, 3 A, 100 mΩ, 4.7 µH, 1 MHz [mW]',
      computed: 1e3 * conductionLoss(3, rohmRipple, 0.1, buckDuty(12, 5)),
      published: 376,
      tolerance: 0.5,
      why: `${lastDigit}; without the ripple it is 375.0`,
      source: 'Efficiency of Buck Converter, application note 64AN035E rev. 2, ROHM, 2021',
    },
    {
      what: 'peak current, 22 V to 1.8 V, 5 A, 3.3 µH, 300 kHz [A]',
      computed: peakCurrent(5, inductorRipple(22, 1.8, 3.3e-6, 300e3)),
      published: 5.84,
      tolerance: 0.01,
      why: 'last printed digit',
      source: ltc3728,
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
    },
    {
      what: 'low-side loss at short circuit, 3.2 A, 42 mΩ times 1.1 [mW]',
      computed: 1e3 * conductionLoss(3.2, 0, onResistanceAt(42e-3, 0.005, 318.15), 1 - buckDuty(22, 1.8)),
      published: 434,
      tolerance: 0.5,
      why: lastDigit,
      source: ltc3728,
    },
    {
      what: 'low-side conduction, 18 V to 12 V, 5 A, 9 mΩ times 1.2 [mW]',
      computed: 1e3 * conductionLoss(5, 0, 9e-3 * 1.2, 1 - buckDuty(18, 12)),
      published: 90,
      tolerance: 0.5,
      why: lastDigit,
      source: 'LTC3780 data sheet, Linear Technology, page 23',
    },
    {
      what: 'overlap, 25 V, 3 A, 20 ns each edge, 150 kHz [W]',
      computed: switchingLoss(25, 3, 40e-9, 150e3),
      published: 0.225,
      tolerance: 0.0005,
      why: lastDigit,
      source: 'LT8708 data sheet, Linear Technology, page 53',
    },
    {
      what: 'output charge, 25 V, two of 685 pF, 150 kHz [W]',
      computed: outputChargeLoss(2 * 685e-12 * 25, 25, 150e3),
      published: 0.064,
      tolerance: 0.0003,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'LT8708 data sheet, Linear Technology, page 53',
    },
  ]);

  // The same note's example, its other terms: each is one product of the inputs, worked out by hand.
  testPublished(
    (
      [
        ['reverse recovery, 0.3 A, 25 ns', 1e3 * recoveryLoss(0.5 * 0.3 * 25e-9, 12, 1e6), 45],
        ['gate, 2 nC at 5 V', 1e3 * gateLoss(2e-9, 5, 1e6), 10],
        ['dead times, 0.5 V, 2 × 30 ns', 1e3 * deadTimeLoss(0.5, 3, 60e-9, 1e6), 90],
        ['output charge, two of 80 pF', 1e3 * outputChargeLoss(160e-12 * 12, 12, 1e6), 11.5],
        ['overlap, 4 ns and 6 ns', 1e3 * switchingLoss(12, 3, 10e-9, 1e6), 180],
        ['winding, 80 mΩ', 1e3 * conductionLoss(3, rohmRipple, 80e-3, 1), 722.6],
      ] as const
    ).map(([what, computed, published]): Published => {
      const source =
        'Efficiency of Buck Converter, application note 64AN035E rev. 2, ROHM, 2021, its equations worked out by hand';
      return { what: `${what} [mW]`, computed, published, tolerance: 0.003 * published, why: 'digits given', source };
    }),
  );

  // LT8708, page 53, prints 0.13 W for (13/25)·(3 A)²·6.9 mΩ·1.5, which is 0.048 W.
  test('a published conduction loss that contradicts its own equation is not met', () => {
    const loss = conductionLoss(3, 0, 6.9e-3 * 1.5, 13 / 25);
    expect(loss).toBeCloseTo(0.0484, 4);
    expect(Math.abs(loss - 0.13)).toBeGreaterThan(0.05);
  });
});

describe('several phases', () => {
  /** Current of the high sides of N evenly shifted phases with triangular ripple, sampled over one period [A]. */
  function highSideCurrents(phases: number, duty: number, outputCurrent: number, ripple: number, points: number) {
    return Float64Array.from({ length: points }, (_, i) => {
      let sum = 0;
      for (let p = 0; p < phases; p++) {
        const t = ((i + 0.5) / points + p / phases) % 1;
        if (t < duty) sum += outputCurrent / phases + ripple * (t / duty - 0.5);
      }
      return sum;
    });
  }

  /** Sum of the inductor currents of N phases over one period [A]. */
  function inductorCurrents(phases: number, duty: number, ripple: number, points: number) {
    return Float64Array.from({ length: points }, (_, i) => {
      let sum = 0;
      for (let p = 0; p < phases; p++) {
        const t = (i / points + p / phases) % 1;
        sum += ripple * (t < duty ? t / duty - 0.5 : 0.5 - (t - duty) / (1 - duty));
      }
      return sum;
    });
  }

  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

  testPublished([
    {
      what: 'input capacitors, two phases, 10.8 V to 1.5 V, 32 A [A]',
      computed: inputCapacitorCurrent(2, 1.5 / 10.8, 32, 2.66),
      published: 7.2,
      tolerance: 0.04,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, two-phase example',
    },
    {
      what: 'input capacitors, one phase, 12 V to 1.5 V, 20 A, ripple neglected [A]',
      computed: inputCapacitorCurrent(1, 0.125, 20, 0),
      published: 6.6,
      tolerance: 0.03,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: 'TPS40140 data sheet SLUS660H, Texas Instruments, 2013, section 6.1',
    },
  ]);

  const cases: [phases: number, duty: number, outputCurrent: number, ripple: number][] = [
    [1, 0.125, 36, 7],
    [2, 1.5 / 10.8, 32, 2.66],
    [3, 0.125, 36, 7],
    [3, 0.4, 30, 6],
    [4, 0.65, 50, 5],
    [6, 0.07, 150, 8],
    [6, 1 / 19, 120, 10],
    [5, 0.95, 80, 9],
  ];

  test.each(cases)('input capacitors follow the wave itself: N %d, D %f, %d A, ripple %d A', (n, d, i, ripple) => {
    const wave = highSideCurrents(n, d, i, ripple, 200_000);
    const average = mean(wave);
    const rms = Math.sqrt(mean(wave.map((current) => (current - average) ** 2)));
    expect(inputCapacitorCurrent(n, d, i, ripple) / rms).toBeCloseTo(1, 3);
  });

  // LTC3731 data sheet, Linear Technology, page 26: worst at D = 1/2 for one phase, 1/4 and 3/4 for two, 1/6, 1/2 and 5/6 for three, where
  // three phases draw a third of one; none where N·D is whole.
  test.each([
    [1, [1 / 2]],
    [2, [1 / 4, 3 / 4]],
    [3, [1 / 6, 1 / 2, 5 / 6]],
  ])(
    '%d phases without ripple: 1/(2N) of the output current at the published worst duties, none between',
    (n, worst) => {
      for (const duty of worst) {
        const peak = inputCapacitorCurrent(n, duty, 1, 0);
        expect(peak).toBeCloseTo(1 / (2 * n), 12);
        for (const step of [-0.05, 0.05]) expect(inputCapacitorCurrent(n, duty + step, 1, 0)).toBeLessThan(peak);
      }
      for (let k = 1; k <= n; k++) expect(inputCapacitorCurrent(n, k / n, 1, 0)).toBeCloseTo(0, 7);
    },
  );

  // TPS40192 data sheet SLUS719E, Texas Instruments, equation 16 subtracts an average from an rms value and prints 2.37 A.
  test('a published capacitor current from a wrong subtraction is not met', () => {
    const current = inputCapacitorCurrent(1, 1.8 / 14, 10, 2.6);
    expect(current).toBeCloseTo(3.36, 2);
    expect(Math.abs(current - 2.37)).toBeGreaterThan(0.9);
  });

  test.each(cases)('output ripple follows the wave itself: N %d, D %f', (n, d, _, ripple) => {
    const wave = inductorCurrents(n, d, ripple, 60_000);
    const swing = wave.reduce((a, b) => Math.max(a, b)) - wave.reduce((a, b) => Math.min(a, b));
    expect(Math.abs(outputRipple(n, d, ripple) - swing)).toBeLessThan(2e-3 * ripple);
  });

  // SLUU195, Texas Instruments, 2004, equation 6, a product over the phases; ISL6219 data sheet, Intersil, equation 2, for N·D ≤ 1.
  test.each(cases)('output ripple is what the published product gives: N %d, D %f', (n, d) => {
    let product = 1;
    for (let i = 1; i <= n; i++) product *= Math.abs(i - n * d);
    for (let i = 1; i < n; i++) product /= Math.abs(i - n * d) + 1;
    expect(outputRipple(n, d, 1 - d)).toBeCloseTo(product, 9);
    if (n * d <= 1) expect(outputRipple(n, d, 1 - d)).toBeCloseTo(1 - n * d, 9);
  });

  test('phases of equal duty carry all of the current with the same drop', () => {
    const resistances = [2.0e-3, 2.1e-3, 2.2e-3, 1.9e-3];
    const all = resistances.reduce((sum, r) => sum + 1 / r, 0);
    const currents = resistances.map((r) => phaseCurrent(100, 1 / r, all));
    expect(currents.reduce((sum, i) => sum + i)).toBeCloseTo(100, 10);
    for (const [j, current] of currents.entries())
      expect(current * resistances[j]).toBeCloseTo(currents[0] * 2.0e-3, 12);
  });
});
