import { exampleModel } from '../../src/metrology/example.test-data.ts';
import { type SobolIndices, sobolIndices } from '../../src/metrology/sobol-indices.ts';
import { sobol } from '../../src/numeric/sobol.ts';
import type { Figure, Topic } from '../topic.ts';

function indicesOf(
  count: number,
  [low, high]: readonly [number, number],
  y: (x: Float64Array) => number,
  points: number,
  seed: number | null,
): SobolIndices {
  const names = Array.from({ length: count }, (_, i) => `x${i + 1}`);
  const input = [(low + high) / 2, { shape: 'rectangular', low, high }] as const;
  const model = exampleModel({ inputs: Object.fromEntries(names.map((name) => [name, input])), outputs: { y } });
  return sobolIndices(
    model,
    'y',
    names.map((name) => ({ name, inputs: [name] })),
    { seed, points },
  );
}

const indexOf = (made: SobolIndices, name: string) => made.rows.find((each) => each.name === name)!;

const ishigami = ([a, b, c]: Float64Array) => Math.sin(a) + 7 * Math.sin(b) ** 2 + 0.1 * c ** 4 * Math.sin(a);
const weights = [0, 1, 4.5, 9, 99, 99, 99, 99];
const gFunction = (x: Float64Array) =>
  x.reduce((product, each, i) => (product * (Math.abs(4 * each - 2) + weights[i])) / (1 + weights[i]), 1);

const plain = indicesOf(3, [-Math.PI, Math.PI], ishigami, 4096, null);
const scrambled = indicesOf(3, [-Math.PI, Math.PI], ishigami, 2048, 1);
const g = indicesOf(8, [0, 1], gFunction, 4096, 1);

const exactIshigami =
  'T. Ishigami, T. Homma (1990), a = 7, b = 0.1: V1 = ½(1 + bπ⁴/5)², V2 = a²/8, V13 = b²π⁸(1/18 − 1/50), worked out';
const exactG =
  'A. Saltelli, I. M. Sobol’ (1995), g-function with a = (0, 1, 4.5, 9, 99 …): Vᵢ = 1/(3(1 + aᵢ)²), worked out';
const byScrambling = 'four standard uncertainties from eight scramblings';

function row(figure: Figure): Figure {
  const { computed, published, tolerance } = figure;
  const onePerCent = Math.min(...[0.99, 1.01].map((factor) => Math.abs(factor * computed - published)));
  const coarse = 'the sampling error, or the printed digits, are larger than one per cent of it';
  return onePerCent > tolerance ? figure : { ...figure, coarse };
}

/** Exact values beside those estimated on scrambled points. */
function sampledRows(
  title: string,
  made: SobolIndices,
  exact: { readonly first: readonly number[]; readonly total: readonly number[]; readonly source: string },
): Figure[] {
  const rest = { why: byScrambling, source: exact.source, tier: 'C' as const };
  return exact.first.flatMap((published, i) => {
    const { first, firstU, total, totalU } = indexOf(made, `x${i + 1}`);
    return [
      row({
        what: `${title}: first index of x${i + 1} [1]`,
        computed: first,
        published,
        tolerance: 4 * firstU,
        ...rest,
      }),
      row({
        what: `${title}: total index of x${i + 1} [1]`,
        computed: total,
        published: exact.total[i],
        tolerance: 4 * totalU,
        ...rest,
      }),
    ];
  });
}

/** The same five indices of the Ishigami function beside another estimate of them. */
function ishigamiRows(
  title: string,
  made: SobolIndices,
  published: readonly number[],
  rest: Pick<Figure, 'tolerance' | 'why' | 'source' | 'tier'>,
): Figure[] {
  const [one, two, three] = ['x1', 'x2', 'x3'].map((name) => indexOf(made, name));
  const computed = [one.first, two.first, one.total, two.total, three.total];
  return ['S1', 'S2', 'T1', 'T2', 'T3'].map((name, i) =>
    row({ what: `Ishigami, ${name} ${title} [1]`, computed: computed[i], published: published[i], ...rest }),
  );
}

/** Points of eight dimensions in Gray-code order. */
const published: Readonly<Record<number, readonly number[]>> = {
  2: [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75],
  3: [0.25, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25],
  4: [0.375, 0.375, 0.625, 0.875, 0.375, 0.125, 0.375, 0.875],
  5: [0.875, 0.875, 0.125, 0.375, 0.875, 0.625, 0.875, 0.375],
  6: [0.625, 0.125, 0.875, 0.625, 0.625, 0.875, 0.125, 0.125],
  7: [0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625],
  8: [0.1875, 0.3125, 0.9375, 0.4375, 0.5625, 0.3125, 0.4375, 0.9375],
  100: [0.4140625, 0.2578125, 0.7734375, 0.7265625, 0.8828125, 0.7421875, 0.0234375, 0.4765625],
};
const sequence = sobol(8, null);
const pointOf = (index: number) => {
  const out = new Float64Array(8);
  sequence.at(index, out);
  return out;
};

export const topic: Topic = {
  title: 'Sobol points and sensitivity indices',
  field: 'metrology',
  figures: [
    ...Object.entries(published).flatMap(([index, values]) =>
      values.map((value, d) => ({
        what: `Sobol point ${index}, dimension ${d + 1} [1]`,
        computed: pointOf(Number(index))[d],
        published: value,
        tolerance: 2 ** -32,
        why: 'a dyadic number; half of the last of 32 bits is added, so that no coordinate is 0',
        source:
          'S. Joe, F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635–2654, new-joe-kuo-6; SciPy 1.17.1, unscrambled points',
        tier: 'C' as const,
      })),
    ),
    ...ishigamiRows('from 4096 published points', plain, [0.314107, 0.442473, 0.557435, 0.442454, 0.243293], {
      tolerance: 0.000002,
      why: 'the same points and estimators, two units of the last digit',
      source: 'an independent program in Python, N = 4096, Saltelli 2010 and Jansen',
      tier: 'C',
    }),
    ...ishigamiRows('as estimated elsewhere', scrambled, [0.316, 0.438, 0.561, 0.443, 0.242], {
      tolerance: 0.006,
      why: 'its own sampling error with 1024 points, about 0.005, and the last printed digit',
      source: 'SciPy 1.17.1, stats.sobol_indices, example of its documentation, n = 1024',
      tier: 'B',
    }),
    ...sampledRows('Ishigami', scrambled, {
      first: [0.313905191, 0.442411145, 0],
      total: [0.557588855, 0.442411145, 0.243683664],
      source: exactIshigami,
    }),
    row({
      what: 'Ishigami, what is left for interactions [1]',
      computed: scrambled.interaction,
      published: 0.243683664,
      tolerance: 4 * scrambled.interactionU,
      why: byScrambling,
      source: exactIshigami,
      tier: 'C',
    }),
    row({
      what: 'Ishigami, variance [1]',
      computed: scrambled.u ** 2,
      published: 13.844587940719,
      tolerance: 0.02,
      why: 'sampling error of 2¹⁵ points',
      source: exactIshigami,
      tier: 'C',
    }),
    ...sampledRows('g-function', g, {
      first: [0.716192, 0.179048, 0.023676, 0.007162],
      total: [0.787144, 0.242198, 0.034317, 0.01046],
      source: exactG,
    }),
    row({
      what: 'g-function, variance [1]',
      computed: g.u ** 2,
      published: 0.465424432,
      tolerance: 0.001,
      why: 'sampling error of 2¹⁶ points',
      source: exactG,
      tier: 'C',
    }),
  ],
};
