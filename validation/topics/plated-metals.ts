import { electrochemicalEquivalent } from '../../src/physics/chemistry/electrochemical-equivalent.ts';
import { platedMetals } from '../../src/physics/chemistry/metals.ts';
import { platedMass, platedThickness } from '../../src/physics/chemistry/plating.ts';
import type { Figure, Topic } from '../topic.ts';

type Metal = keyof typeof platedMetals;

const surfaceFinishing = 'Surface Finishing Tutorial 166, theoretical precipitation amount of plating, 2013, table 1';
/** Grams for an ampere-hour, and micrometres for an ampere-minute on a square decimetre at the density printed [g/cm³]. */
const tutorial: [metal: Metal, valence: number, grams: number, density: number, micrometres: number][] = [
  ['nickel', 2, 1.095, 8.9, 0.205],
  ['copper', 2, 1.186, 8.92, 0.222],
  ['copper', 1, 2.371, 8.92, 0.443],
  ['silver', 1, 4.026, 10.5, 0.639],
  ['gold', 1, 7.351, 19.3, 0.635],
  ['gold', 3, 2.45, 19.3, 0.212],
  ['tin', 2, 2.215, 7.3, 0.506],
  ['tin', 4, 1.107, 7.3, 0.253],
  ['zinc', 2, 1.22, 7.1, 0.286],
  ['chromium', 6, 0.3234, 7.1, 0.076],
  ['chromium', 3, 0.6468, 7.1, 0.152],
  ['palladium', 2, 1.985, 12, 0.276],
];

const eciato = 'eciato.com, electrochemical equivalents at full cathode efficiency, table';
const equivalents: [metal: Metal, grams: number][] = [
  ['nickel', 1.095],
  ['copper', 1.186],
  ['silver', 4.024],
  ['gold', 7.348],
  ['tin', 2.214],
  ['zinc', 1.219],
  ['chromium', 0.323],
  ['palladium', 1.985],
  ['indium', 1.428],
];

/** Densities in that table [g/cm³]. */
const densities: [metal: Metal, density: number][] = [
  ['nickel', 8.9],
  ['copper', 8.96],
  ['silver', 10.5],
  ['gold', 19.3],
  ['tin', 7.3],
  ['zinc', 7.14],
  ['indium', 7.31],
  ['palladium', 12],
];

export const topic: Topic = {
  title: 'Metals that are plated',
  field: 'chemistry',
  figures: [
    ...tutorial.flatMap(([metal, valence, grams, density, micrometres]): Figure[] => {
      const equivalent = electrochemicalEquivalent(platedMetals[metal].molarMass, valence);
      const thickness = 1e6 * platedThickness(100, 60, equivalent, density * 1e3, 1);
      const tolerance = 0.00055;
      const shows = Math.min(...[0.99, 1.01].map((by) => Math.abs(by * thickness - micrometres))) > tolerance;
      return [
        {
          what: `${metal}(${valence}) for 1 A·h [g]`,
          computed: 1e3 * platedMass(3600, equivalent, 1),
          published: grams,
          tolerance: 0.0006 * grams,
          why: 'it takes atomic weights with four digits',
          source: surfaceFinishing,
          tier: 'B',
        },
        {
          what: `${metal}(${valence}) for 1 A·min on 1 dm² at ${density} g/cm³ [µm]`,
          computed: thickness,
          published: micrometres,
          tolerance,
          why: 'half of the last printed digit',
          source: surfaceFinishing,
          tier: 'B',
          ...(!shows && { coarse: 'printed with two or three digits' }),
        },
      ];
    }),
    ...equivalents.map(([metal, grams]): Figure => {
      const { molarMass, valence } = platedMetals[metal];
      return {
        what: `${metal} from its usual ion for 1 A·h [g]`,
        computed: 3.6e6 * electrochemicalEquivalent(molarMass, valence),
        published: grams,
        tolerance: Math.max(0.0005, 0.0006 * grams),
        why: 'half of the last printed digit; atomic weights with five digits',
        source: eciato,
        tier: 'B',
      };
    }),
    ...densities.map(([metal, published]): Figure => {
      return {
        what: `density of ${metal} [g/cm³]`,
        computed: platedMetals[metal].density / 1e3,
        published,
        tolerance: 0.002 * published,
        why: 'tables differ by up to 0.2 %',
        source: eciato,
        tier: 'B',
      };
    }),
    {
      what: 'density of chromium [g/cm³]',
      computed: platedMetals.chromium.density / 1e3,
      published: 7.2,
      tolerance: 0.06,
      why: 'tables give 7.1 and 7.2',
      source: eciato,
      tier: 'B',
      coarse: 'tables differ by more than one per cent',
    },
    {
      what: 'density of chromium in a handbook [g/cm³]',
      computed: platedMetals.chromium.density / 1e3,
      published: 7.15,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'CRC Handbook of Chemistry and Physics, physical constants of inorganic compounds (from memory)',
      tier: 'B',
    },
  ],
};
