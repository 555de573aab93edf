import { betaBetween, betaResistance, betaTemperature } from '../../src/physics/sensing/ntc-beta.ts';
import { dividerHeat, dividerResistance } from '../../src/physics/sensing/ntc-divider.ts';
import { selfHeating } from '../../src/physics/sensing/self-heating.ts';
import { steinhartHartResistance, steinhartHartTemperature } from '../../src/physics/sensing/steinhart-hart.ts';
import { fitSteinhartHart, steinhartHartThrough } from '../../src/physics/sensing/steinhart-hart-fit.ts';
import { materialType1, moduleThermistor } from '../tables/thermistor.ts';
import type { Figure, Topic } from '../topic.ts';

const calculator =
  'points of a laboratory thermistor calculator (25 kΩ, 10 kΩ, 4 kΩ at 5, 25, 45 °C), coefficients as widely reprinted';
const curves = 'Amphenol Thermometrics, Sensor Temperature Resistance Curves, Rev. C, 2014, material type 1';
const lookUp = 'Measurement Specialties, HTM25X0LF data sheet HPC169 Rev. 0, 2009, temperature look-up table';

const pointsOf = (ohms: readonly number[]) =>
  ohms.map((resistance, i) => ({ celsius: 5 * i - 20, temperature: 5 * i + 253.15, resistance }));
const type1 = pointsOf(materialType1.map((ratio) => 1e4 * ratio));
const ofModule = pointsOf(moduleThermistor);
const at = (points: typeof type1, celsius: number) => points.find((point) => point.celsius === celsius)!;

const throughThree = steinhartHartThrough(
  { resistance: 25_000, temperature: 278.15 },
  { resistance: 10_000, temperature: 298.15 },
  { resistance: 4000, temperature: 318.15 },
)!;
const type1Through = steinhartHartThrough(at(type1, 0), at(type1, 50), at(type1, 100))!;
const type1Fit = fitSteinhartHart(type1.filter(({ celsius }) => celsius <= 100))!;
const moduleFit = fitSteinhartHart(ofModule)!;

export const topic: Topic = {
  title: 'Thermistors',
  field: 'sensing',
  figures: [...threePointFigures(), ...curveFigures(), ...betaFigures(), ...dividerFigures()],
  unchecked: ['dissipation constants of mounted thermistors: data sheets state them in air only'],
};

function threePointFigures(): Figure[] {
  const coefficients = [
    ['A', throughThree.a, 2.108508173e-3],
    ['B', throughThree.b, 0.7979204727e-4],
    ['C', throughThree.c, 6.535076315e-7],
  ] as const;
  return [
    ...coefficients.map(
      ([letter, computed, published]): Figure => ({
        what: `Steinhart–Hart ${letter} through three points [1/K]`,
        computed,
        published,
        tolerance: 6e-10 * published,
        why: 'ten digits',
        source: calculator,
        tier: 'B',
      }),
    ),
    {
      what: 'those coefficients at 10 kΩ [°C]',
      computed: steinhartHartTemperature(throughThree, 10_000) - 273.15,
      published: 25,
      tolerance: 1e-8,
      why: 'one of the three points',
      source: calculator,
      tier: 'B',
    },
    {
      what: 'those coefficients at 5312 Ω [°C]',
      computed: steinhartHartTemperature(throughThree, 5312) - 273.15,
      published: 38.824708,
      tolerance: 1e-6,
      why: 'eight digits',
      source: 'Steinhart–Hart equation evaluated by an independent program',
      tier: 'C',
    },
    {
      what: 'those coefficients at 45 °C [Ω]',
      computed: steinhartHartResistance(throughThree, 318.15),
      published: 4000,
      tolerance: 1e-4,
      why: 'one of the three points',
      source: calculator,
      tier: 'B',
    },
    {
      what: 'coefficients without the cubic term at 50 °C [Ω]',
      computed: steinhartHartResistance({ a: 1 / 298.15 - Math.log(1e4) / 3950, b: 1 / 3950, c: 0 }, 323.15),
      published: 3588.2,
      tolerance: 0.1,
      why: 'five digits',
      source: '10 kΩ·exp(3950 K·(1/323.15 K − 1/298.15 K)), closed form',
      tier: 'C',
    },
  ];
}

/** Coefficients through 0, 50 and 100 °C give back the rest of a printed curve. */
function curveFigures(): Figure[] {
  const others = type1.filter(({ celsius }) => celsius !== 0 && celsius !== 50 && celsius !== 100);
  const warm = ofModule.filter(({ celsius }) => celsius >= 10 || celsius <= -10);
  return [
    ...others.map(
      ({ celsius, resistance }): Figure => ({
        what: `curve through 0, 50 and 100 °C at ${celsius} °C: temperature of ${resistance / 1e4} times R25 [°C]`,
        computed: steinhartHartTemperature(type1Through, resistance) - 273.15,
        published: celsius,
        tolerance: 0.02,
        why: 'ratio printed to four digits',
        source: curves,
        tier: 'B',
      }),
    ),
    ...others.map(
      ({ celsius, resistance }): Figure => ({
        what: `curve through 0, 50 and 100 °C at ${celsius} °C: resistance over R25 [1]`,
        computed: steinhartHartResistance(type1Through, celsius + 273.15) / 1e4,
        published: resistance / 1e4,
        tolerance: (12e-4 * resistance) / 1e4,
        why: 'ratio printed to four digits, and what a cubic leaves 20 K outside its points',
        source: curves,
        tier: 'B',
      }),
    ),
    ...warm.map(
      ({ celsius, resistance }): Figure => ({
        what: `least-squares curve of a humidity module's thermistor at ${resistance} Ω [°C]`,
        computed: steinhartHartTemperature(moduleFit, resistance) - 273.15,
        published: celsius,
        tolerance: 0.07,
        why: 'largest residual of the printed table about any such curve',
        source: lookUp,
        tier: 'B',
      }),
    ),
    ...(
      [
        ['A', type1Fit.a, 0.0011314617162414171],
        ['B', type1Fit.b, 0.00023371434647290922],
        ['C', type1Fit.c, 8.955469292590442e-8],
        ['root mean square', type1Fit.residual, 0.003513368929441863],
      ] as const
    ).map(
      ([name, computed, published]): Figure => ({
        what: `least-squares curve from −20 to 100 °C, ${name} [1/K; K]`,
        computed,
        published,
        tolerance: 1e-6 * published,
        why: 'double precision of both',
        source: 'the same points by an independent least-squares program (NumPy lstsq)',
        tier: 'C',
      }),
    ),
  ];
}

function betaFigures(): Figure[] {
  const stated = [
    [0, 50, 3892],
    [0, 70, 3917],
    [25, 50, 3937],
    [25, 85, 3977],
    [25, 100, 3992],
    [25, 125, 4013],
  ] as const;
  const calculated = [
    [0, 33.62, 0.005],
    [50, 3.59, 0.005],
    [85, 1.09, 0.005],
  ] as const;
  return [
    ...stated.map(
      ([low, high, published]): Figure => ({
        what: `β between ${low} °C and ${high} °C [K]`,
        computed: betaBetween(at(type1, low).resistance, low + 273.15, at(type1, high).resistance, high + 273.15),
        published,
        tolerance: 1.5,
        why: 'ratios printed to four digits, β to 1 K',
        source: curves,
        tier: 'B',
      }),
    ),
    {
      what: "temperature of 0.1070 times R25 by that part's β(25/85) [°C]",
      computed: betaTemperature(1, 298.15, 3977, 0.107) - 273.15,
      published: 85,
      tolerance: 0.03,
      why: 'ratio printed to four digits',
      source: curves,
      tier: 'B',
    },
    {
      what: "temperature of 1452 Ω by the module thermistor's β(25/85) of 3434.2 K [°C]",
      computed: betaTemperature(10_000, 298.15, 3434.2, 1452) - 273.15,
      published: 85,
      tolerance: 0.001,
      why: 'β to five digits',
      source: lookUp,
      tier: 'B',
    },
    ...calculated.map(
      ([celsius, published, tolerance]): Figure => ({
        what: `10 kΩ at 25 °C with β = 3950 K, at ${celsius} °C [kΩ]`,
        computed: betaResistance(10, 298.15, 3950, celsius + 273.15),
        published,
        tolerance,
        why: 'printed to 0.01 kΩ',
        source: 'FM Workbench, NTC Thermistor Calculator, example values for 10 kΩ, B 3950',
        tier: 'C',
      }),
    ),
  ];
}

function dividerFigures(): Figure[] {
  const example = { source: 'closed form, worked by hand', tier: 'C' } as const;
  return [
    {
      what: 'thermistor to ground, 10 kΩ to the reference, code 1000 of 4096 [Ω]',
      computed: dividerResistance(1000, 4096, 10_000, 'ground')!,
      published: 3229.974,
      tolerance: 0.0005,
      why: '10 kΩ·1000/3096 to seven digits',
      ...example,
    },
    {
      what: 'thermistor to the supply, 10 kΩ to ground, code 1000 of 4096 [Ω]',
      computed: dividerResistance(1000, 4096, 10_000, 'supply')!,
      published: 30_960,
      tolerance: 1e-6,
      why: '10 kΩ·3096/1000',
      ...example,
    },
    {
      what: 'its temperature with β = 3435 K [°C]',
      computed: betaTemperature(10_000, 298.15, 3435, dividerResistance(1000, 4096, 10_000, 'ground')!) - 273.15,
      published: 57.4266,
      tolerance: 1e-4,
      why: 'six digits',
      source: 'β equation evaluated by an independent program',
      tier: 'C',
    },
    {
      what: 'power in 10 kΩ with 10 kΩ at 3.3 V [mW]',
      computed: 1e3 * dividerHeat(3.3, 10_000, 10_000),
      published: 0.27225,
      tolerance: 1e-9,
      why: '1.65² over 10',
      ...example,
    },
    {
      what: 'power in 5 kΩ with 10 kΩ at 3 V [mW]',
      computed: 1e3 * dividerHeat(3, 5000, 10_000),
      published: 0.2,
      tolerance: 1e-9,
      why: '1 V across 5 kΩ',
      ...example,
    },
    {
      what: 'self-heating of 0.27225 mW at 1.5 mW/K [K]',
      computed: selfHeating(0.27225e-3, 1.5e-3),
      published: 0.1815,
      tolerance: 1e-9,
      why: '0.27225/1.5',
      ...example,
    },
    {
      what: 'self-heating at the rated 60 mW of a bead with 1.5 mW/K [K]',
      computed: selfHeating(0.06, 1.5e-3),
      published: 40,
      tolerance: 1e-9,
      why: '60/1.5',
      source: 'EPCOS, B57861 data sheet, 2006: maximum power and dissipation factor',
      tier: 'C',
    },
  ];
}
