import { airDensity, airFlowFor, airHeatCapacityRate } from '../../src/physics/thermal/air-heating.ts';
import {
  airConductivity,
  airHeatCapacity,
  airPrandtl,
  airViscosity,
} from '../../src/physics/thermal/air-properties.ts';
import type { Figure, Topic } from '../topic.ts';

const cengel = 'Çengel, Heat and Mass Transfer, table A-15';
const printed = 'the correlations as printed on egichem.com, worked out by an independent program';
const cubicFootPerMinute = 0.3048 ** 3 / 60;

/** µ [1e-5 Pa·s], ν [1e-5 m²/s] and Pr by temperature [°C]. */
const table: readonly [celsius: number, viscosity: number, kinematic: number, prandtl: number, conductivity: number][] =
  [
    [20, 1.825, 1.516, 0.7309, 0.02514],
    [25, 1.849, 1.562, 0.7296, 0.02551],
    [40, 1.918, 1.702, 0.7255, 0.02662],
    [60, 2.008, 1.896, 0.7202, 0.02808],
    [80, 2.096, 2.097, 0.7154, 0.02953],
  ];

function rows([celsius, viscosity, kinematic, prandtl, conductivity]: (typeof table)[number]): Figure[] {
  const temperature = celsius + 273.15;
  const fine = {
    why: 'half a per cent: the correlation is no better',
    source: cengel,
    tier: 'A',
  } as const;
  const rough = {
    why: 'two per cent: correlation and tables differ by as much',
    coarse: 'tables of the conductivity differ by 2 % among themselves',
    source: cengel,
    tier: 'A',
  } as const;
  return [
    {
      what: `viscosity at ${celsius} °C [1e-5 Pa·s]`,
      computed: 1e5 * airViscosity(temperature),
      published: viscosity,
      tolerance: 0.005 * viscosity,
      ...fine,
    },
    {
      what: `kinematic viscosity at ${celsius} °C [1e-5 m²/s]`,
      computed: (1e5 * airViscosity(temperature)) / airDensity(temperature),
      published: kinematic,
      tolerance: 0.005 * kinematic,
      ...fine,
    },
    {
      what: `Prandtl number at ${celsius} °C [1]`,
      computed: airPrandtl(temperature),
      published: prandtl,
      tolerance: 0.03 * prandtl,
      ...rough,
      why: 'three per cent, since the conductivity is in it',
    },
    {
      what: `conductivity at ${celsius} °C [W/(m·K)]`,
      computed: airConductivity(temperature),
      published: conductivity,
      tolerance: 0.03 * conductivity,
      ...rough,
    },
  ];
}

const at300: readonly [what: string, computed: number, published: number, tolerance: number][] = [
  ['viscosity at 300 K [1e-7 Pa·s]', 1e7 * airViscosity(300), 185.3, 0.05],
  ['conductivity at 300 K [mW/(m·K)]', 1e3 * airConductivity(300), 26.11, 0.006],
  ['specific heat at 300 K [J/(kg·K)]', airHeatCapacity(300), 1006.3, 0.06],
  ['Prandtl number at 300 K [1]', airPrandtl(300), 0.7144, 0.0001],
];

export const topic: Topic = {
  title: 'Air',
  field: 'thermal',
  figures: [
    ...table.flatMap(rows),
    ...at300.map(([what, computed, published, tolerance]): Figure => {
      return { what, computed, published, tolerance, why: 'last digit', source: printed, tier: 'C' };
    }),
    {
      what: 'specific heat at 80 °C [J/(kg·K)]',
      computed: airHeatCapacity(353.15),
      published: 1008,
      tolerance: 2,
      why: 'table and correlation differ in the last digit',
      source: cengel,
      tier: 'A',
    },
    {
      what: 'viscosity at 400 K [1e-7 Pa·s]',
      computed: 1e7 * airViscosity(400),
      published: 230.1,
      tolerance: 1,
      why: 'two tables differ by half a per cent',
      source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table A.4',
      tier: 'A',
    },
    {
      what: 'air to carry 400 W away at 34 °F of warming, counted at 21 °C [CFM]',
      computed: airFlowFor(400, 34 / 1.8, 294.15) / cubicFootPerMinute,
      published: 37.17,
      tolerance: 0.1,
      why: 'density and specific heat of the example are rounded to 0.2 %',
      source: 'enclosure cooling example in SI form, industrialmonitordirect.com',
      tier: 'B',
    },
    {
      what: 'air to carry 1 W away at 1 K, rule Q = 0.05·P/ΔT [m³/min]',
      computed: 60 * airFlowFor(1, 1, 294.15),
      published: 0.05,
      tolerance: 0.0005,
      why: 'rule of thumb, printed as 0.05',
      coarse: 'a rule with one digit',
      source: 'fan selection notes, ebonda.com',
      tier: 'B',
    },
    {
      what: 'warming of 8.86 CFM by 202 W [K]',
      computed: 202 / airHeatCapacityRate(8.86 * cubicFootPerMinute, 294.15),
      published: 40,
      tolerance: 0.06,
      why: 'three digits of the flow',
      source: 'energy balance with 1.2 kg/m³ and 1006 J/(kg·K), worked out independently',
      tier: 'C',
    },
  ],
  unchecked: ['properties of moist air and of air far above sea level'],
};
