import { exampleModel, logNormal, normal } from '../../src/metrology/example.test-data.ts';
import { normalBelow } from '../../src/metrology/probability.ts';
import { type TailProbability, tailProbability } from '../../src/metrology/tail.ts';
import type { Figure, Topic } from '../topic.ts';

type Inputs = Parameters<typeof exampleModel>[0]['inputs'];

function tailOf(inputs: Inputs, margin: (x: Float64Array) => number, target = 0.003): TailProbability {
  const outputs = { limit: () => 1, value: () => 0, margin };
  const model = exampleModel({ inputs, outputs, margins: { margin: 'value' } });
  return tailProbability(model, 'margin', { seed: 1, target, evaluations: 1_000_000 });
}

const standard = (count: number): Inputs =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`x${i}`, [0, normal(1)]]));

/** A log-normal input of this mean and standard deviation. */
function logNormalOf(mean: number, deviation: number): readonly [number, ReturnType<typeof logNormal>] {
  const variance = Math.log1p((deviation / mean) ** 2);
  return [mean / Math.exp(variance / 2), logNormal(Math.sqrt(variance))];
}

const plasticFrame = ([a, b, c, d, e, f]: Float64Array) => a + 2 * b + 2 * c + d - 5 * e - 5 * f;
const frameInputs = (e: number, f: number): Inputs => ({
  a: logNormalOf(120, 12),
  b: logNormalOf(120, 12),
  c: logNormalOf(120, 12),
  d: logNormalOf(120, 12),
  e: logNormalOf(50, e),
  f: logNormalOf(40, f),
});
const noise = (x: Float64Array) => 0.001 * x.reduce((sum, each) => sum + Math.sin(100 * each), 0);
const fourBranch =
  (k: number) =>
  ([a, b]: Float64Array) => {
    const bowl = 3 + 0.1 * (a - b) ** 2;
    const sum = (a + b) / Math.SQRT2;
    return Math.min(bowl - sum, bowl + sum, a - b + k / Math.SQRT2, b - a + k / Math.SQRT2);
  };

const straight = (beta: number) =>
  tailOf(standard(10), (x) => beta - x.reduce((sum, each) => sum + each, 0) / Math.sqrt(10), 0.001);
const product = tailOf(
  { load: [78064, normal(11710)], area: [0.0104, normal(0.00156)] },
  ([load, area]) => load * area - 146.14,
);
const quartic = tailOf(standard(2), ([a, b]) => 2 - b + 256 * a ** 4);
/** Exponential with mean 1, from a standard normal: −ln Φ(−z). */
const exponential = (z: number) => -Math.log(normalBelow(-z));

const closedForm = (text: string) => ({ source: `closed form: ${text}`, tier: 'C' as const });
const quadrature = (text: string) => ({ source: `by quadrature with SciPy 1.17: ${text}`, tier: 'C' as const });

/** Of a sampled estimate the tolerance is its own error, and half a unit of the last digit that is printed. */
function estimate(
  what: string,
  { probability, u }: TailProbability,
  published: number,
  rest: Pick<Figure, 'source' | 'tier'>,
  printed = 0,
): Figure {
  const tolerance = 3 * u + printed;
  const onePerCent = Math.min(...[0.99, 1.01].map((factor) => Math.abs(factor * probability - published)));
  const coarse = 'one per cent is less than the sampling error of the estimate, or than the last digit printed';
  const why = "three standard uncertainties of the estimate's own sampling error, and half a unit of the last digit";
  const figure = { what, computed: probability, published, tolerance, why, ...rest };
  return onePerCent > tolerance ? figure : { ...figure, coarse };
}

const sampled = 'two standard uncertainties of the sampling error, and half a unit of the last digit';
const rackwitz =
  'S. Engelund, R. Rackwitz, A benchmark study on importance sampling techniques, Struct. Saf. 12 (1993), from memory';
const tno = 'TNO reliability problem set as printed in a public benchmark collection, openturns/otbenchmark';

export const topic: Topic = {
  title: 'Probabilities of rare events',
  field: 'metrology',
  figures: [
    ...[3, 4, 5].map((beta) =>
      estimate(
        `straight limit in 10 normal inputs, β = ${beta} [1]`,
        straight(beta),
        [0.00134989803163009, 3.16712418331199e-5, 2.86651571879194e-7][beta - 3],
        closedForm(`Φ(−${beta}), mpmath`),
      ),
    ),
    estimate(
      'sum of five exponentials above 25 [1]',
      tailOf(standard(5), (z) => 25 - z.reduce((sum, each) => sum + exponential(each), 0)),
      2.669083424904495e-7,
      closedForm('gamma distribution of shape 5, SciPy 1.17'),
    ),
    estimate(
      'square of a normal number above 20: both sides [1]',
      tailOf(standard(2), ([z]) => 20 - z * z),
      7.744216431044084e-6,
      closedForm('chi-square with one degree of freedom, 2·Φ(−√20), SciPy 1.17'),
    ),
    estimate(
      'parabolic limit 2.5 − (x1 + x2)/√2 + 0.1·(x1 − x2)² [1]',
      tailOf(standard(2), ([a, b]) => 2.5 - (a + b) / Math.SQRT2 + 0.1 * (a - b) ** 2),
      0.004207305511299616,
      quadrature('2∫φ(v)·Φ(−2.5 − 0.2v²)dv; 0.00416 in the TNO problem set, RP22'),
    ),
    estimate('quartic limit 2 − x2 + 256·x1⁴ [1]', quartic, 0.003226681209587691, {
      source: `${tno}, RP31 as corrected there (R. Lebrun, 2021)`,
      tier: 'B',
    }),
    estimate(
      'product of two normal inputs below 146.14: two design points [1]',
      product,
      1.4532945926130674e-7,
      quadrature('∫φ(u)·Φ((146.14/x2(u) − 78064)/11710)du; inputs of the TNO problem set, RP28'),
    ),
    estimate(
      'four branches in series, k = 6 [1]',
      tailOf(standard(2), fourBranch(6)),
      0.004416,
      {
        source:
          'B. Echard, N. Gayton, M. Lemaire, Struct. Saf. 33 (2011) 145–154: 10⁶ Monte Carlo draws, 1.5 % at 95 %',
        tier: 'B',
      },
      0.000066,
    ),
    estimate('four branches in series, k = 6, exact [1]', tailOf(standard(2), fourBranch(6)), 0.004457331490626326, {
      ...quadrature('1 − 2∫₀^(k/2) φ(v)·(1 − 2Φ(−3 − 0.2v²))dv'),
    }),
    estimate(
      'four branches in series, k = 7 [1]',
      tailOf(standard(2), fourBranch(7)),
      0.002186,
      { source: `P. H. Waarts, thesis, Delft (2000), β = 2.85 as printed in ${tno}`, tier: 'B' },
      0.000033,
    ),
    estimate('four branches in series, k = 7, exact [1]', tailOf(standard(2), fourBranch(7)), 0.002222795066194383, {
      ...quadrature('1 − 2∫₀^(k/2) φ(v)·(1 − 2Φ(−3 − 0.2v²))dv'),
    }),
    estimate(
      'plastic frame, six log-normal inputs, loads 50(10) and 40(8) [1]',
      tailOf(frameInputs(10, 8), plasticFrame),
      0.000784,
      { source: `${tno}, RP8; 0.00078979 by convolution with SciPy 1.17`, tier: 'B' },
      0.000008,
    ),
    estimate(
      'plastic frame with loads 50(15) and 40(12) [1]',
      tailOf(frameInputs(15, 12), plasticFrame),
      0.012205183242478622,
      { source: 'by convolution of log-normal densities with SciPy 1.17', tier: 'C' },
    ),
    estimate(
      'the same with noise 0.001·Σ sin(100·x) on the limit [1]',
      tailOf(frameInputs(15, 12), (x) => plasticFrame(x) + noise(x)),
      0.0122,
      { source: `${rackwitz}`, tier: 'B' },
      0.00005,
    ),
  ],
  traps: [
    {
      what: 'quartic limit, the value first printed [1]',
      computed: quartic.probability,
      published: 0.00018,
      tolerance: 5e-6 + 2 * quartic.u,
      why: sampled,
      source: `${tno}, RP31 before its correction`,
      reason: 'quadrature gives 0.0032267, eighteen times as much',
    },
    {
      what: 'product of two normal inputs, a printed value [1]',
      computed: product.probability,
      published: 1.7632329180242404e-7,
      tolerance: 2 * product.u,
      why: sampled,
      source: `${tno}, RP28`,
      reason: 'quadrature over one of the inputs gives 1.4533e-7',
    },
    {
      what: 'straight limit in 10 normal inputs, β = 5, a printed value [1]',
      computed: straight(5).probability,
      published: 2.8061358933771777e-7,
      tolerance: 2 * straight(5).u,
      why: sampled,
      source: `${tno}, RP107`,
      reason: 'it is Φ(−5) = 2.8665e-7 exactly',
    },
  ],
};
