import { loadVoltage } from '../../src/physics/electrical/load-voltage.ts';
import { parallelResistance } from '../../src/physics/electrical/parallel-resistance.ts';
import { resistanceAt } from '../../src/physics/electrical/resistance-at-temperature.ts';
import { supplyVoltage } from '../../src/physics/electrical/supply-droop.ts';
import { wireResistance } from '../../src/physics/electrical/wire-gauge.ts';
import { wireGaugeDiameter } from '../../src/quantity/wire-gauge.ts';
import type { Figure, Topic } from '../topic.ts';

const lastDigit = 'half of the last printed digit';
const collegePhysics = 'College Physics, OpenStax, 2012';
const tables = 'Copper Wire Tables, National Bureau of Standards Handbook 100, 1966, as widely reprinted';

const gauges: [gauge: number, ohmsPerKilometre: number][] = [
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

export const topic: Topic = {
  title: 'Resistors, wires, supply and load',
  field: 'electrical',
  figures: [
    {
      what: '6.00 Ω beside 13.0 Ω [Ω]',
      computed: parallelResistance(6, 13),
      published: 4.11,
      tolerance: 0.005,
      why: lastDigit,
      source: `${collegePhysics}, example 21.3, equation 21.36`,
      tier: 'B',
    },
    {
      what: '1.00, 6.00 and 13.0 Ω in parallel [Ω]',
      computed: parallelResistance(1, parallelResistance(6, 13)),
      published: 0.804,
      tolerance: 0.0005,
      why: lastDigit,
      source: `${collegePhysics}, example 21.2`,
      tier: 'B',
    },
    {
      what: 'tungsten, 0.350 Ω at 20 °C with 4.5e-3/K, at 2850 °C [Ω]',
      computed: resistanceAt(0.35, 4.5e-3, 2850, 20),
      published: 4.8,
      tolerance: 0.03,
      why: 'less than half of the last printed digit, so that one per cent shows',
      source: `${collegePhysics}, example 20.6 (result from memory)`,
      tier: 'B',
    },
    ...gauges.map(([gauge, published]): Figure => {
      return {
        what: `copper wire AWG ${gauge} at 20 °C [Ω/km]`,
        computed: wireResistance(wireGaugeDiameter(gauge), 1000),
        published,
        tolerance: 1e-3 * published,
        why: 'tables differ by up to 0.1 % in how they round the diameter',
        source: tables,
        tier: 'A',
      };
    }),
    {
      what: '5 V after 0.5 A through 4 m of AWG 28 [V]',
      computed: supplyVoltage(5, 0.5, wireResistance(wireGaugeDiameter(28), 4)),
      published: 5 - 0.5 * 4 * 0.2129,
      tolerance: 0.0005,
      why: 'tables differ by up to 0.1 % of the drop',
      source: `${tables}: 212.9 mΩ/m`,
      tier: 'A',
    },
    {
      what: 'voltage of a load, 0.6 V at first, at eight times the power by the cube law [V]',
      computed: loadVoltage(0.6, 8, 1 / 3),
      published: 1.2,
      tolerance: 1e-12,
      why: 'exact',
      source: 'common practice, no source: power grows with the cube of the voltage',
      tier: 'C',
    },
  ],
};
