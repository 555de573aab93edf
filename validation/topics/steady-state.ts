import { mannKendall, theilSen } from '../../src/metrology/mann-kendall.ts';
import { rCritical, rRatio, rStep, rTest } from '../../src/metrology/r-test.ts';
import { marginalError, warmUpOf } from '../../src/metrology/warm-up.ts';
import { randomStream } from '../../src/numeric/random.ts';
import { univariate } from '../tables/univariate.ts';
import type { Figure, Topic } from '../topic.ts';

const independent = { source: 'the same data, by an independent program', tier: 'C' } as const;
const printed = { why: 'printed digits' } as const;
const wells = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11, 17.3, 15.9, 19, 18.3, 20.1, 21.7];
const falling = [10, 7, 5, 4, 3.2, 3, 2.8, 3.1, 2.9, 3, 3.1, 2.9];

export const topic: Topic = {
  title: 'Steady states and trends',
  field: 'metrology',
  figures: [...rFigures(), ...warmUpFigures(), ...trendFigures()],
  traps: [
    {
      what: 'Mann–Kendall variance of 14 readings with one tie',
      computed: mannKendall(wells)!.variance,
      published: (14 * 13 * (14 + 5)) / 18 - 1,
      tolerance: 1e-9,
      why: 'both are exact but for the rounding of doubles',
      source: 'a stored package page that prints n(n − 1)(n + 5)/18',
      reason: 'the variance is n(n − 1)(2n + 5)/18 less the ties',
    },
  ],
  unchecked: [
    'the printed critical values of the R-test (S. Cao, R. R. Rhinehart, J. Process Control 7 (1997) 149–152): not found; simulated ones are used',
  ],
};

function rFigures(): Figure[] {
  const ratios = [1.063636, 0.85375, 0.786201, 0.763697, 0.774592];
  let state = { filtered: 10, aboutFiltered: 0.01, aboutNeighbour: 0.02, last: 10 };
  const steps = [10.2, 9.9, 10.1, 10, 10.1].map((reading, i): Figure => {
    state = rStep(state, reading);
    return {
      what: `R after reading ${i + 1} of 10.2, 9.9, 10.1, 10.0, 10.1`,
      computed: rRatio(state),
      published: ratios[i],
      tolerance: 5.1e-7,
      ...printed,
      ...independent,
    };
  });
  return [
    ...steps,
    {
      what: 'filtered reading at the end',
      computed: state.filtered,
      published: 10.038944,
      tolerance: 5e-7,
      ...printed,
      ...independent,
    },
    {
      what: 'square about it at the end',
      computed: state.aboutFiltered,
      published: 0.011247,
      tolerance: 5e-7,
      ...printed,
      ...independent,
    },
    {
      what: 'square about the neighbour at the end',
      computed: state.aboutNeighbour,
      published: 0.026135,
      tolerance: 5e-7,
      ...printed,
      ...independent,
    },
    ...levelFigures(),
  ];
}

/** How often R passes its critical values at a level, in 20 000 series of 200 independent readings. */
function levelFigures(): Figure[] {
  const random = randomStream(5);
  const found = Array.from({ length: 20_000 }, () => rTest(Array.from({ length: 200 }, () => random.normal()))!.ratio);
  return [
    [rCritical.usual, 0.05, 0.0047],
    [rCritical.rare, 0.01, 0.0022],
  ].map(([critical, published, tolerance]) => ({
    what: `share of level series with R above ${critical}`,
    computed: found.filter((ratio) => ratio > critical).length / found.length,
    published,
    tolerance,
    why: 'three standard errors of 20 000 series',
    coarse: 'drawn at random',
    source: 'quantiles of 200 000 simulated series, by an independent program',
    tier: 'C' as const,
  }));
}

function warmUpFigures(): Figure[] {
  const objective = [0.37352, 0.13773, 0.0422, 0.01246, 0.00188, 0.00152, 0.00204];
  const cut = warmUpOf(falling)!;
  return [
    ...objective.map(
      (published, d): Figure => ({
        what: `MSER with ${d} of twelve readings cut`,
        computed: marginalError(falling.slice(d)),
        published,
        tolerance: 5.01e-6,
        ...printed,
        ...independent,
      }),
    ),
    {
      what: 'MSER: readings to cut',
      computed: cut.cut,
      published: 5,
      tolerance: 0,
      why: 'a whole number',
      ...independent,
    },
    {
      what: 'MSER: mean of the readings kept',
      computed: cut.mean,
      published: 2.971429,
      tolerance: 5e-7,
      ...printed,
      ...independent,
    },
    {
      what: 'MSER-5: readings to cut, each of them five times',
      computed: warmUpOf(
        falling.flatMap((reading) => [reading, reading, reading, reading, reading]),
        5,
      )!.cut,
      published: 25,
      tolerance: 0,
      why: 'a whole number: five batches of five',
      ...independent,
    },
  ];
}

function trendFigures(): Figure[] {
  const { s, variance, z, chance, tau } = mannKendall(wells)!;
  const byHand = { source: 'J. Little, College of the Holy Cross, Mann–Kendall by hand', tier: 'B' } as const;
  const slope = theilSen(wells)!;
  const figure = (
    what: string,
    computed: number,
    published: number,
    tolerance: number,
    proof: Pick<Figure, 'source' | 'tier' | 'coarse'>,
  ): Figure => ({ what, computed, published, tolerance, ...printed, ...proof });
  const mavro = mannKendall(univariate.Mavro)!;
  const michelso = mannKendall(univariate.Michelso)!;
  const rao = {
    source: 'formula of K. H. Hamed, A. R. Rao, J. Hydrology 204 (1998) 182–196, by an independent program',
    tier: 'C',
  } as const;
  return [
    figure('14 readings: S', s, 54, 0, byHand),
    figure('14 readings: variance', variance, 332.667, 5e-4, byHand),
    figure('14 readings: Z', z, 2.9058, 5e-5, byHand),
    figure('14 readings: one-sided p', chance / 2, 0.0018, 5e-5, { ...byHand, coarse: 'two digits' }),
    figure('14 readings: two-sided p', chance, 0.00366272, 5e-9, independent),
    figure('14 readings: τ-b', tau, 0.596694, 5e-7, independent),
    figure('14 readings: Theil–Sen slope', slope.slope, 0.5666667, 5e-8, independent),
    figure('14 readings: slope, 95 % low', slope.low, 0.3231298, 5e-8, independent),
    figure('14 readings: slope, 95 % high', slope.high, 0.8697837, 5e-8, independent),
    figure('Mavro: S', mavro.s, 448, 0, independent),
    figure('Mavro: variance with its ties', mavro.variance, 14125.33333, 5e-5, independent),
    figure('Mavro: Z as if independent', mavro.z, 3.76104189, 5e-8, independent),
    figure('Mavro: inflation of the variance', mavro.inflationOfLags, 4.19078933, 5e-8, rao),
    figure('Mavro: Z, neighbours alike', mavro.z / Math.sqrt(mavro.inflationOfLags), 1.83721616, 5e-8, rao),
    figure('Mavro: τ-b', mavro.tau, 0.37943627, 5e-8, independent),
    figure('Michelso: S', michelso.s, -1265, 0, independent),
    figure('Michelso: inflation of the variance', michelso.inflationOfLags, 1.98068723, 5e-8, rao),
    figure('Michelso: Z, neighbours alike', michelso.z / Math.sqrt(michelso.inflationOfLags), -2.68033184, 5e-8, rao),
  ];
}
