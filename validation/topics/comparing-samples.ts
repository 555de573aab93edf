import { differenceByPooling, differenceByWelch, differenceOfPairs } from '../../src/metrology/mean-difference.ts';
import { rankSum } from '../../src/metrology/rank-sum.ts';
import {
  geometricMean,
  type Ratio,
  ratioByFieller,
  ratioByLogs,
  ratioOfMeans,
  ratioOfPairedMeans,
} from '../../src/metrology/ratio.ts';
import { scatterOf } from '../../src/metrology/scatter.ts';
import { adjustByBenjaminiHochberg, adjustByHolm } from '../../src/metrology/several-tests.ts';
import { studentAbove, studentQuantile } from '../../src/metrology/student-t.ts';
import type { Figure, Topic } from '../topic.ts';

const drug1 = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const drug2 = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
const treated = [94, 197, 16, 38, 99, 141, 23];
const control = [52, 104, 146, 10, 51, 30, 40, 27, 46];
const before = [101.2, 99.8, 100.5, 100.9, 99.6];
const after = [104.1, 105, 103.6, 104.8, 104.4];
const placebo = [9243, 9671, 11792, 13357, 9055, 6290, 12412, 18806];
const oldPatch = [17649, 12013, 19979, 21816, 13850, 9806, 17208, 29044];
const newPatch = [16449, 14614, 17274, 23798, 12560, 10157, 16570, 26325];
const less = (one: readonly number[], other: readonly number[]) => one.map((value, i) => value - other[i]);

const independent = { source: 'the same data, by an independent program', tier: 'C' } as const;
const sleep = { source: 'Student (1908), sleep data; as printed by R for its data set `sleep`', tier: 'B' } as const;
const patch = {
  source: 'B. Efron, R. J. Tibshirani, An Introduction to the Bootstrap (1993), patch data, from memory',
  tier: 'B',
} as const;

type Proof = Pick<Figure, 'source' | 'tier'>;
const digits = (what: string, computed: number, published: number, tolerance: number, proof: Proof): Figure => ({
  what,
  computed,
  published,
  tolerance,
  why: 'printed digits',
  ...proof,
});

export const topic: Topic = {
  title: 'Comparing samples',
  field: 'metrology',
  figures: [
    ...studentFigures(),
    ...sleepFigures(),
    ...mouseFigures(),
    ...benchmarkFigures(),
    ...fiellerFigures(),
    ...geometricFigures(),
    ...adjustedFigures(),
  ],
  traps: [
    {
      what: 'patch data with 16649 as the first new value: ratio of the means',
      computed: ratioOfPairedMeans(less(oldPatch, placebo), less(newPatch, oldPatch))!.ratio,
      published: -0.06736,
      tolerance: 0.000005,
      why: 'half of the last printed digit',
      source: 'two stored copies of the data with a misprint',
      reason: 'the first new value is 16449',
    },
  ],
};

function studentFigures(): Figure[] {
  const table = { source: 'JCGM 100:2008 (GUM), table G.2', tier: 'A' } as const;
  const rows = [
    [4, 2.78, 4.6],
    [8, 2.31, 3.36],
    [10, 2.23, 3.17],
    [20, 2.09, 2.85],
    [50, 2.01, 2.68],
  ] as const;
  return [
    ...rows.flatMap(([nu, at95, at99]) => [
      digits(`Student's t for 95 % and ${nu} degrees of freedom`, studentQuantile(0.975, nu), at95, 0.005, table),
      digits(`Student's t for 99 % and ${nu} degrees of freedom`, studentQuantile(0.995, nu), at99, 0.005, table),
    ]),
    digits("Student's t for 99 % and 16", studentQuantile(0.995, 16), 2.92078, 5e-6, independent),
    digits('outside ±1.05871 with 9.65449', 2 * studentAbove(1.05871, 9.65449), 0.315501, 2e-6, independent),
  ];
}

function sleepFigures(): Figure[] {
  const welch = differenceByWelch(scatterOf(drug2), scatterOf(drug1))!;
  const pooled = differenceByPooling(scatterOf(drug2), scatterOf(drug1))!;
  const paired = differenceOfPairs(scatterOf(less(drug1, drug2)))!;
  const ranks = rankSum(drug2, drug1)!;
  const memory = { ...sleep, source: `${sleep.source}, from memory` };
  return [
    digits('sleep: Welch t', welch.t, -1.861, 5e-4, sleep),
    digits('sleep: Welch degrees of freedom', welch.degreesOfFreedom, 17.78, 0.005, sleep),
    digits('sleep: Welch p', welch.chance, 0.07939, 5e-6, sleep),
    digits('sleep: Welch 95 % low', welch.low, -3.365483, 5e-7, memory),
    digits('sleep: Welch 95 % high', welch.high, 0.205483, 5e-7, memory),
    digits('sleep: Welch t to eight digits', welch.t, -1.8608135, 5e-8, independent),
    digits('sleep: Welch p to seven digits', welch.chance, 0.07939414, 5e-9, independent),
    digits('sleep: pooled t', pooled.t, -1.861, 5e-4, sleep),
    digits('sleep: pooled p', pooled.chance, 0.07919, 5e-6, sleep),
    digits('sleep: pooled p to seven digits', pooled.chance, 0.07918671, 5e-9, independent),
    digits('sleep: paired mean', paired.difference, -1.58, 1e-9, independent),
    digits('sleep: standard deviation of the pairs', paired.u * Math.sqrt(10), 1.2299955, 5e-8, independent),
    digits('sleep: paired t', paired.t, -4.0621, 5e-5, memory),
    digits('sleep: paired p', paired.chance, 0.002833, 5e-7, memory),
    digits('sleep: paired p to six digits', paired.chance, 0.00283289, 5e-9, independent),
    digits('sleep: paired 95 % low', paired.low, -2.459886, 5e-7, memory),
    digits('sleep: paired 95 % high', paired.high, -0.700114, 5e-7, memory),
    digits('sleep: rank sum W', ranks.u, 25.5, 1e-9, sleep),
    digits('sleep: rank sum p', ranks.chance, 0.06933, 5e-6, sleep),
    digits('sleep: rank sum p to seven digits', ranks.chance, 0.06932758, 5e-9, independent),
  ];
}

function mouseFigures(): Figure[] {
  const book = { source: 'Efron, Tibshirani (1993), table 2.1, mouse data', tier: 'B' } as const;
  const formula = (values: readonly number[]) => Math.sqrt(scatterOf(values).variance / values.length);
  const { difference, t, u, degreesOfFreedom, chance } = differenceByWelch(scatterOf(control), scatterOf(treated))!;
  return [
    digits('mouse: mean of the treated', scatterOf(treated).mean, 86.86, 0.005, book),
    digits('mouse: mean of the control', scatterOf(control).mean, 56.22, 0.005, book),
    digits('mouse: difference', difference, 30.63, 0.0055, book),
    digits('mouse: standard error of the treated', formula(treated), 25.236, 6e-4, independent),
    digits('mouse: standard error of the control', formula(control), 14.159, 5e-4, independent),
    digits('mouse: standard error of the difference', u, 28.936, 5e-4, independent),
    digits('mouse: Welch t', t, 1.05871, 5e-6, independent),
    digits('mouse: degrees of freedom', degreesOfFreedom, 9.65449, 5e-6, independent),
    digits('mouse: p', chance, 0.315501, 5e-7, independent),
  ];
}

function benchmarkFigures(): Figure[] {
  const welch = differenceByWelch(scatterOf(before), scatterOf(after))!;
  const fieller = ratioOfMeans(scatterOf(before), scatterOf(after))!;
  const logs = ratioByLogs(before, after)!;
  return [
    digits('benchmark: Welch t', welch.t, 10.031843, 5e-7, independent),
    digits('benchmark: degrees of freedom', welch.degreesOfFreedom, 7.670941, 5e-7, independent),
    digits('benchmark: p', welch.chance, 1.117e-5, 5e-9, independent),
    ...ratioFigures('benchmark, Fieller', fieller, [1.0396414, 1.0302918, 1.0490969], 5e-8),
    digits('benchmark, Fieller: g', fieller.g!, 5.087e-5, 5e-9, independent),
    ...ratioFigures('benchmark, by logarithms', logs, [1.0396491, 1.0302584, 1.0491254], 5e-8),
    digits('benchmark, by logarithms: degrees of freedom', logs.degreesOfFreedom, 7.551972, 5e-7, independent),
  ];
}

function ratioFigures(
  name: string,
  { ratio, interval }: Ratio,
  [published, low, high]: readonly [number, number, number],
  tolerance: number,
  proof: Proof = independent,
): Figure[] {
  return [
    digits(`${name}: ratio`, ratio, published, tolerance, proof),
    digits(`${name}: low`, interval![0], low, tolerance, proof),
    digits(`${name}: high`, interval![1], high, tolerance, proof),
  ];
}

function fiellerFigures(): Figure[] {
  const [z, y] = [less(oldPatch, placebo), less(newPatch, oldPatch)];
  const at90 = ratioOfPairedMeans(z, y, 0.9)!;
  const at95 = ratioOfPairedMeans(z, y, 0.95)!;
  const numbers = { dividend: 0.15, divisor: 0.25, dividendVariance: 0.002, divisorVariance: 0.005 };
  const small = ratioByFieller({ ...numbers, covariance: 1e-4 }, 1.959964);
  return [
    digits('patch: mean of new less old', scatterOf(y).mean, -452.3, 0.051, patch),
    digits('patch: mean of old less placebo', scatterOf(z).mean, 6342, 0.5, patch),
    ...ratioFigures('patch, 90 % as printed', at90, [-0.0713, -0.249, 0.17], 5e-4, patch),
    ...ratioFigures('patch, 90 %', at90, [-0.071306096, -0.2488729, 0.1702262], 5e-8),
    digits('patch, 90 %: g', at90.g!, 0.0893823, 5e-8, independent),
    digits('patch, 95 %: low', at95.interval![0], -0.289628, 5e-7, independent),
    digits('patch, 95 %: high', at95.interval![1], 0.2524295, 5e-8, independent),
    digits('patch, 95 %: g', at95.g!, 0.139236, 5e-7, independent),
    ...ratioFigures('0.15/0.25 with covariance', small, [0.6, 0.230626, 1.484021], 5e-7),
    digits('0.15/0.25 with covariance: g', small.g!, 0.307317, 5e-7, independent),
  ];
}

function geometricFigures(): Figure[] {
  const machines = {
    R: [417, 83, 66, 39449, 772],
    M: [244, 70, 153, 33527, 368],
    Z: [134, 70, 135, 66000, 369],
  };
  const ratios = (one: readonly number[], other: readonly number[]) => one.map((value, i) => value / other[i]);
  const fleming = {
    source:
      'P. J. Fleming, J. J. Wallace, Comm. ACM 29 (1986) 218–221, table of five programs on three machines, data from memory',
    tier: 'C',
  } as const;
  const { R, M, Z } = machines;
  const small = geometricMean([1.1, 1.05, 1.2]);
  return [
    digits('geometric mean of M to R', geometricMean(ratios(M, R)).ratio, 0.85744, 5e-6, fleming),
    digits('geometric mean of Z to R', geometricMean(ratios(Z, R)).ratio, 0.84984, 5e-6, fleming),
    digits('geometric mean of R to M', geometricMean(ratios(R, M)).ratio, 1.16627, 5e-6, fleming),
    digits('geometric mean of Z to M', geometricMean(ratios(Z, M)).ratio, 0.99114, 5e-6, fleming),
    ...ratioFigures('1.10, 1.05, 1.20', small, [1.114947, 0.942169, 1.319411], 5e-7),
  ];
}

function adjustedFigures(): Figure[] {
  const holmDoc = {
    source: 'documentation of the Python package pingouin, multiple comparisons, example of `holm`',
    tier: 'B',
  } as const;
  const adjustDoc = {
    source: 'documentation of @stdlib/stats-padjust, examples',
    tier: 'B',
  } as const;
  const list = (name: string, computed: readonly number[], published: readonly number[], proof: Proof) =>
    published.map((value, i) => digits(`${name}, number ${i + 1}`, computed[i], value, 5e-4 * value + 1e-12, proof));
  return [
    ...list('Holm', adjustByHolm([0.5, 0.003, 0.32, 0.054, 0.0003]), [0.64, 0.012, 0.64, 0.162, 0.0015], holmDoc),
    ...list(
      'Holm, second list',
      adjustByHolm([0.319, 0.201, 0.4, 0.374, 0.113]),
      [0.957, 0.804, 0.957, 0.957, 0.565],
      adjustDoc,
    ),
    ...list(
      'Benjamini–Hochberg',
      adjustByBenjaminiHochberg([0.008, 0.03, 0.123, 0.6, 0.2]),
      [0.04, 0.075, 0.205, 0.6, 0.25],
      adjustDoc,
    ),
    ...list(
      'Benjamini–Hochberg, second list',
      adjustByBenjaminiHochberg([0.319, 0.201, 0.4, 0.374, 0.113]),
      [0.4, 0.4, 0.4, 0.4, 0.4],
      adjustDoc,
    ),
  ];
}
