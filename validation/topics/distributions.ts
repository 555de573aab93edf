import { quantile } from '../../src/metrology/distribution.ts';
import { exampleModel, normal } from '../../src/metrology/example.test-data.ts';
import { monteCarlo } from '../../src/metrology/monte-carlo.ts';
import type { KindName } from '../../src/quantity/kind.ts';
import { moments } from '../../src/quantity/moments.ts';
import { readQuantity } from '../../src/quantity/read.ts';
import { type Spread, standardUncertainty } from '../../src/quantity/spread.ts';
import type { Figure, Topic, Trap } from '../topic.ts';

const seed = 20_261_125;
const unit = { low: -1, high: 1 };

/** Two-sided Student factors: degrees of freedom, then the factors for 68.27 %, 95 %, 95.45 % and 99 %. */
const table = [
  [1, 1.84, 12.71, 13.97, 63.66],
  [2, 1.32, 4.3, 4.53, 9.92],
  [3, 1.2, 3.18, 3.31, 5.84],
  [4, 1.14, 2.78, 2.87, 4.6],
  [5, 1.11, 2.57, 2.65, 4.03],
  [8, 1.07, 2.31, 2.37, 3.36],
  [10, 1.05, 2.23, 2.28, 3.17],
  [16, 1.03, 2.12, 2.17, 2.92],
  [20, 1.03, 2.09, 2.13, 2.85],
  [50, 1.01, 2.01, 2.05, 2.68],
] as const;
const coverages = [0.6827, 0.95, 0.9545, 0.99];

const studentFactors = table.flatMap(([degreesOfFreedom, ...factors]) =>
  factors.map(
    (published, k): Figure => ({
      what: `t for ${100 * coverages[k]} % and ${degreesOfFreedom} degrees of freedom [1]`,
      computed: quantile({ shape: 't', u: 1, degreesOfFreedom }, 0, (1 + coverages[k]) / 2),
      published,
      tolerance: 0.0051,
      why: 'half the last printed digit',
      source: `JCGM 100:2008 (GUM), table G.2${degreesOfFreedom === 16 && k > 0 ? '' : ', from memory'}`,
      tier: 'A',
    }),
  ),
);

const byHand = { why: 'five digits', tier: 'C' as const };

/** u of a half width of 1, and how far 95 % reaches, in units of u. */
const shapes: readonly [string, Spread, number, number, string][] = [
  ['rectangular', { shape: 'rectangular', ...unit }, 0.57735, 1.64545, '1/√3; 0.95·√3'],
  ['triangular', { shape: 'triangular', ...unit }, 0.40825, 1.90177, '1/√6; √6·(1 − √0.05)'],
  ['U-shaped', { shape: 'u-shaped', ...unit }, Math.SQRT1_2, 1.40985, '1/√2; √2·sin(0.475π)'],
  [
    'trapezoid, flat to a half',
    { shape: 'trapezoidal', ...unit, flat: 0.5 },
    0.45644,
    1.76663,
    '√(1.25/6); (1 − √0.0375)·√4.8',
  ],
];
const factors = shapes.flatMap(([name, spread, u, reach, working]): Figure[] => [
  {
    what: `${name}, standard uncertainty of a half width of 1 [1]`,
    computed: standardUncertainty(spread, 0),
    published: u,
    tolerance: 6e-6,
    ...byHand,
    source: `JCGM 101:2008, 6.4, by hand: ${working}`,
  },
  {
    what: `${name}, coverage factor for 95 % [1]`,
    computed: quantile(spread, 0, 0.975) / standardUncertainty(spread, 0),
    published: reach,
    tolerance: 6e-6,
    ...byHand,
    source: `JCGM 101:2008, 6.4, by hand: ${working}`,
  },
]);

// ——— sums
const run = (
  inputs: Record<string, readonly [number, Spread | null]>,
  output: (x: Float64Array) => number,
  samples = 2 ** 16,
) => {
  const model = exampleModel({ inputs, outputs: { y: output } });
  return { model, sample: monteCarlo(model, { samples, seed }).outputs.get('y')! };
};

/** u and the end of the 95 % interval of a sum of four with standard uncertainty 1 each. */
const sumOfFour = (shape: Spread) =>
  run(Object.fromEntries([1, 2, 3, 4].map((k) => [`x${k}`, [0, shape]])), (x) => x[0] + x[1] + x[2] + x[3]).sample;
const rectangles = sumOfFour({ shape: 'rectangular', low: -Math.sqrt(3), high: Math.sqrt(3) });

/** JCGM 101, 9.5: the length of an end gauge over 50 mm [nm]. */
const standard = 50_000_623;
const gauge = run(
  {
    standard: [standard, { shape: 't', u: 25, degreesOfFreedom: 18 }],
    difference: [215, { shape: 't', u: 6, degreesOfFreedom: 24 }],
    random: [0, { shape: 't', u: 4, degreesOfFreedom: 5 }],
    systematic: [0, { shape: 't', u: 7, degreesOfFreedom: 8 }],
    expansion: [11.5e-6, { shape: 'rectangular', low: 9.5e-6, high: 13.5e-6 }],
    mean: [-0.1, normal(0.2)],
    cycle: [0, { shape: 'u-shaped', low: -0.5, high: 0.5 }],
    'expansion difference': [0, { shape: 'curvilinear', low: -1e-6, high: 1e-6, by: 1e-7 }],
    'temperature difference': [0, { shape: 'curvilinear', low: -0.05, high: 0.05, by: 0.025 }],
  },
  ([s, d, r, y, a, theta, cycle, da, dtheta]) => s + d + r + y - s * (da * (theta + cycle) + a * dtheta) - 50_000_000,
  2 ** 17,
).sample;
const jcgm101 = { tier: 'A' as const, why: 'half the last printed digit' };
const sums: Figure[] = [
  {
    what: 'sum of four rectangular inputs, standard uncertainty [1]',
    computed: rectangles.u,
    published: 2,
    tolerance: 0.005,
    why: 'three digits',
    source: 'JCGM 101:2008, 9.2.3',
    tier: 'A',
  },
  {
    what: 'sum of four rectangular inputs, end of the 95 % interval [1]',
    computed: rectangles.interval().high,
    published: 3.88,
    tolerance: 0.02,
    why: 'printed digits, and what 65 536 draws leave uncertain',
    source: 'JCGM 101:2008, 9.2.3',
    tier: 'A',
  },
  {
    what: 'end gauge with t, U-shaped and curvilinear inputs, length over 50 mm [nm]',
    computed: gauge.mean,
    published: 838,
    tolerance: 0.5,
    ...jcgm101,
    source: 'JCGM 101:2008, 9.5',
  },
  {
    what: 'end gauge with t, U-shaped and curvilinear inputs, standard uncertainty [nm]',
    computed: gauge.u,
    published: 36,
    tolerance: 0.5,
    ...jcgm101,
    source: 'JCGM 101:2008, 9.5',
    coarse: 'two digits',
  },
  {
    what: 'end gauge with t, U-shaped and curvilinear inputs, standard uncertainty to four digits [nm]',
    computed: gauge.u,
    published: 35.81,
    tolerance: 0.1,
    why: 'what 131 072 draws leave uncertain',
    source:
      'inputs of JCGM 101:2008, 9.5, variance by hand: 25²·18/16 + 6²·24/22 + 4²·5/3 + 7²·8/6 + L²·(3.344e-13·0.175 + 1.3358e-10·9.028e-4) nm²',
    tier: 'C',
  },
  {
    what: 'temperature difference known to ± 0.05 K, itself to ± 0.025 K, standard uncertainty [K]',
    computed: standardUncertainty({ shape: 'curvilinear', low: -0.05, high: 0.05, by: 0.025 }, 0),
    published: 0.030046,
    tolerance: 6e-7,
    why: 'five digits',
    source: 'JCGM 101:2008, 6.4.3.3, by hand: √(0.1²/12 + 0.025²/9)',
    tier: 'C',
  },
];

// ——— as people write them
const written = (text: string, kind: KindName = 'length') => {
  const read = readQuantity(text, kind);
  if (!read.ok || !read.quantity.spread) throw new Error(text);
  return standardUncertainty(read.quantity.spread, read.quantity.value);
};
const texts: Figure[] = [
  {
    what: 'standard resistor, "10.000 742 Ω ± 129 µΩ at 99 %", standard uncertainty [µΩ]',
    computed: 1e6 * written('10.000742 ohm ± 129 uohm (99 %)', 'resistance'),
    published: 50,
    tolerance: 0.5,
    why: 'half the last printed digit',
    source: 'JCGM 100:2008 (GUM), 4.3.4, from memory',
    tier: 'A',
    coarse: 'two digits',
  },
  {
    what: 'length with even odds of 10.07 mm to 10.15 mm, standard uncertainty over the half width [1]',
    computed: written('10.11 mm ± 0.04 mm (50 %)') / 4e-5,
    published: 1.48,
    tolerance: 0.005,
    why: 'half the last printed digit',
    source: 'JCGM 100:2008 (GUM), 4.3.5, from memory',
    tier: 'A',
  },
  {
    what: 'copper, certainly between 16.12e-6 and 16.92e-6 1/K, standard uncertainty [1e-6/K]',
    computed: 1e6 * written('16.52e-6 1/K ± 0.4e-6 1/K', 'temperature-coefficient'),
    published: 0.23,
    tolerance: 0.005,
    why: 'half the last printed digit',
    source: 'JCGM 100:2008 (GUM), 4.3.7',
    tier: 'A',
    coarse: 'two digits',
  },
  {
    what: 'comparator, "± 0.02 µm, three standard deviations, 8 degrees of freedom", standard uncertainty [nm]',
    computed: 1e9 * written('0 um ± 0.02 um (k=3, 8 dof)'),
    published: 6.7,
    tolerance: 0.05,
    why: 'half the last printed digit',
    source: 'JCGM 100:2008 (GUM), H.1.3.4',
    tier: 'A',
    coarse: 'two digits',
  },
  {
    what: 'log-normal of sigma 0.5 about 1, mean [1]',
    computed: moments({ shape: 'log-normal', sigma: 0.5 }, 1).mean!,
    published: 1.133148,
    tolerance: 6e-7,
    why: 'seven digits',
    source: 'by hand: exp(0.125)',
    tier: 'C',
  },
];

const left: Trap[] = [
  {
    what: 'end gauge, standard uncertainty to first order [nm]',
    computed: gauge.u,
    published: 32,
    tolerance: 1,
    why: 'a quarter of the difference',
    source: 'JCGM 101:2008, 9.5',
    reason: 'the product of two inputs whose best values are zero has no first-order term',
  },
];

export const topic: Topic = {
  title: 'Distributions',
  field: 'metrology',
  figures: [...studentFactors, ...factors, ...sums, ...texts],
  traps: left,
};
