import { airDensity, airHeatCapacityRate } from '../../src/physics/thermal/air-heating.ts';
import { bondLineThickness } from '../../src/physics/thermal/bond-line.ts';
import { channelNusselt } from '../../src/physics/thermal/channel-film.ts';
import { contactConductance } from '../../src/physics/thermal/contact.ts';
import { settledTemperature } from '../../src/physics/thermal/electrothermal-fixed-point.ts';
import { finEfficiency } from '../../src/physics/thermal/fin-efficiency.ts';
import { heatPipeResistance } from '../../src/physics/thermal/heat-pipe.ts';
import { layerResistance } from '../../src/physics/thermal/layer.ts';
import { peakSpreadingResistance, spreadingResistance } from '../../src/physics/thermal/spreading-resistance.ts';
import type { Figure, Topic } from '../topic.ts';

const pads: [thickness: number, cold: number][] = [
  [2.032e-3, 25.484],
  [1.829e-3, 25.936],
  [2.235e-3, 25.033],
];

const fins: [mH: number, percent: number, tolerance: number][] = [
  [0.2, 99, 0.35],
  [0.5, 92, 0.45],
  [1, 76, 0.45],
  [2, 48, 0.25],
];

const plates: [
  plate: number,
  source: number,
  thickness: number,
  conductivity: number,
  film: number,
  mean: number,
  peak: number,
][] = [
  [60e-3, 15e-3, 2e-3, 390, 2000, 0.164555, 0.214405],
  [60e-3, 15e-3, 5e-3, 390, 2000, 0.081612, 0.106336],
  [60e-3, 30e-3, 2e-3, 390, 2000, 0.053042, 0.084643],
  [40e-3, 12e-3, 3e-3, 200, 1000, 0.20402, 0.275156],
  [100e-3, 10e-3, 1e-3, 390, 500, 0.673762, 0.801384],
];

const air: [celsius: number, density: number, specificHeat: number][] = [
  [20, 1.204, 1007],
  [25, 1.184, 1007],
  [40, 1.127, 1007],
  [60, 1.059, 1007],
  [80, 0.9994, 1008],
];

const channels: [reynolds: number, nusselt: number][] = [
  [0.1, 0.0355],
  [1, 0.3525],
  [10, 2.42103],
  [100, 6.90375],
];

const bondLines: [yieldStress: number, pressure: number, micrometres: number][] = [
  [100, 100e3, 41.62],
  [100, 200e3, 37.09],
  [100, 500e3, 31.86],
  [100, 1000e3, 28.4],
  [500, 100e3, 54.36],
];

// Incropera and DeWitt, example 3.2: 1e4 W/m² from a chip, air at 25 °C and 100 W/(m²·K) on both sides, on one side behind an epoxy joint
// of 0.9e-4 m²K/W and 8 mm of aluminium (239 W/(m·K)).
const behindChip = 0.9e-4 + layerResistance(8e-3, 239, 1) + 1 / 100;

export const topic: Topic = {
  title: 'From junction to air',
  field: 'thermal',
  figures: [
    ...pads.map(([thickness, cold]): Figure => {
      return {
        what: `drop across ${thickness * 1e3} mm of pad [K]`,
        computed: 10 * layerResistance(thickness, 5, 900e-6),
        published: 30 - cold,
        tolerance: 0.001,
        why: 'last printed digit',
        source:
          'gap pad tolerance example, DigiKey TechForum 61355: 10 W over 900 mm², 5 W/(m·K), 30 °C on the hot side',
        tier: 'B',
      };
    }),
    {
      what: '100 µm of 5 W/(m·K) over 100 mm² [K/W]',
      computed: layerResistance(100e-6, 5, 100e-6),
      published: 0.2,
      tolerance: 0.001,
      why: 'the figure is exact',
      source: 'thermal interface materials, rfessentials.com',
      tier: 'B',
    },
    {
      what: 'rise of a chip cooled on both sides, 1e4 W/m² [K]',
      computed: 1e4 / (100 + 1 / behindChip),
      published: 75.3 - 25,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: 'Fundamentals of Heat and Mass Transfer, Incropera and DeWitt, example 3.2',
      tier: 'B',
    },
    ...fins.map(([mH, published, tolerance]): Figure => {
      const [conductivity, thickness, height] = [200, 0.4e-3, 25e-3];
      const film = ((mH / height) ** 2 * conductivity * thickness) / 2;
      return {
        what: `fin efficiency at m·H = ${mH} [%]`,
        computed: 100 * finEfficiency(film, conductivity, thickness, height),
        published,
        tolerance,
        why: 'up to half of the last printed digit, less where one per cent would not show',
        source: 'fin efficiency table, fluidspad.com',
        tier: 'B',
      };
    }),
    ...plates.flatMap(([plate, source, thickness, conductivity, film, mean, peak]): Figure[] => {
      const what = `${source * 1e3} mm on ${plate * 1e3} mm, ${thickness * 1e3} mm thick [K/W]`;
      const inputs = [source ** 2, plate ** 2, thickness, conductivity, film] as const;
      const common = {
        tolerance: 2e-6,
        why: 'last digit',
        source: 'equations of Song, Lee and Au, 1994 (from memory), evaluated by a separate program',
        tier: 'C',
      } as const;
      return [
        { what: `mean spreading, ${what}`, computed: spreadingResistance(...inputs), published: mean, ...common },
        { what: `peak spreading, ${what}`, computed: peakSpreadingResistance(...inputs), published: peak, ...common },
      ];
    }),
    {
      what: 'peak spreading, 25 mm on 100 mm of aluminium, 1.3 mm thick, 1.0 K/W behind [K/W]',
      computed: peakSpreadingResistance(0.025 ** 2, 0.1 ** 2, 1.3e-3, 200, 1 / (1.0 * 0.1 ** 2)),
      published: 0.66,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'S. Lee, Electronics Cooling 4 (1998) 30–33 (from memory)',
      tier: 'B',
      coarse: 'printed with two digits',
    },
    ...air.flatMap(([celsius, density, specificHeat]): Figure[] => {
      const source = 'Heat and Mass Transfer, Y. A. Çengel, table A-15, air at 1 atm';
      return [
        {
          what: `density of air at ${celsius} °C [kg/m³]`,
          computed: airDensity(celsius + 273.15),
          published: density,
          tolerance: 0.001,
          why: 'last printed digit',
          source,
          tier: 'B',
        },
        {
          what: `heat taken up by 1 m³/s of air at ${celsius} °C [W/K]`,
          computed: airHeatCapacityRate(1, celsius + 273.15),
          published: density * specificHeat,
          tolerance: 0.002 * density * specificHeat,
          why: 'specific heat is taken as constant',
          source,
          tier: 'B',
        },
      ];
    }),
    ...channels.map(([reynolds, published]): Figure => {
      return {
        what: `Nu between plate fins at Re* = ${reynolds} [1]`,
        computed: channelNusselt(reynolds, 0.71),
        published,
        tolerance: 1e-5,
        why: 'last digit',
        source:
          'model of Teertstra, Yovanovich, Culham and Lemczyk, 1999, as quoted from Culham and Muzychka, 2001, evaluated by a separate program at Pr = 0.71',
        tier: 'C',
      };
    }),
    {
      what: 'heat pipe, 6 cm, two layers of #500 mesh [K/W]',
      computed: heatPipeResistance(3.618e-3, 1.474),
      published: 2.95,
      tolerance: 0.006,
      why: 'last printed digit, cut',
      source: 'Qpedia Thermal eMagazine, heat pipe example',
      tier: 'B',
    },
    ...bondLines.map(([yieldStress, pressure, published]): Figure => {
      return {
        what: `bond line, ${yieldStress} Pa at ${pressure / 1e3} kPa [µm]`,
        computed: 1e6 * bondLineThickness(yieldStress, pressure),
        published,
        tolerance: 0.006,
        why: 'last digit',
        source:
          'scaling law of Prasher et al., IMECE2002-32118, constants from memory, evaluated by a separate program',
        tier: 'C',
      };
    }),
    {
      what: 'copper on aluminium, 0.8 µm and 0.1 each, 0.5 MPa against 1.1 GPa [W/(m²·K)]',
      computed: contactConductance(390, 180, 0.8e-6 * Math.SQRT2, 0.1 * Math.SQRT2, 0.5e6, 1.1e9),
      published: 25_705,
      tolerance: 1,
      why: 'last digit',
      source: 'Yovanovich, 2005 (coefficient from memory), evaluated by a separate program',
      tier: 'C',
    },
    {
      what: 'junction, 1.94 W over 40 K/W above 70 °C [°C]',
      computed: settledTemperature(70, 40, 1.94, 0, 0, 25),
      published: 147.6,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: 'LTC3780 data sheet, Linear Technology, page 23',
      tier: 'B',
    },
  ],
};
