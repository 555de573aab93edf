import { acceleratedInterval, bootstrap, jackknife, percentileInterval } from '../../src/metrology/bootstrap.ts';
import { type QuantileDefinition, quantileOf } from '../../src/metrology/quantile.ts';
import { ratioOfMeans } from '../../src/metrology/ratio.ts';
import { scatterOf } from '../../src/metrology/scatter.ts';
import type { Figure, Topic } from '../topic.ts';

const treated = [94, 197, 16, 38, 99, 141, 23];
const control = [52, 104, 146, 10, 51, 30, 40, 27, 46];
const lsat = [576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594];
const gpa = [3.39, 3.3, 2.81, 3.03, 3.44, 3.07, 3, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96];
const seed = 20;
const draws = 50_000;
const manyDraws = 200_000;

const meanOfFirst = ([sample]: readonly Float64Array[]) => scatterOf(sample).mean;
const correlation = ([rows]: readonly Float64Array[]) => correlationOf([...rows].map((row) => [lsat[row], gpa[row]]));

function correlationOf(points: readonly (readonly number[])[]): number {
  const [x, y] = [scatterOf(points.map(([x]) => x)), scatterOf(points.map(([, y]) => y))];
  const products = points.reduce((sum, point) => sum + (point[0] - x.mean) * (point[1] - y.mean), 0);
  return products / (points.length - 1) / Math.sqrt(x.variance * y.variance);
}

const book = (what: string) => ({ source: `Efron, Tibshirani (1993), ${what}`, tier: 'B' }) as const;
const independent = { source: 'the same data, by an independent program', tier: 'C' } as const;

export const topic: Topic = {
  title: 'Bootstrap and quantiles',
  field: 'metrology',
  figures: [...lawSchool(), ...mice(), ...smallest(), ...patch(), ...quantiles()],
  traps: [
    ['3.55 for 3.44', 4, 3.55],
    ['3.96 for 2.96', 14, 3.96],
  ].map(([what, row, wrong]) => ({
    what: `law school with ${what}: correlation`,
    computed: correlation([Float64Array.from(lsat, (_, i) => i)]),
    published: correlationOf(lsat.map((score, i) => [score, i === row ? (wrong as number) : gpa[i]])),
    tolerance: 0.0005,
    why: 'the book prints three digits',
    source: 'a stored copy of the data with a misprint',
    reason: 'the published correlation is 0.776',
  })),
  unchecked: ['printed BCa ends of the law school data: the book gives them for another number of draws only'],
};

function lawSchool(): Figure[] {
  const rows = lsat.map((_, i) => i);
  const found = bootstrap([rows], correlation, draws, seed);
  const left = jackknife(rows, correlation);
  const [low, high] = percentileInterval(found);
  const [bcaLow, bcaHigh] = acceleratedInterval(found);
  const drawn = `standard error of ${draws} draws`;
  return [
    {
      what: 'law school: correlation',
      computed: found.estimate,
      published: 0.7763745,
      tolerance: 5e-8,
      why: 'printed digits',
      ...book('table 3.1, law school data'),
    },
    {
      what: 'law school: bootstrap standard error',
      computed: found.u,
      published: 0.13342,
      tolerance: 0.0009,
      why: `twice the ${drawn}`,
      ...independent,
    },
    {
      what: 'law school: jackknife standard error',
      computed: left.u,
      published: 0.142519,
      tolerance: 5e-7,
      why: 'six digits',
      ...independent,
    },
    {
      what: 'law school: jackknife bias',
      computed: left.bias,
      published: -0.006474,
      tolerance: 5e-7,
      why: 'four digits',
      ...independent,
    },
    {
      what: 'law school: acceleration',
      computed: found.acceleration,
      published: -0.07567,
      tolerance: 5e-6,
      why: 'four digits',
      ...independent,
    },
    {
      what: 'law school: bias in normal quantiles',
      computed: found.bias,
      published: -0.0935,
      tolerance: 0.018,
      why: `three times the ${drawn}, √(π/2/n) at either side`,
      coarse: 'drawn at random',
      ...independent,
    },
    {
      what: 'law school: 95 % by percentiles, low',
      computed: low,
      published: 0.461,
      tolerance: 0.008,
      why: `three times the ${drawn}`,
      coarse: 'drawn at random',
      ...independent,
    },
    {
      what: 'law school: 95 % by percentiles, high',
      computed: high,
      published: 0.962,
      tolerance: 0.0015,
      why: `the ${drawn}, three digits`,
      ...independent,
    },
    {
      what: 'law school: 95 % by BCa, low',
      computed: bcaLow,
      published: 0.336,
      tolerance: 0.012,
      why: `three times the ${drawn}, the bias's included`,
      coarse: 'drawn at random',
      ...independent,
    },
    {
      what: 'law school: 95 % by BCa, high',
      computed: bcaHigh,
      published: 0.942,
      tolerance: 0.002,
      why: `three times the ${drawn}`,
      ...independent,
    },
  ];
}

function mice(): Figure[] {
  const difference = ([one, other]: readonly Float64Array[]) => scatterOf(one).mean - scatterOf(other).mean;
  const ideal = { source: 'ideal bootstrap, √Σ(x − x̄)²/n, by an independent program', tier: 'C' } as const;
  const why = `twice the standard error of ${manyDraws} draws`;
  return [
    ['treated', bootstrap([treated], meanOfFirst, manyDraws, seed).u, 23.3635, 0.075],
    ['control', bootstrap([control], meanOfFirst, manyDraws, seed).u, 13.3489, 0.043],
    ['difference', bootstrap([treated, control], difference, manyDraws, seed).u, 26.9081, 0.086],
  ].map(([name, computed, published, tolerance]) => ({
    what: `mouse: bootstrap standard error of the ${name}`,
    computed: computed as number,
    published: published as number,
    tolerance: tolerance as number,
    why,
    ...ideal,
  }));
}

function smallest(): Figure[] {
  const found = bootstrap([[1, 2, 4]], meanOfFirst, manyDraws, seed);
  const share = (value: number) => found.replicates.filter((mean) => Math.abs(mean - value) < 1e-9).length / manyDraws;
  const exact = { source: 'all 27 samples written out', tier: 'C' } as const;
  return [
    {
      what: 'means of samples of 1, 2, 4: standard deviation',
      computed: found.u,
      published: 0.720082,
      tolerance: 0.0023,
      why: 'twice the standard error of the draws',
      ...exact,
    },
    {
      what: 'means of samples of 1, 2, 4: how often 7/3',
      computed: share(7 / 3),
      published: 6 / 27,
      tolerance: 0.0028,
      why: 'three standard errors of the draws',
      coarse: 'drawn at random',
      ...exact,
    },
    {
      what: 'means of samples of 1, 2, 4: how often 4',
      computed: share(4),
      published: 1 / 27,
      tolerance: 0.0013,
      why: 'three standard errors of the draws',
      coarse: 'drawn at random',
      ...exact,
    },
  ];
}

function patch(): Figure[] {
  const z = [8406, 2342, 8187, 8459, 4795, 3516, 4796, 10238];
  const y = [-1200, 2601, -2705, 1982, -1290, 351, -638, -2719];
  const ratio = ([rows]: readonly Float64Array[]) =>
    ratioOfMeans(scatterOf(rows.map((row) => z[row])), scatterOf(rows.map((row) => y[row])))!.ratio;
  const rows = z.map((_, i) => i);
  const left = jackknife(rows, ratio);
  return [
    {
      what: 'patch: jackknife bias of the ratio',
      computed: left.bias,
      published: 0.0080025,
      tolerance: 5e-8,
      why: 'five digits',
      ...independent,
    },
    {
      what: 'patch: jackknife standard error of the ratio',
      computed: left.u,
      published: 0.105528,
      tolerance: 5e-7,
      why: 'six digits',
      ...independent,
    },
  ];
}

function quantiles(): Figure[] {
  const five = [15, 20, 35, 40, 50];
  const ten = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  const rows: readonly (readonly [string, readonly number[], number, readonly number[]])[] = [
    ['15, 20, 35, 40, 50', five, 0.25, [20, 20, 15, 16.25, 18.75, 17.5, 20, 18.3333, 18.4375]],
    ['15, 20, 35, 40, 50', five, 0.3, [20, 20, 20, 17.5, 20, 19, 23, 19.6667, 19.75]],
    ['15, 20, 35, 40, 50', five, 0.4, [20, 27.5, 20, 20, 27.5, 26, 29, 27, 27.125]],
    ['15, 20, 35, 40, 50', five, 0.95, [50, 50, 50, 47.5, 50, 50, 48, 50, 50]],
    ['1 to 10', ten, 0.1, [1, 1.5, 1, 1, 1.5, 1.1, 1.9, 1.3667, 1.4]],
    ['1 to 10', ten, 0.25, [3, 3, 2, 2.5, 3, 2.75, 3.25, 2.9167, 2.9375]],
    ['1 to 10', ten, 0.01, [1, 1, 1, 1, 1, 1, 1.09, 1, 1]],
  ];
  return rows.flatMap(([name, values, p, published]) =>
    published.map(
      (value, i): Figure => ({
        what: `quantile ${p} of ${name}, definition ${i + 1}`,
        computed: quantileOf(values, p, (i + 1) as QuantileDefinition),
        published: value,
        tolerance: 5.1e-5,
        why: 'printed to 0.0001',
        source: 'the nine definitions of R. J. Hyndman, Y. Fan, Am. Stat. 50 (1996) 361–365, by an independent program',
        tier: 'C',
      }),
    ),
  );
}
