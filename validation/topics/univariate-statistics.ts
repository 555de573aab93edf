import { autocorrelation } from '../../src/metrology/autocorrelation.ts';
import { chanceOfIndependence, firstOrderTime, vonNeumannRatio } from '../../src/metrology/neighbours.ts';
import { scatterOf } from '../../src/metrology/scatter.ts';
import { meanOfSeries } from '../../src/metrology/series.ts';
import { weightedMean } from '../../src/metrology/weighted-mean.ts';
import { univariate } from '../tables/univariate.ts';
import type { Figure, Topic } from '../topic.ts';

const pairs = (first: number, low: number, high: number) => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

const closedForm = { source: 'closed form, by an independent program', tier: 'C' } as const;

/** Name, data, certified mean, standard deviation and lag-1 autocorrelation; relative tolerance of the last two. */
const certified: readonly (readonly [string, ArrayLike<number>, number, number, number, number])[] = [
  ['Lew', univariate.Lew, -177.435, 277.332168044316, -0.307304800605679, 1e-12],
  ['Lottery', univariate.Lottery, 518.95871559633, 291.699727470969, -0.120948622967393, 1e-12],
  ['Mavro', univariate.Mavro, 2.001856, 0.000429123454003053, 0.937989183438248, 1e-11],
  ['Michelso', univariate.Michelso, 299.8524, 0.0790105478190518, 0.535199668621283, 1e-11],
  ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, -0.5, 1e-14],
  ['NumAcc2', pairs(1.2, 1.1, 1.3), 1.2, 0.1, -0.999, 1e-12],
  ['NumAcc3', pairs(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, -0.999, 1e-9],
  ['NumAcc4', pairs(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, -0.999, 1e-8],
];

export const topic: Topic = {
  title: 'Mean, scatter and autocorrelation',
  field: 'metrology',
  figures: [...certified.flatMap(certifiedFigures), ...neighbourFigures(), ...weightedFigures()],
  traps: [
    {
      what: 'NumAcc4: variance by Σx² − n·x̄² in doubles',
      computed: scatterOf(certified[7][1]).variance,
      published: -2,
      tolerance: 0.5,
      why: 'half of the last printed digit',
      source: 'the textbook formula, worked in doubles',
      reason: 'two numbers of 1e17 cancel; a variance is never negative',
    },
    {
      what: 'NumAcc3: variance by Σx² − n·x̄² in doubles',
      computed: scatterOf(certified[6][1]).variance,
      published: 0.0115,
      tolerance: 0.00005,
      why: 'half of the last printed digit',
      source: 'the textbook formula, worked in doubles',
      reason: 'two numbers of 1e15 cancel; the certified variance is 0.01',
    },
  ],
};

function certifiedFigures([name, values, mean, sd, lag1, relative]: (typeof certified)[number]): Figure[] {
  const certificate = {
    source: `NIST Statistical Reference Datasets, univariate summary statistics, ${name}, certified values`,
    tier: 'A',
  } as const;
  const why = 'the last digits are lost when the decimal data become binary numbers, before any arithmetic';
  const series = meanOfSeries(values, null);
  const scatter = scatterOf(values);
  const figure = (what: string, computed: number, published: number, share: number): Figure => ({
    what: `${name}: ${what}`,
    computed,
    published,
    tolerance: share * Math.abs(published),
    why: share > 1e-11 ? why : 'certified digits',
    ...certificate,
  });
  return [
    figure('mean', scatter.mean, mean, 1e-14),
    figure('mean as of a series of readings', series.mean, mean, 1e-14),
    figure('standard deviation', Math.sqrt(scatter.variance), sd, relative),
    figure('standard deviation as of a series of readings', series.sd, sd, relative),
    figure('autocorrelation at lag 1', autocorrelation(values, 1), lag1, relative),
  ];
}

function neighbourFigures(): Figure[] {
  const ratios = [
    ['Lew', univariate.Lew, 2.60964],
    ['Lottery', univariate.Lottery, 2.22408],
    ['Mavro', univariate.Mavro, 0.0908769],
    ['Michelso', univariate.Michelso, 0.92909],
  ] as const;
  const times = [
    [100, 0.5, 33.333, 33.784],
    [1000, 0.9, 52.632, 53.135],
    [200, 0.3, 107.692, 108.049],
  ] as const;
  const michelso = univariate.Michelso;
  const worth = michelso.length / firstOrderTime(autocorrelation(michelso, 1));
  return [
    ...ratios.map(
      ([name, values, published]): Figure => ({
        what: `von Neumann ratio of ${name} [1]`,
        computed: vonNeumannRatio(values),
        published,
        tolerance: 5e-6 * published + 5e-7,
        why: 'six digits',
        ...closedForm,
      }),
    ),
    {
      what: 'chance of the von Neumann ratio of four readings 1, 2, 3, 5 if they were independent [1]',
      computed: chanceOfIndependence([1, 2, 3, 5]),
      published: 0.03596,
      tolerance: 5e-6,
      why: 'by hand: steps 1, 1, 4, squares about the mean 8.75, ratio 0.685714, z = −1.314286/√(8/15) = −1.79966, Φ = 0.03596',
      source: 'closed form, worked by hand',
      tier: 'C',
    },
    ...times.flatMap(([n, phi, endless, exact]): Figure[] => [
      {
        what: `independent readings that ${n} are worth with φ = ${phi}, endless series`,
        computed: n / firstOrderTime(phi),
        published: endless,
        tolerance: 0.0005,
        why: 'printed to 0.001',
        source: 'closed form n·(1 − φ)/(1 + φ), by an independent program',
        tier: 'C',
      },
      {
        what: `independent readings that ${n} are worth with φ = ${phi}, exactly`,
        computed: n / firstOrderTime(phi, n),
        published: exact,
        tolerance: 0.0005,
        why: 'printed to 0.001',
        source: 'n/[1 + 2·Σ(1 − k/n)·φᵏ], by an independent program',
        tier: 'C',
      },
    ]),
    {
      what: 'independent readings that the 100 of Michelso are worth by their certified lag-1 autocorrelation',
      computed: worth,
      published: 30.2762,
      tolerance: 5e-5,
      why: 'six digits',
      ...closedForm,
    },
    {
      what: 'standard uncertainty of the mean of Michelso with it [1000 km/s]',
      computed: Math.sqrt(scatterOf(michelso).variance / worth),
      published: 0.0143593,
      tolerance: 5e-8,
      why: 'six digits',
      ...closedForm,
    },
  ];
}

function weightedFigures(): Figure[] {
  const { mean, u, chiSquare, birgeRatio, uAgreed } = weightedMean([10.02, 9.98, 10.05], [0.02, 0.01, 0.04]);
  const figure = (what: string, computed: number, published: number, tolerance: number): Figure => ({
    what: `10.02(2), 9.98(1), 10.05(4): ${what}`,
    computed,
    published,
    tolerance,
    why: 'printed digits',
    ...closedForm,
  });
  return [
    figure('weighted mean', mean, 9.990952, 5e-7),
    figure('standard uncertainty', u, 0.008729, 5e-7),
    figure('chi-square', chiSquare, 5.488, 5e-4),
    figure('Birge ratio', birgeRatio!, 1.6565, 5e-5),
    figure('standard uncertainty times the Birge ratio', uAgreed, 0.008729 * 1.6565, 2e-6),
  ];
}
