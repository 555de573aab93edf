import { describe, expect, test } from 'vitest';
import { liquidCapacitorLife } from '../src/physics/electrical/capacitor-life.ts';
import { deratedRating } from '../src/physics/electrical/derating.ts';
import { dividerGain } from '../src/physics/electrical/divider.ts';
import { leakagePower } from '../src/physics/electrical/leakage.ts';
import { loadVoltage } from '../src/physics/electrical/load-voltage.ts';
import { parallelResistance } from '../src/physics/electrical/parallel-resistance.ts';
import { ratedCurrent } from '../src/physics/electrical/rated-current.ts';
import { resistanceAt } from '../src/physics/electrical/resistance-at-temperature.ts';
import { readPower } from '../src/physics/electrical/sense-reading.ts';
import { realPower } from '../src/physics/electrical/sense-real-power.ts';
import { supplyVoltage } from '../src/physics/electrical/supply-droop.ts';
import { wireResistance } from '../src/physics/electrical/wire-gauge.ts';
import { wireGaugeDiameter } from '../src/quantity/wire-gauge.ts';
import { type Published, testPublished } from './published.test-data.ts';

const lastDigit = 'half of the last printed digit';
const exact = 'the figure is exact to the digits printed';

describe('resistances', () => {
  const collegePhysics = 'College Physics, OpenStax, 2012';
  testPublished([
    {
      what: '6.00 Ω beside 13.0 Ω [Ω]',
      computed: parallelResistance(6, 13),
      published: 4.11,
      tolerance: 0.005,
      why: lastDigit,
      source: `${collegePhysics}, example 21.3, equation 21.36`,
    },
    {
      what: '1.00, 6.00 and 13.0 Ω in parallel [Ω]',
      computed: parallelResistance(1, parallelResistance(6, 13)),
      published: 0.804,
      tolerance: 0.0005,
      why: lastDigit,
      source: `${collegePhysics}, example 21.2`,
    },
    {
      what: 'tungsten, 0.350 Ω at 20 °C with 4.5e-3/K, at 2850 °C [Ω]',
      computed: resistanceAt(0.35, 4.5e-3, 2850, 20),
      published: 4.8,
      tolerance: 0.03,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: `${collegePhysics}, example 20.6 (result from memory)`,
    },
  ]);

  test('two conductances add up', () => {
    for (const [a, b] of [
      [5e-3, 5e-3],
      [5e-3, 100e-3],
      [1e-6, 1e6],
    ]) {
      expect(1 / parallelResistance(a, b) / (1 / a + 1 / b)).toBeCloseTo(1, 14);
    }
  });
});

describe('copper wire by its gauge', () => {
  const tables = 'Copper Wire Tables, National Bureau of Standards Handbook 100, 1966, as widely reprinted';
  const rows: [gauge: number, ohmsPerKilometre: number][] = [
    [14, 8.286],
    [16, 13.17],
    [18, 20.94],
    [20, 33.29],
    [22, 52.94],
    [24, 84.22],
    [26, 133.86],
    [28, 212.9],
    [30, 338.6],
  ];
  testPublished(
    rows.map(([gauge, published]): Published => {
      return {
        what: `AWG ${gauge} at 20 °C [Ω/km]`,
        computed: wireResistance(wireGaugeDiameter(gauge), 1000),
        published,
        tolerance: 1e-3 * published,
        why: 'tables differ by up to 0.1 % in how they round the diameter',
        source: tables,
      };
    }),
  );
});

describe('sense resistors', () => {
  const ratedCurrents: [watts: number, milliohms: number, amperes: number][] = [
    [0.5, 1, 22.36],
    [1, 1, 31.62],
    [1, 0.5, 44.72],
    [1.5, 0.5, 54.77],
    [2, 0.5, 63.25],
    [3, 0.5, 77.46],
    [4, 0.25, 126.49],
  ];
  testPublished(
    ratedCurrents.map(([watts, milliohms, published]): Published => {
      return {
        what: `rated current of ${milliohms} mΩ, ${watts} W [A]`,
        computed: ratedCurrent(watts, milliohms * 1e-3),
        published,
        tolerance: 0.005,
        why: lastDigit,
        source: 'LRS series data sheet, American Accurate Components, table of rated currents',
      };
    }),
  );

  test('derating lines pass through the published ends: 70 °C to 155 °C (LCS), to 170 °C (LMP25), 100 °C to 275 °C (LRS2512)', () => {
    for (const [from, end] of [
      [70, 155],
      [70, 170],
      [100, 275],
    ]) {
      expect(deratedRating(2, from - 1, from, end)).toBe(2);
      expect(deratedRating(2, from, from, end)).toBe(2);
      expect(deratedRating(2, (from + end) / 2, from, end)).toBeCloseTo(1, 12);
      expect(deratedRating(2, from + (end - from) / 4, from, end)).toBeCloseTo(1.5, 12);
      expect(deratedRating(2, end, from, end)).toBe(0);
      expect(deratedRating(2, end + 1, from, end)).toBe(0);
    }
  });

  const ina = 'INA210–INA215 data sheet SBOS437F, Texas Instruments, 2014';
  const bias = 1250;
  const inputs: [part: string, input: number, published: number, tolerance: number, where: string][] = [
    ['INA212', 1e3, 0.982, 0.0005, 'section 8.4.1, table 2'],
    ['INA213', 20e3, 0.991, 0.0006, 'section 8.4.1, table 2 (cut, not rounded)'],
    ['INA210', 5e3, 1000 / 1010, 1e-6, 'table 1, 1000/(Rs + 1000)'],
    ['INA211', 2e3, 10000 / 10130, 1e-6, 'table 1, 10000/(13·Rs + 10000)'],
    ['INA214', 10e3, 10000 / 10090, 1e-6, 'table 1, 10000/(9·Rs + 10000)'],
  ];
  testPublished(
    inputs.map(([part, input, published, tolerance, where]): Published => {
      return {
        what: `gain of 10 Ω in each line before an ${part} [1]`,
        computed: dividerGain(10, bias, input),
        published,
        tolerance,
        why: tolerance > 1e-5 ? lastDigit : exact,
        source: `${ina}, ${where}`,
      };
    }),
  );
  testPublished([
    {
      what: 'gain error of 10 Ω in each line before an INA212 [%]',
      computed: 100 - 100 * dividerGain(10, bias, 1e3),
      published: 1.77,
      tolerance: 0.005,
      why: lastDigit,
      source: `${ina}, section 8.4.1, table 2`,
    },
    {
      what: 'gain error of 10 Ω in each line before an INA213 [%]',
      computed: 100 - 100 * dividerGain(10, bias, 20e3),
      published: 0.84,
      tolerance: 0.004,
      why: lastDigit,
      source: `${ina}, section 8.4.1, table 2`,
    },
  ]);

  test('an amplifier that draws nothing leaves the plain divider', () => {
    expect(dividerGain(100, 300, Number.POSITIVE_INFINITY)).toBeCloseTo(0.75, 14);
    expect(dividerGain(0, 300, 1e4)).toBe(1);
  });

  // Ohm's law by hand: 19 V · 3 A = 57 W through 3.333 mΩ where 5 mΩ is believed, 10 µV offset, nine tenths through.
  test('a limiter reads the voltage across what is there, over what it believes', () => {
    expect(readPower(19, 3, 10e-3 / 3, 1, 0, 5e-3)).toBeCloseTo(38, 10);
    expect(readPower(19, 3, 5e-3, 0.9, 10e-6, 5e-3)).toBeCloseTo(51.3 + 0.038, 10);
    expect(readPower(19, 3, 0, 1, 0, 5e-3)).toBe(0);
  });

  test('reading what is allowed, real power is what was computed', () => {
    const [allowed, assumed, effective, bus] = [40, 5e-3, 3.2e-3, 19];
    const current = realPower(allowed, assumed, effective) / bus;
    expect(readPower(bus, current, effective, 1, 0, assumed)).toBeCloseTo(allowed, 10);
  });
});

describe('supply, load and life', () => {
  // Copper Wire Tables, NBS Handbook 100: AWG 28 has 212.9 mΩ/m, so 0.5 A through 2 m and back falls by 0.4258 V.
  test('a supply falls by its current times its resistance', () => {
    expect(supplyVoltage(5, 0.5, wireResistance(wireGaugeDiameter(28), 4))).toBeCloseTo(4.5742, 3);
  });

  test('cube law (common practice, no source): eight times the power at twice the voltage', () => {
    expect(loadVoltage(0.6, 8, 1 / 3)).toBeCloseTo(1.2, 12);
    expect(loadVoltage(0.6, 1, 1 / 3)).toBe(0.6);
  });

  test('leakage grows by e over its characteristic rise (common practice, no source)', () => {
    expect(leakagePower(2, 373.15, 343.15, 30)).toBeCloseTo(2 * Math.E, 12);
    expect(leakagePower(2, 343.15, 343.15, 30)).toBe(2);
  });

  const cosel = 'technical note A0057, COSEL, life of electrolytic capacitors';
  const wuerth = 'Würth Elektronik, capacitor life rules, pages 18–19: twice for each 10 K (liquid electrolyte)';
  const lives: [rated: number, at: number, published: number, source: string][] = [
    [1000, 45, 64_000, cosel],
    [1000, 55, 32_000, cosel],
    [1000, 65, 16_000, cosel],
    [2000, 95, 4000, wuerth],
  ];
  testPublished(
    lives.map(([rated, at, published, source]): Published => {
      const computed = liquidCapacitorLife(rated, 105, at);
      return {
        what: `life of ${rated} h at 105 °C, at ${at} °C [h]`,
        computed,
        published,
        tolerance: 1e-6,
        why: exact,
        source,
      };
    }),
  );
});
