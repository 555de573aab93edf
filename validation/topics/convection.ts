import { laminarPlateNusselt, plateFilm, turbulentPlateNusselt } from '../../src/physics/thermal/flat-plate-film.ts';
import {
  downwardPlateNusselt,
  laminarVerticalPlateNusselt,
  levelCylinderNusselt,
  rayleigh,
  upwardPlateNusselt,
  verticalPlateNusselt,
} from '../../src/physics/thermal/natural-convection.ts';
import { radiatedHeat } from '../../src/physics/thermal/radiation.ts';
import { laminarTubeNusseltAtUniformFlux, turbulentTubeNusselt } from '../../src/physics/thermal/tube-film.ts';
import type { Topic } from '../topic.ts';

const book = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer';
const cut = 'the last printed digit is cut off, not rounded';

/** Strips of 50 mm one after the other in 60 m/s of air, 205 K: heat from the edge to the end of a strip, for 1 m of width. */
const toTheEndOf = (strip: number) => plateFilm(60, strip * 0.05, 0.0338, 26.41e-6, 0.69) * strip * 0.05 * 205;

const screen = rayleigh(2.5e-3, 209, 0.71, 26.4e-6, 38.3e-6);
const ductSide = rayleigh(3.3e-3, 30, 0.3, 16.2e-6, 22.9e-6);
const ductTop = rayleigh(3.3e-3, -30, 0.375, 16.2e-6, 22.9e-6);
const ductSides = (2 * laminarVerticalPlateNusselt(ductSide, 0.71) * 0.0265 * 0.3) / 0.3;
const ductFaces = ((upwardPlateNusselt(ductTop) + downwardPlateNusselt(ductTop)) * 0.0265 * 0.75) / 0.375;
const pipe = levelCylinderNusselt(rayleigh(2.725e-3, 142, 0.1, 22.8e-6, 32.8e-6), 0.697) * 0.0313;
const ductAir = (turbulentTubeNusselt(20384, 0.7, false) * 0.03) / 0.15;

export const topic: Topic = {
  title: 'Forced and natural convection',
  field: 'thermal',
  figures: [
    {
      what: 'Re 9600, Pr 0.687, plate of 0.5 m, 273 K, air of 0.0364 W/(m·K) [W/m]',
      computed: laminarPlateNusselt(9600, 0.687) * 0.0364 * 273,
      published: 570,
      tolerance: 1,
      why: cut,
      source: `${book}, example 7.1`,
      tier: 'B',
    },
    {
      what: 'the same from velocity 10 m/s and viscosity at 6 kN/m² [W/m]',
      computed: plateFilm(10, 0.5, 0.0364, (30.84e-6 * 101325) / 6000, 0.687) * 0.5 * 273,
      published: 570,
      tolerance: 1,
      why: cut,
      source: `${book}, example 7.1`,
      tier: 'B',
    },
    {
      what: 'first strip heater, laminar [W]',
      computed: toTheEndOf(1),
      published: 1370,
      tolerance: 1,
      why: cut,
      source: `${book}, example 7.2`,
      tier: 'B',
    },
    {
      what: 'fifth strip heater, where the layer turns turbulent [W]',
      computed: toTheEndOf(5) - toTheEndOf(4),
      published: 1017,
      tolerance: 1,
      why: cut,
      source: `${book}, example 7.2`,
      tier: 'B',
    },
    {
      what: 'sixth strip heater [W]',
      computed: toTheEndOf(6) - toTheEndOf(5),
      published: 1427,
      tolerance: 1,
      why: cut,
      source: `${book}, example 7.2`,
      tier: 'B',
    },
    {
      what: 'Nu of a tripped layer at Re 6.8e5, Pr 0.69 [1]',
      computed: turbulentPlateNusselt(6.8e5, 0.69, true),
      published: 1515.3,
      tolerance: 0.1,
      why: 'worked by hand: 0.037 · 46 345.5 · 0.88366 = 1515.3',
      source: `${book}, equation 7.38 with A = 0`,
      tier: 'C',
    },
    {
      what: 'Rayleigh number of a fireplace screen [1]',
      computed: screen,
      published: 1.81e9,
      tolerance: 0.005e9,
      why: 'half of the last printed digit',
      source: `${book}, example 9.2`,
      tier: 'B',
    },
    {
      what: 'heat from the screen to the room by convection [W]',
      computed: ((verticalPlateNusselt(screen, 0.69) * 0.0338) / 0.71) * 0.71 * 1.02 * 209,
      published: 1060,
      tolerance: 1,
      why: cut,
      source: `${book}, example 9.2`,
      tier: 'B',
    },
    {
      what: 'heat from an air duct, four sides [W/m]',
      computed: (ductSides + ductFaces) * 30,
      published: 246,
      tolerance: 1,
      why: cut,
      source: `${book}, example 9.3`,
      tier: 'B',
    },
    {
      what: 'film coefficient at the sides of the duct [W/(m²·K)]',
      computed: ductSides / 0.6,
      published: 4.23,
      tolerance: 0.02,
      why: 'result from memory, last digit doubtful',
      source: `${book}, example 9.3 (from memory)`,
      tier: 'B',
    },
    {
      what: 'film coefficient on the duct [W/(m²·K)]',
      computed: (upwardPlateNusselt(ductTop) * 0.0265) / 0.375,
      published: 5.47,
      tolerance: 0.02,
      why: 'result from memory, last digit doubtful',
      source: `${book}, example 9.3 (from memory)`,
      tier: 'B',
    },
    {
      what: 'film coefficient under the duct [W/(m²·K)]',
      computed: (downwardPlateNusselt(ductTop) * 0.0265) / 0.375,
      published: 2.07,
      tolerance: 0.01,
      why: 'result from memory, last digit',
      source: `${book}, example 9.3 (from memory)`,
      tier: 'B',
    },
    {
      what: 'Nu of a small warm plate facing up, Ra 1e6 [1]',
      computed: upwardPlateNusselt(1e6),
      published: 17.076,
      tolerance: 0.001,
      why: 'worked by hand: 0.54 · 31.623',
      source: `${book}, equation 9.30`,
      tier: 'C',
    },
    {
      what: 'heat from a steam pipe, convection and radiation [W/m]',
      computed: pipe * Math.PI * 142 + radiatedHeat(0.85, Math.PI * 0.1, 438, 296),
      published: 763,
      tolerance: 1,
      why: cut,
      source: `${book}, example 9.4`,
      tier: 'B',
    },
    {
      what: 'flux through the wall of a duct, 77 °C air inside, 6 W/(m²·K) outside at 0 °C [W/m²]',
      computed: 77 / (1 / ductAir + 1 / 6),
      published: 304.3,
      tolerance: 0.1,
      why: 'last printed digit',
      source: `${book}, example 8.6`,
      tier: 'B',
    },
    {
      what: 'film coefficient inside the duct [W/(m²·K)]',
      computed: ductAir,
      published: 11.6,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: `${book}, example 8.6 (from memory)`,
      tier: 'B',
    },
    {
      what: 'heating by a tube, Re 1e5, Pr 5: Nu [1]',
      computed: turbulentTubeNusselt(1e5, 5, true),
      published: 437.8,
      tolerance: 0.2,
      why: 'worked by hand: 0.023 · 10 000 · 1.90365 = 437.84',
      source: `${book}, equation 8.60`,
      tier: 'C',
    },
    {
      what: 'wall above the water at the end of a tube with 2000 W/m², 0.67 W/(m·K), 60 mm [K]',
      computed: 2000 / ((laminarTubeNusseltAtUniformFlux * 0.67) / 0.06),
      published: 41.04,
      tolerance: 0.01,
      why: 'last printed digit',
      source: `${book}, example 8.4`,
      tier: 'B',
    },
    {
      what: 'upright plate, Ra 1e4, Pr 0.01: Nu [1]',
      computed: verticalPlateNusselt(1e4, 0.01),
      published: 3.00811,
      tolerance: 0.00001,
      why: 'last digit',
      source: 'printed correlation worked out by an independent program',
      tier: 'C',
    },
    {
      what: 'upright plate, laminar, Ra 10, Pr 0.01: Nu [1]',
      computed: laminarVerticalPlateNusselt(10, 0.01),
      published: 1.109176,
      tolerance: 0.000001,
      why: 'last digit',
      source: 'printed correlation worked out by an independent program',
      tier: 'C',
    },
    {
      what: 'level cylinder, Ra 1e4, Pr 0.01: Nu [1]',
      computed: levelCylinderNusselt(1e4, 0.01),
      published: 2.22634,
      tolerance: 0.00001,
      why: 'last digit',
      source: 'printed correlation worked out by an independent program',
      tier: 'C',
    },
    {
      what: 'cooling by a tube, Re 1e4, Pr 100: Nu [1]',
      computed: turbulentTubeNusselt(1e4, 100, false),
      published: 145.12,
      tolerance: 0.001,
      why: 'last digit',
      source: 'printed correlation worked out by an independent program',
      tier: 'C',
    },
  ],
  unchecked: ['a heat sink with upright fins in still air: no published example was found'],
};
