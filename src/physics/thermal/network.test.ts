import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FosterStage, fosterImpedance, pulseTrainImpedance, stepImpedance } from './foster.ts';
import { fosterFromLadder } from './foster-from-ladder.ts';
import { ladderImpedance, structureFunction } from './ladder.ts';
import { ladderFromFoster } from './ladder-from-foster.ts';
import { spectrumOf } from './time-constant-spectrum.ts';
import { rodStages } from './uniform-rod.ts';

const SEED = 20_261_126;

/** Stages whose time constants lie at least a factor of 1.5 apart, over up to ten decades. */
const fosterNetworks = fc
  .array(fc.tuple(fc.double({ min: 1e-3, max: 10, noNaN: true }), fc.double({ min: 0.2, max: 0.83, noNaN: true })), {
    minLength: 1,
    maxLength: 12,
  })
  .map((pairs) => {
    let decades = -6;
    return pairs.map(([resistance, step]): FosterStage => {
      decades += step;
      return { resistance, timeConstant: 10 ** decades };
    });
  });

const twelve = Array.from({ length: 12 }, (_, i): FosterStage => {
  return { resistance: 0.05 * (1 + ((7 * i) % 5)), timeConstant: 1e-6 * 10 ** ((10 * i) / 11) };
});

function largestChange(before: readonly FosterStage[], after: readonly FosterStage[]): number {
  return Math.max(
    ...before.flatMap(({ resistance, timeConstant }, i) => [
      Math.abs(after[i].resistance / resistance - 1),
      Math.abs(after[i].timeConstant / timeConstant - 1),
    ]),
  );
}

describe('Foster and Cauer', () => {
  test('twelve stages over ten decades come back to 1e-12', () => {
    expect(largestChange(twelve, fosterFromLadder(ladderFromFoster(twelve)))).toBeLessThan(1e-12);
  });

  test(`any network comes back, with the same resistance and impedance (seed ${SEED})`, () => {
    fc.assert(
      fc.property(fosterNetworks, fc.double({ min: -5, max: 7, noNaN: true }), (stages, decade) => {
        const ladder = ladderFromFoster(stages);
        expect(largestChange(stages, fosterFromLadder(ladder))).toBeLessThan(1e-9);
        const total = stages.reduce((sum, { resistance }) => sum + resistance, 0);
        expect(ladder.reduce((sum, { resistance }) => sum + resistance, 0) / total).toBeCloseTo(1, 13);
        const [one, other] = [fosterImpedance(stages, 10 ** decade), ladderImpedance(ladder, 10 ** decade)];
        const size = Math.hypot(...one);
        expect(Math.hypot(one[0] - other[0], one[1] - other[1]) / size).toBeLessThan(1e-12);
        expect(ladder.every(({ resistance, capacity }) => resistance > 0 && capacity > 0)).toBe(true);
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  test('very large and very small units change nothing but the units', () => {
    const scaled = twelve.map(({ resistance, timeConstant }) => {
      return { resistance: resistance * 2 ** -980, timeConstant: timeConstant * 2 ** -20 };
    });
    const [plain, other] = [ladderFromFoster(twelve), ladderFromFoster(scaled)];
    expect(other.map(({ resistance }) => resistance * 2 ** 980)).toEqual(plain.map(({ resistance }) => resistance));
    expect(other.map(({ capacity }) => capacity * 2 ** -960)).toEqual(plain.map(({ capacity }) => capacity));
  });

  test('time constants a thousandth apart are told apart', () => {
    const close = [1, 1.001, 1.002, 1.003].map((timeConstant, i): FosterStage => ({ resistance: 1 + i, timeConstant }));
    expect(largestChange(close, fosterFromLadder(ladderFromFoster(close)))).toBeLessThan(1e-4);
  });

  // At first all heat goes into the first capacity: dZ/dt = Σ R/τ = 1/C1.
  test.each([
    [[1e-3, 1, 1, 1e-6]],
    [[1, 1e-3, 1e-6, 1]],
    [[1e-6, 1e-6, 1e3, 1]],
    [[1e4, 1e-4, 1e-3, 1e3]],
    [[1e-3, 1, 1e-3, 1e-6, 1, 1e-9]],
  ])('rungs that differ by far: %j', (numbers) => {
    const resistances = numbers.filter((_, i) => i % 2 === 0);
    const capacities = numbers.filter((_, i) => i % 2 === 1);
    const stages = fosterFromLadder(resistances.map((resistance, i) => ({ resistance, capacity: capacities[i] })));
    const sum = (of: (stage: FosterStage) => number) => stages.reduce((total, stage) => total + of(stage), 0);
    expect(sum(({ resistance }) => resistance) / resistances.reduce((total, each) => total + each)).toBeCloseTo(1, 12);
    expect(sum(({ resistance, timeConstant }) => resistance / timeConstant) * capacities[0]).toBeCloseTo(1, 12);
    for (const [i, { resistance, capacity }] of ladderFromFoster(stages).entries()) {
      expect(resistance / resistances[i]).toBeCloseTo(1, 6);
      expect(capacity / capacities[i]).toBeCloseTo(1, 6);
    }
  });

  test('one stage is one rung', () => {
    expect(ladderFromFoster([{ resistance: 2, timeConstant: 6 }])).toEqual([{ resistance: 2, capacity: 3 }]);
    expect(fosterFromLadder([{ resistance: 2, capacity: 3 }])).toEqual([{ resistance: 2, timeConstant: 6 }]);
  });

  test('stages that cannot be are refused', () => {
    const stage = { resistance: 1, timeConstant: 1 };
    expect(() => ladderFromFoster([stage, stage])).toThrow(RangeError);
    for (const broken of [
      { ...stage, resistance: 0 },
      { ...stage, timeConstant: 0 },
    ]) {
      expect(() => ladderFromFoster([broken])).toThrow(RangeError);
      expect(() => ladderFromFoster([broken])).toThrow('above zero');
    }
    for (const [resistance, capacity] of [
      [0, 1],
      [1, 0],
    ]) {
      expect(() => fosterFromLadder([{ resistance, capacity }])).toThrow(RangeError);
      expect(() => fosterFromLadder([{ resistance, capacity }])).toThrow('above zero');
    }
  });
});

describe('impedances', () => {
  test('a single stage at its own corner: half real, half imaginary', () => {
    const [real, imaginary] = fosterImpedance([{ resistance: 2, timeConstant: 0.5 }], 2);
    expect([real, imaginary]).toEqual([1, -1]);
    const ladder = ladderImpedance([{ resistance: 2, capacity: 0.25 }], 2);
    expect(ladder[0]).toBeCloseTo(1, 14);
    expect(ladder[1]).toBeCloseTo(-1, 14);
  });

  test('a step starts at nothing, ends at the sum of resistances, never falls', () => {
    const times = Array.from({ length: 60 }, (_, i) => 1e-8 * 10 ** (i / 4));
    const rises = times.map((time) => stepImpedance(twelve, time));
    expect(stepImpedance(twelve, 0)).toBe(0);
    expect(stepImpedance(twelve, 1e9)).toBeCloseTo(
      twelve.reduce((sum, { resistance }) => sum + resistance, 0),
      12,
    );
    expect(rises.every((rise, i) => i === 0 || rise >= rises[i - 1])).toBe(true);
  });

  test('pulses without a pause are steady power, far apart they are single pulses, and in between their sum', () => {
    expect(pulseTrainImpedance(twelve, 1, 1)).toBeCloseTo(stepImpedance(twelve, 1e9), 12);
    expect(pulseTrainImpedance(twelve, 0.01, 1e9)).toBeCloseTo(stepImpedance(twelve, 0.01), 12);
    const few = twelve.slice(0, 6);
    let sum = 0;
    for (let n = 0; n < 100; n++) sum += stepImpedance(few, 0.02 * n + 0.005) - stepImpedance(few, 0.02 * n);
    expect(pulseTrainImpedance(few, 0.005, 0.02)).toBeCloseTo(sum, 10);
  });

  test('a structure function counts both up along the path', () => {
    const ladder = [
      { resistance: 1, capacity: 2 },
      { resistance: 3, capacity: 5 },
    ];
    expect(structureFunction(ladder)).toEqual([
      { resistance: 1, capacity: 2 },
      { resistance: 4, capacity: 7 },
    ]);
  });
});

test('two time constants smeared by the kernel are found again, with their resistances', () => {
  const step = 0.05;
  const z = Array.from({ length: 361 }, (_, i) => -12 + i * step);
  const lines = [
    { resistance: 1, timeConstant: 0.01 },
    { resistance: 2, timeConstant: 1 },
  ];
  const slope = z.map((at) =>
    lines.reduce((sum, { resistance, timeConstant }) => {
      const late = Math.exp(at) / timeConstant;
      return sum + resistance * late * Math.exp(-late);
    }, 0),
  );
  const spectrum = spectrumOf(slope, step, 150);
  const between = Math.log(0.1);
  const area = (keep: (at: number) => boolean) =>
    step * spectrum.reduce((sum, value, i) => sum + (keep(z[i]) ? value : 0), 0);
  expect(area((at) => at < between)).toBeCloseTo(1, 2);
  expect(area((at) => at >= between)).toBeCloseTo(2, 2);
  expect(spectrum.every((value) => value >= 0)).toBe(true);
  expect(z[spectrum.indexOf(Math.max(...spectrum))]).toBeCloseTo(0, 1);
});

test('no pass leaves the slope as it is, and what is nothing stays nothing', () => {
  expect(spectrumOf([1, 2, 3], 0.1, 0)).toEqual([1, 2, 3]);
  expect(spectrumOf([0, 0, 0], 0.1, 3)).toEqual([0, 0, 0]);
});

test('a single sample: its kernel at zero, once', () => {
  // K is 0.1/e here, and one pass ends at K·R = d.
  expect(spectrumOf([4], 0.1, 1)[0]).toBeCloseTo(40 * Math.E, 10);
});

test('a rod of another size has its own resistance and time: both scale', () => {
  const [plain, other] = [rodStages(1, 1, 3), rodStages(2, 5, 3)];
  for (const [i, stage] of other.entries()) {
    expect(stage.resistance).toBeCloseTo(2 * plain[i].resistance, 12);
    expect(stage.timeConstant).toBeCloseTo(10 * plain[i].timeConstant, 12);
  }
});
