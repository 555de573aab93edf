import { electrochemicalEquivalent } from '../../src/physics/chemistry/electrochemical-equivalent.ts';
import { platedMetals } from '../../src/physics/chemistry/metals.ts';
import {
  hydrogenAmount,
  platedMass,
  platedThickness,
  platingCharge,
  platingCurrent,
  platingTime,
} from '../../src/physics/chemistry/plating.ts';
import type { Figure, Topic } from '../topic.ts';

const { molarMass, valence, density } = platedMetals.nickel;
const nickel = electrochemicalEquivalent(molarMass, valence);
const printedDensity = 8907;
const lastDigit = 'half of the last printed digit';

/** Minutes for a thickness [µm] of nickel at a current density [A/dm²], 95.5 %. */
const times: [micrometres: number, density: number, minutes: number, digit: number][] = [
  [2, 0.5, 20, 1],
  [2, 1.5, 6.8, 0.1],
  [2, 3, 3.4, 0.1],
  [2, 6, 1.7, 0.1],
  [4, 0.5, 41, 1],
  [4, 4, 5.1, 0.1],
  [6, 0.5, 61, 1],
  [6, 3, 10, 1],
  [6, 4, 7.7, 0.1],
  [6, 8, 3.8, 0.1],
];

const faraday = 'Faraday’s law with CODATA and IUPAC constants, worked out independently';

export const topic: Topic = {
  title: 'Nickel and silver plating',
  field: 'chemistry',
  figures: [
    {
      what: 'nickel for 1 A·h [g]',
      computed: 1e3 * platedMass(3600, nickel, 1),
      published: 1.095,
      tolerance: 0.0005,
      why: lastDigit,
      source: 'Nickel Institute, Nickel Plating Handbook, 2014, m = 1.095·a·I·t (from memory)',
      tier: 'B',
    },
    {
      what: 'nickel in one hour at 1 A/dm² [µm]',
      computed: 1e6 * platedThickness(100, 3600, nickel, printedDensity, 1),
      published: 12.294,
      tolerance: 0.001,
      why: 'it was worked out with 1.095 g/(A·h), rounded up',
      source: 'Nickel Institute handbook’s factor 12.294·I·t/A, as reprinted',
      tier: 'B',
    },
    {
      what: 'nickel in one hour at 1 A/dm², 95.5 % [µm]',
      computed: 1e6 * platedThickness(100, 3600, nickel, printedDensity, 0.955),
      published: 11.74,
      tolerance: 0.005,
      why: lastDigit,
      source: faraday,
      tier: 'C',
    },
    ...times.map(([micrometres, currentDensity, published, digit]): Figure => {
      const computed = platingTime(micrometres * 1e-6, 100 * currentDensity, nickel, printedDensity, 0.955) / 60;
      const tolerance = 0.6 * digit;
      const shows = Math.min(...[0.99, 1.01].map((factor) => Math.abs(factor * computed - published))) > tolerance;
      return {
        what: `${micrometres} µm of nickel at ${currentDensity} A/dm² [min]`,
        computed,
        published,
        tolerance,
        why: 'last printed digit, rounded or cut',
        source: 'finishingandcoating.com, Clarifying facts about nickel plating, table of times',
        tier: 'B',
        ...(!shows && { coarse: 'printed with one or two digits' }),
      };
    }),
    ...(
      [
        [2, 0.17],
        [4, 0.34],
        [6, 0.51],
      ] as const
    ).map(([micrometres, published]): Figure => {
      return {
        what: `charge for ${micrometres} µm of nickel on 1 dm² [A·h]`,
        computed: platingCharge(micrometres * 1e-6, 0.01, nickel, printedDensity, 0.955) / 3600,
        published,
        tolerance: 0.005,
        why: lastDigit,
        source: 'finishingandcoating.com, Clarifying facts about nickel plating, table of times',
        tier: 'B',
        coarse: 'printed with two digits',
      };
    }),
    {
      what: 'nickel by 2 A in 30 min, 95 % [g]',
      computed: 1e3 * platedMass(3600, nickel, 0.95),
      published: 1.04,
      tolerance: 0.005,
      why: lastDigit,
      source: 'tools.moldchem.com, plating thickness, worked case',
      tier: 'B',
    },
    {
      what: 'nickel by 2 A on 1 dm² in 30 min, 95 % [µm]',
      computed: 1e6 * platedThickness(200, 1800, nickel, density, 0.95),
      published: 11.7,
      tolerance: 0.05,
      why: lastDigit,
      source: 'tools.moldchem.com, plating thickness, worked case',
      tier: 'B',
    },
    {
      what: 'nickel at 40 A/m² in 2 h with 30.4e-8 kg/C and 8900 kg/m³ [µm]',
      computed: 1e6 * platedThickness(40, 7200, 30.4e-8, 8900, 1),
      published: 9.84,
      tolerance: 0.005,
      why: lastDigit,
      source: 'univerkov.com, worked exercise on nickel plating',
      tier: 'B',
    },
    {
      what: 'time for 1.8 g of nickel at 2 A with 30.4e-8 kg/C [s]',
      computed: platingTime(1.8e-3, 2, 30.4e-8, 1, 1),
      published: 2961,
      tolerance: 0.5,
      why: `${lastDigit}; mass stands for thickness times area times density`,
      source: 'univerkov.com, worked exercise on nickel plating',
      tier: 'B',
    },
    {
      what: 'silver on a pin of 2.512 cm² by 0.2 A in 10 min with 1.118e-6 kg/C [µm]',
      computed: 1e6 * platedThickness(0.2 / 2.512e-4, 600, 1.118e-6, 1.05e4, 1),
      published: 50.83,
      tolerance: 0.1,
      why: 'steps on the way are rounded to three or four digits',
      source: 'byjus.com, worked exercise on silver plating',
      tier: 'B',
    },
    {
      what: 'charge for 0.1 mm of silver on 400 cm², 107.9 g/mol [C]',
      computed: platingCharge(1e-4, 0.04, electrochemicalEquivalent(107.9e-3, 1), 10_500, 1),
      published: 37_557,
      tolerance: 2,
      why: 'digits given: 42 g over 107.9 g/mol times the Faraday constant',
      source: 'textbook exercise on a brass plate, philoid.com, worked out independently',
      tier: 'C',
    },
    {
      what: 'current for 4 A/dm² on 1.5 dm² [A]',
      computed: platingCurrent(400, 0.015),
      published: 6,
      tolerance: 1e-9,
      why: 'exact',
      source: 'worked out by hand',
      tier: 'C',
    },
    {
      what: 'hydrogen from the remainder of 1 A in one hour at 95.5 % [mmol]',
      computed: 1e3 * hydrogenAmount(3600, 0.955),
      published: 0.8395,
      tolerance: 5e-5,
      why: lastDigit,
      source: faraday,
      tier: 'C',
    },
  ],
  traps: [
    {
      what: 'nickel by 0.350 A on 100 cm² in 7200 s [µm]',
      computed: 1e6 * platedThickness(35, 7200, nickel, density, 1),
      published: 8.06,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'a published example of plating thickness',
      reason: 'its own formula gives 8.6 µm',
    },
    {
      what: 'nickel by 1 A on 1 dm² in one minute [µm]',
      computed: 1e6 * platedThickness(100, 60, nickel, density, 1),
      published: 1.074,
      tolerance: 0.0005,
      why: 'half of the last printed digit',
      source: 'a formula in a forum for platers',
      reason: 'its constant is five times too large; tables give 0.205 µm',
    },
  ],
  unchecked: [
    'the Nickel Plating Handbook’s own tables: only reprints were read',
    'how fast gallium alloys attack copper and nickel between 60 °C and 100 °C: no published rate was found',
  ],
};
