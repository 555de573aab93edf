import { agingFactor } from '../../src/physics/electrical/arrhenius.ts';
import {
  lifeUnderMix,
  liquidCapacitorLife,
  liquidCapacitorLifeWithRipple,
  polymerCapacitorLife,
} from '../../src/physics/electrical/capacitor-life.ts';
import type { Figure, Topic } from '../topic.ts';

const electronvolt = 1.602176634e-19;
const cosel = 'technical note A0057, COSEL, life of electrolytic capacitors at varying temperatures';
const wuerth = 'Würth Elektronik, aluminium polymer capacitors, 2022, pages 18–19: ten times for each 20 K';
const albertsen =
  'A. Albertsen, Electrolytic Capacitor Lifetime Estimation, Jianghai Europe, 2012, its factors worked out by hand';

const mixed = lifeUnderMix([45, 55, 65].map((celsius) => ({ time: 8, life: liquidCapacitorLife(1000, 105, celsius) })));

const polymer: [celsius: number, hours: number, tolerance: number, how: string][] = [
  [95, 6325, 0.5, 'worked out by hand: the root of ten'],
  [85, 20_000, 1e-6, 'chart'],
  [65, 200_000, 1e-6, 'chart'],
];

const rippled: [what: string, ambient: number, share: number, rise: number, hours: number][] = [
  ['at the rating, none of it spared', 105, 1, 5, 2000],
  ['without ripple, a core 10 K cooler', 105, 0, 10, 4000],
  ['half of the ripple, 85 °C: two doublings and 2^0.375', 85, 0.5, 5, 10_374.7],
  ['ripple 5 % above its rating: 4^−0.05125', 105, 1.05, 5, 1862.8],
  ['twice the ripple, 85 °C: two doublings and 4^−1.5', 85, 2, 5, 1000],
];

const aging: [what: string, electronvolts: number, low: number, high: number, published: number, source: string][] = [
  ['0.7 eV, 55 °C to 125 °C', 0.7, 55, 125, 77.645, 'JEDEC form with CODATA constants, worked out independently'],
  ['0.7 eV, 85 °C to 95 °C', 0.7, 85, 95, 1.8517, 'JEDEC form with CODATA constants, worked out independently'],
  ['0.7 eV, 95 °C to 105 °C', 0.7, 95, 105, 1.7923, 'JEDEC form with CODATA constants, worked out independently'],
];

export const topic: Topic = {
  title: 'Ripple, polymer, changing temperatures, aging',
  field: 'electrical',
  figures: [
    {
      what: 'life under 8 h each at 45, 55 and 65 °C of 1000 h at 105 °C [h]',
      computed: mixed,
      published: 27_429,
      tolerance: 1,
      why: 'half of the last printed digit',
      source: `${cosel}; 24/(8/64000 + 8/32000 + 8/16000)`,
      tier: 'B',
    },
    {
      what: 'temperature that alone gives this life [°C]',
      computed: 105 - 10 * Math.log2(mixed / 1000),
      published: 57.2,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: cosel,
      tier: 'B',
    },
    ...polymer.map(([celsius, published, tolerance, how]): Figure => {
      return {
        what: `polymer, 2000 h at 105 °C, at ${celsius} °C [h]`,
        computed: polymerCapacitorLife(2000, 105, celsius),
        published,
        tolerance,
        why: how === 'chart' ? 'exact' : 'half of the last printed digit',
        source: `${wuerth}, ${how}`,
        tier: how === 'chart' ? 'B' : 'C',
      };
    }),
    ...rippled.map(([what, ambient, share, rise, published]): Figure => {
      return {
        what: `liquid, 2000 h at 105 °C, ${what} [h]`,
        computed: liquidCapacitorLifeWithRipple(2000, 105, ambient, 3, 3 * share, rise),
        published,
        tolerance: 0.1,
        why: 'digits given',
        source: albertsen,
        tier: 'C',
      };
    }),
    ...aging.map(([what, electronvolts, low, high, published, source]): Figure => {
      return {
        what: `aging, ${what} [1]`,
        computed: agingFactor(electronvolts * electronvolt, low + 273.15, high + 273.15),
        published,
        tolerance: 5e-5 * Math.max(1, published / 5),
        why: 'half of the last printed digit',
        source,
        tier: 'C',
      };
    }),
    {
      what: 'aging, 0.323 eV, 35 °C to 70 °C [1]',
      computed: agingFactor(0.323 * electronvolt, 308.15, 343.15),
      published: 3.46,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source:
        'ReliaWiki, Arrhenius-exponential model, after Yang, Life Cycle Reliability Engineering, 2007, example 7.1',
      tier: 'B',
    },
  ],
  unchecked: [
    'a published example of life with ripple current: only the factors were read, with no result beside them',
  ],
};
