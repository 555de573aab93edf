import { activeTipFinHeat } from '../../src/physics/thermal/active-tip-fin.ts';
import { annularFinEfficiency } from '../../src/physics/thermal/annular-fin.ts';
import { finEfficiency } from '../../src/physics/thermal/fin-efficiency.ts';
import { finnedConductance } from '../../src/physics/thermal/finned-surface.ts';
import { layerResistance } from '../../src/physics/thermal/layer.ts';
import { longFinHeat, pinFinEfficiency } from '../../src/physics/thermal/pin-fin.ts';
import { seriesThermalResistance } from '../../src/physics/thermal/stack.ts';
import type { Figure, Topic } from '../topic.ts';

const book = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer';
const diameter = 5e-3;
const rod = (conductivity: number) =>
  longFinHeat(100, Math.PI * diameter, conductivity, (Math.PI * diameter ** 2) / 4, 75);

const rods: readonly [metal: string, conductivity: number, published: number, tolerance: number][] = [
  ['copper, 398 W/(m·K)', 398, 8.33, 0.03],
  ['aluminium, 180 W/(m·K)', 180, 5.6, 0.03],
  ['stainless steel, 14 W/(m·K)', 14, 1.56, 0.01],
];

/** Annular fins of a cylinder: five of 6 mm, from 25 mm to 45 mm. */
const finArea = 2 * Math.PI * (0.048 ** 2 - 0.025 ** 2);
const bareArea = 2 * Math.PI * 0.025 * (0.15 - 5 * 0.006);

/** A fuel cell between two heat sinks, 22 fins in all. */
const sinkResistance = seriesThermalResistance([
  1e-3 / (2 * 0.05 * 0.05),
  layerResistance(0.002, 200, 2 * 0.05 * 0.05),
  1 / finnedConductance(19.1, 22, finEfficiency(19.1, 200, 1e-3, 8e-3), 2 * 0.051 * 0.008, 0.005 - 22 * 0.001 * 0.05),
]);

const figures: Figure[] = [
  ...rods.map(([metal, conductivity, published, tolerance]): Figure => {
    return {
      what: `very long rod of ${metal}, 5 mm, 75 K, 100 W/(m²·K) [W]`,
      computed: rod(conductivity),
      published,
      tolerance,
      why: 'conductivity from memory, half a per cent',
      source: `${book}, example 3.9`,
      tier: 'B',
    };
  }),
  {
    what: 'heat from a cylinder with five annular fins of efficiency 0.95, 200 K [W]',
    computed: 200 * finnedConductance(50, 5, 0.95, finArea, bareArea),
    published: 689.6,
    tolerance: 0.01,
    why: 'last printed digit',
    source: `${book}, example 3.10`,
    tier: 'B',
  },
  {
    what: 'the same cylinder without fins [W]',
    computed: 200 * finnedConductance(50, 0, 0.95, finArea, 2 * Math.PI * 0.025 * 0.15),
    published: 235.62,
    tolerance: 0.005,
    why: 'last printed digit',
    source: `${book}, example 3.10`,
    tier: 'B',
  },
  {
    what: 'efficiency of one of these annular fins, exact [1]',
    computed: annularFinEfficiency(50, 186, 6e-3, 0.025, 0.045),
    published: 0.97855,
    tolerance: 0.00001,
    why: 'last digit; the book reads 0.95 from a chart',
    source: 'Bessel functions of SciPy, an independent program',
    tier: 'C',
  },
  {
    what: 'the cylinder with exact efficiency [W]',
    computed: 200 * finnedConductance(50, 5, annularFinEfficiency(50, 186, 6e-3, 0.025, 0.045), finArea, bareArea),
    published: 704.66,
    tolerance: 0.01,
    why: 'last digit',
    source: 'Bessel functions of SciPy, an independent program',
    tier: 'C',
  },
  {
    what: 'efficiency of an annular fin, 15 mm to 30 mm, 2 mm of 180 W/(m·K), 60 W/(m²·K) [1]',
    computed: annularFinEfficiency(60, 180, 2e-3, 0.015, 0.03),
    published: 0.96,
    tolerance: 0.005,
    why: 'half of the last printed digit',
    source: 'Çengel, Heat and Mass Transfer, example 3-12 (result from memory)',
    tier: 'B',
  },
  {
    what: 'efficiency of a pin, 4 mm, corrected length 36.18 mm, 160 W/(m·K), 220 W/(m²·K) [1]',
    computed: pinFinEfficiency(220, 160, 4e-3, 35.18e-3),
    published: 0.65,
    tolerance: 0.001,
    why: 'four digits of the length',
    source: `${book}, problem on a pin fin of 65 % efficiency, with its published solution`,
    tier: 'B',
  },
  {
    what: 'fuel cell above the air, 11.25 W through two heat sinks of 22 fins [K]',
    computed: 11.25 * sinkResistance,
    published: 29.32,
    tolerance: 0.01,
    why: 'last printed digit of the temperature; the printed 54.47 °C is 327.47 K less 273, for air at 298.15 K',
    source: `${book}, example 3.11`,
    tier: 'B',
  },
  {
    what: 'copper rod, 5 mm, 50 mm long, cooled tip, 75 K, 100 W/(m²·K) [W]',
    computed: activeTipFinHeat(100, Math.PI * diameter, 398, (Math.PI * diameter ** 2) / 4, 0.05, 75),
    published: 5.1601,
    tolerance: 0.0001,
    why: 'last digit',
    source: 'boundary value problem solved by SciPy (solve_bvp), an independent program',
    tier: 'C',
  },
];

export const topic: Topic = {
  title: 'Fins',
  field: 'thermal',
  figures,
  traps: [
    {
      what: 'efficiency of an annular fin, 25 mm to 45 mm, 6 mm thick [1]',
      computed: annularFinEfficiency(50, 186, 6e-3, 0.025, 0.045),
      published: 0.95,
      tolerance: 0.01,
      why: 'a chart is read to a hundredth at best',
      source: `${book}, example 3.10, figure 3.19`,
      reason: 'read from a chart; the exact value is 0.979',
    },
  ],
};
