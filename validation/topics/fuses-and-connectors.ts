import {
  connectorFactor,
  currentByCurve,
  selfHeatingCurrent,
} from '../../src/physics/electrical/connector-derating.ts';
import { sourceResistance, voltageAtPower } from '../../src/physics/electrical/constant-power-droop.ts';
import { fuseRating, fuseSteadyCurrent, pulseShare } from '../../src/physics/electrical/fuse-rating.ts';
import {
  fastFusingCurrent,
  fusingCoefficients,
  slowFusingCurrent,
  slowFusingDiameter,
} from '../../src/physics/electrical/fusing-current.ts';
import { wireGaugeDiameter } from '../../src/quantity/wire-gauge.ts';
import type { Figure, Topic } from '../topic.ts';

const inch = 0.0254;
const mil = 25.4e-6;
const lastDigit = 'half of the last printed digit';
const ness = 'Ness Engineering, technical data, fuse equations, table of diameters';
const fuseology = 'Littelfuse, Fuseology selection guide';

const diameters: [metal: keyof typeof fusingCoefficients, current: number, inches: number][] = [
  ['copper', 40, 0.0248],
  ['copper', 60, 0.0325],
  ['copper', 100, 0.0457],
  ['copper', 140, 0.0572],
  ['copper', 200, 0.0725],
  ['copper', 300, 0.095],
  ['aluminium', 100, 0.0558],
  ['aluminium', 300, 0.1161],
  ['platinum', 100, 0.072],
  ['platinum', 300, 0.1498],
  ['iron', 10, 0.0216],
  ['iron', 15, 0.0283],
  ['tin', 10, 0.0334],
  ['lead', 10, 0.0375],
];

/** Fusing currents of copper wire as they stand in wire tables [A]. */
const gauges: [gauge: number, amperes: number][] = [
  [10, 333],
  [14, 166],
  [18, 83],
];

const pcbInsider = 'pcbinsider.com, fusing current of one-ounce traces after one second';
const traces: [mils: number, amperes: number, coarse?: string][] = [
  [20, 5.1, 'printed with two digits'],
  [30, 7.7],
  [50, 12.8],
  [100, 25.7],
];

const idc =
  'connector data sheet, insulation-displacement terminal 454302 with AWG 22, limit 150 °C, IEC 60512-5-2 test 5b';
const base: [celsius: number, base: number, derated: number][] = [
  [20, 21.9, 17.52],
  [30, 21.1, 16.88],
  [50, 19.3, 15.44],
  [70, 17.4, 13.92],
  [90, 15.1, 12.08],
  [110, 12.3, 9.84],
  [130, 8.7, 6.96],
  [140, 6.1, 4.88],
];
const power = 'connector data sheet, power module of 3 contacts, IEC 60512-5-2 test 5b';
const powerModule: [celsius: number, base: number, derated: number][] = [
  [20, 15.8, 12.64],
  [60, 13, 10.4],
  [100, 8.2, 6.56],
  [120, 3.3, 2.64],
];

export const topic: Topic = {
  title: 'Fuses, fusing currents, connectors and sources',
  field: 'electrical',
  figures: [
    ...diameters.map(([metal, current, published]): Figure => {
      const tolerance = 0.55e-4;
      const computed = slowFusingDiameter(current, fusingCoefficients[metal]) / inch;
      return {
        what: `${metal} wire that melts at ${current} A [in]`,
        computed,
        published,
        tolerance,
        why: 'half of the last printed digit; some are cut',
        source: ness,
        tier: 'B',
      };
    }),
    ...gauges.map(([gauge, published]): Figure => {
      return {
        what: `fusing current of copper wire AWG ${gauge} [A]`,
        computed: slowFusingCurrent(wireGaugeDiameter(gauge), fusingCoefficients.copper),
        published,
        tolerance: 0.005 * published,
        why: 'tables differ by half a per cent in how they round the diameter',
        source: 'table of copper wire with fusing currents after Preece, as widely reprinted (from memory)',
        tier: 'B',
      };
    }),
    ...traces.map(([width, published, coarse]): Figure => {
      return {
        what: `current that melts ${width} mil of one-ounce copper in 1 s, from 25 °C [A]`,
        computed: fastFusingCurrent(width * mil * 1.378 * mil, 1, 298.15),
        published,
        tolerance: 0.05,
        why: lastDigit,
        source: pcbInsider,
        tier: 'B',
        ...(coarse && { coarse }),
      };
    }),
    {
      what: 'one-ounce trace of 39.0 mil after 1 s: the current that it is for [A]',
      computed: fastFusingCurrent(39 * mil * 1.378 * mil, 1, 298.15),
      published: 10,
      tolerance: 0.02,
      why: 'half of the last printed digit of the width',
      source: pcbInsider,
      tier: 'B',
    },
    {
      what: 'share of that current after four times the time [1]',
      computed: fastFusingCurrent(1e-8, 4, 298.15) / fastFusingCurrent(1e-8, 1, 298.15),
      published: 0.5,
      tolerance: 1e-12,
      why: 'exact: I²·t is constant',
      source: 'closed form, no heat leaves',
      tier: 'C',
    },
    {
      what: 'circular mils of a melting current, Onderdonk’s coefficient at 25 °C and 1 s [A]',
      computed: fastFusingCurrent((Math.PI / 4) * mil * mil, 1, 298.15),
      published: 0.1463,
      tolerance: 5e-5,
      why: lastDigit,
      source: 'Onderdonk’s equation, worked out independently (constants from memory)',
      tier: 'C',
    },
    {
      what: 'rating for 1.5 A at 25 °C [A]',
      computed: fuseRating(1.5, 0.75, 1),
      published: 2,
      tolerance: 1e-9,
      why: 'exact',
      source: `${fuseology} (example from memory)`,
      tier: 'B',
    },
    {
      what: 'rating for 1.5 A at 65 °C, re-rated to 80 % [A]',
      computed: fuseRating(1.5, 0.75, 0.8),
      published: 2.5,
      tolerance: 1e-9,
      why: 'exact',
      source: `${fuseology} (example from memory)`,
      tier: 'B',
    },
    {
      what: 'rating for 1.5 A at 70 %, re-rated to 95 % [A]',
      computed: fuseRating(1.5, 0.7, 0.95),
      published: 2.255,
      tolerance: 0.001,
      why: 'last printed digit, cut',
      source: 'TA-I Technology, thin film chip fuse CP04, document TCP-XXOS006H, 2012, page 10',
      tier: 'B',
    },
    {
      what: 'steady current of a fuse of 2.5 A at 65 °C, re-rated to 80 % [A]',
      computed: fuseSteadyCurrent(2.5, 0.75, 0.8),
      published: 1.5,
      tolerance: 1e-9,
      why: 'exact',
      source: `${fuseology} (example from memory)`,
      tier: 'B',
    },
    ...(
      [
        [100, 0.48],
        [1000, 0.38],
        [10_000, 0.29],
        [100_000, 0.22],
      ] as const
    ).map(([pulses, published]): Figure => {
      return {
        what: `share of the melting I²t for ${pulses} pulses [1]`,
        computed: pulseShare(pulses) ?? Number.NaN,
        published,
        tolerance: 1e-12,
        why: 'a table',
        source: `${fuseology}, chart 2`,
        tier: 'B',
      };
    }),
    ...[
      { of: 'insulation-displacement terminal', source: idc, rows: base },
      { of: 'power module', source: power, rows: powerModule },
    ].flatMap(({ of, source, rows }) =>
      rows.map(([celsius, , published]): Figure => {
        const curve = rows.map(([at, current]) => [at + 273.15, current] as const);
        return {
          what: `usable current of the ${of} at ${celsius} °C [A]`,
          computed: connectorFactor * currentByCurve(curve, celsius + 273.15),
          published,
          tolerance: 0.005,
          why: lastDigit,
          source,
          tier: 'B',
        };
      }),
    ),
    ...[50, 90, 110].map((celsius): Figure => {
      const published = base.find(([at]) => at === celsius)![1];
      return {
        what: `base curve at ${celsius} °C from its 70 °C [A]`,
        computed: selfHeatingCurrent(17.4, 343.15, 423.15, celsius + 273.15),
        published,
        tolerance: 0.015 * published,
        why: 'a measured curve follows I²R within about one per cent',
        source: idc,
        tier: 'B',
        coarse: 'a measured curve, not a law',
      };
    }),
    {
      what: 'current at a quarter of the rise [share of the current at the full rise]',
      computed: selfHeatingCurrent(1, 293.15, 393.15, 368.15),
      published: 0.5,
      tolerance: 1e-12,
      why: 'exact',
      source: 'closed form: loss grows with the square of the current',
      tier: 'C',
    },
    {
      what: 'far end of 20 V behind 0.1 Ω at 97.5 W [V]',
      computed: voltageAtPower(20, 97.5, 0.1) ?? Number.NaN,
      published: 19.5,
      tolerance: 1e-9,
      why: 'exact: 5 A times 19.5 V is 97.5 W, and 5 A times 0.1 Ω is 0.5 V',
      source: "Ohm's law worked out by hand",
      tier: 'C',
    },
    {
      what: 'far end of 20 V behind 0.1 Ω at the most power that can be had, 1 kW [V]',
      computed: voltageAtPower(20, 1000, 0.1) ?? Number.NaN,
      published: 10,
      tolerance: 1e-9,
      why: 'exact: half of the voltage at no load',
      source: 'maximum power theorem',
      tier: 'C',
    },
    {
      what: 'resistance of a source that falls from 5 V to 4.5742 V at 0.5 A [Ω]',
      computed: sourceResistance(5, 4.5742, 0.5),
      published: 0.8516,
      tolerance: 1e-6,
      why: '4 m of AWG 28 at 212.9 mΩ/m',
      source: 'Copper Wire Tables, National Bureau of Standards Handbook 100, 1966, worked out by hand',
      tier: 'C',
    },
  ],
  traps: [
    {
      what: 'aluminium wire that melts at 250 A [in]',
      computed: slowFusingDiameter(250, fusingCoefficients.aluminium) / inch,
      published: 0.1208,
      tolerance: 0.00005,
      why: 'half of the last printed digit',
      source: ness,
      reason: 'two digits are exchanged: between its neighbours 0.0958 and 0.1095 stands 0.1208 for 0.1028',
    },
  ],
  unchecked: ['time-current curves of fuses: they are each part’s own'],
};
