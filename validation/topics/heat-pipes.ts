import { effectiveConductivity, heatPipeResistance } from '../../src/physics/thermal/heat-pipe.ts';
import {
  capillaryLimit,
  grooveConductivity,
  screenConductivity,
  screenPorosity,
} from '../../src/physics/thermal/heat-pipe-wick.ts';
import { layerResistance } from '../../src/physics/thermal/layer.ts';
import type { Figure, Topic } from '../topic.ts';

const qpedia = 'Qpedia Thermal eMagazine, heat pipes and their wicks';
const section = (Math.PI * 6e-3 ** 2) / 4;

/** Groove and fin [mm], conductivity of a copper wall with water in the grooves [W/(m·K)]. */
const grooves: readonly [groove: number, fin: number, conductivity: number][] = [
  [1, 1, 200],
  [1, 0.5, 134],
  [1, 0.2, 67],
  [0.5, 1, 267],
  [0.4, 1, 286],
  [0.3, 1, 308],
  [0.2, 1, 333],
];

export const topic: Topic = {
  title: 'Heat pipes and wicks',
  field: 'thermal',
  figures: [
    {
      what: 'solid copper of the size of a heat pipe, 60 mm, 6 mm [K/W]',
      computed: layerResistance(0.06, 400, section),
      published: 5.3,
      tolerance: 0.04,
      why: 'half of the last printed digit, less where one per cent would not show',
      source: qpedia,
      tier: 'B',
    },
    {
      what: 'porosity of a #500 mesh, 21.59 µm, crimping 1.05 [1]',
      computed: screenPorosity(1.05, 500 / 0.0254, 21.59e-6),
      published: 0.65,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: qpedia,
      tier: 'B',
    },
    {
      what: 'conductivity of that mesh with water, copper wire [W/(m·K)]',
      computed: screenConductivity(0.6, 400, screenPorosity(1.05, 500 / 0.0254, 21.59e-6)),
      published: 1.25,
      tolerance: 0.0055,
      why: 'last printed digit; the conductivity of water is taken as 0.6 W/(m·K)',
      source: qpedia,
      tier: 'B',
    },
    ...grooves.map(([groove, fin, published]): Figure => {
      return {
        what: `copper with grooves of ${groove} mm, fins of ${fin} mm [W/(m·K)]`,
        computed: grooveConductivity(0.6, 400, groove, fin),
        published,
        tolerance: 0.5,
        why: 'half of the last printed digit',
        source: qpedia,
        tier: 'B',
      };
    }),
    {
      what: 'most heat by a wick of 1e-9 m² and 1 cm² section, 0.15 m, pores of 31 µm [kW]',
      computed:
        capillaryLimit(
          { poreRadius: 3.1e-5, permeability: 1e-9, wickSection: 1e-4, length: 0.15 },
          { surfaceTension: 0.07, density: 1e3, heatOfEvaporation: 2.5e6, viscosity: 1e-3 },
        ) / 1e3,
      published: 7.5,
      tolerance: 0.03,
      why: 'two printed digits, less where one per cent would not show',
      source: 'COMSOL documentation 6.4, heat pipe with accurate liquid and gas properties',
      tier: 'B',
    },
    {
      what: 'effective conductivity of a 60 mm heat pipe of 2.955 K/W, 6 mm [W/(m·K)]',
      computed: effectiveConductivity(0.06, 2.955236, section),
      published: 718.07,
      tolerance: 0.01,
      why: 'last digit',
      source: 'Fourier’s law by hand',
      tier: 'C',
    },
  ],
  traps: [
    {
      what: 'effective conductivity of a 60 mm heat pipe of 2.95 K/W, 6 mm [W/(m·K)]',
      computed: effectiveConductivity(0.06, heatPipeResistance(3.618e-3, 1.474), section),
      published: 730,
      tolerance: 5,
      why: 'printed to the nearest ten',
      source: qpedia,
      reason: 'length, resistance and diameter of the same example give 718',
    },
  ],
  unchecked: ["carrying limits by diameter, bend and flattening: only sellers' tables exist"],
};
