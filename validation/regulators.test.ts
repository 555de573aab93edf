import { describe, expect, test } from 'vitest';
import { inputCapacitorCurrent } from '../src/physics/electrical/input-capacitor-current.ts';
import { outputRipple } from '../src/physics/electrical/output-ripple-cancellation.ts';
import { phaseCurrent } from '../src/physics/electrical/phase-current.ts';

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
