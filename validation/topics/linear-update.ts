import { advise, type Candidate } from '../../src/metrology/advice.ts';
import { budget } from '../../src/metrology/budget.ts';
import { exampleModel, normal } from '../../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../../src/metrology/fit.ts';
import { withPosterior } from '../../src/metrology/posterior.ts';
import { sensitivities } from '../../src/metrology/sensitivity.ts';
import type { Figure, Topic } from '../topic.ts';

const readings = [48.54, 47.11, 55.01, 55.15, 49.89, 40.85, 46.72, 50.05, 51.27, 49.95];
const estimates = [49.686, 48.4658, 50.5693, 51.6835, 51.3326, 49.6173, 49.2098, 49.3134, 49.5282, 49.5699];
const variances = [22.5, 11.8421, 8.0357, 6.0811, 4.8913, 4.0909, 3.5156, 3.0822, 2.7439, 2.47253];

const height = exampleModel({ inputs: { height: [60, normal(15)] }, outputs: { height: ([each]) => each } });
const heights = readings.flatMap((_, k): Figure[] => {
  const { inputs } = fitInputs({
    inputs: height.inputs,
    observations: readings
      .slice(0, k + 1)
      .map((value, i) => ({ id: `${i}`, model: height, output: 'height', value, u: 5 })),
  });
  const rest = {
    why: 'half the last printed digit',
    source: 'worked example of a one-dimensional Kalman filter, kalmanfilter.net/kalman1d.html, from memory',
    tier: 'B' as const,
  };
  return [
    {
      what: `height after reading ${k + 1} of 10 [m]`,
      computed: inputs[0].value,
      published: estimates[k],
      // 49.686 is printed with three decimals.
      tolerance: k === 0 ? 6e-4 : 6e-5,
      ...rest,
    },
    {
      what: `variance of the height after reading ${k + 1} of 10 [m²]`,
      computed: inputs[0].u ** 2,
      published: variances[k],
      tolerance: 6e-5,
      ...rest,
    },
  ];
});

const byHand = {
  why: 'six digits',
  source: 'S = HPHᵀ + R, K = PHᵀ/S, P⁺ = P − KHP, worked out by hand',
  tier: 'C' as const,
};

// x = (1, 2) with P = [[0.25, 0.05], [0.05, 0.16]], H = [1 1], R = 0.04, y = 3.5; the correlation as x₂ = 2 + 0.2(x₁ − 1) + rest, var(rest) = 0.15.
const second = (x: Float64Array) => 2 + 0.2 * (x[0] - 1) + x[1];
const pair = exampleModel({
  inputs: { first: [1, normal(0.5)], rest: [0, normal(Math.sqrt(0.15))] },
  outputs: {
    first: ([first]) => first,
    second,
    sum: (x) => x[0] + second(x),
    'twice first − second': (x) => 2 * x[0] - second(x),
  },
});
const updated = fitInputs({
  inputs: pair.inputs,
  observations: [{ id: 'sum', model: pair, output: 'sum', value: 3.5, u: 0.2 }],
});
const after = withPosterior(pair, updated);
const sens = sensitivities(after);
const varianceOf = (output: string) => budget(after, output, sens, updated.joint)!.u ** 2;
const covariance = (varianceOf('sum') - varianceOf('first') - varianceOf('second')) / 2;
const states: Figure[] = (
  [
    ['x₁', sens.y0[0], 1.272727],
    ['x₂', sens.y0[1], 2.190909],
    ['var x₁', varianceOf('first'), 0.0863636],
    ['cov(x₁, x₂)', covariance, -0.0645455],
    ['var x₂', varianceOf('second'), 0.0798182],
    ['chi-square of the update, (3.5 − 3)²/0.55', updated.chiSquare, 0.4545455],
  ] as const
).map(([what, computed, published]) => ({
  what: `two correlated states and their sum: ${what}`,
  computed,
  published,
  tolerance: 6e-7,
  ...byHand,
}));

const before = sensitivities(pair);
const candidate = (output: string): Candidate => ({ id: output, what: { output }, u: 0.2, effort: 1 });
const reductions: Figure[] = (
  [
    ['first', 'sum', 0.163636],
    ['first', 'first', 0.215517],
    ['first', 'second', 0.0125],
    ['twice first − second', 'sum', 0.276545],
    ['twice first − second', 'first', 0.698276],
    ['twice first − second', 'second', 0.018],
  ] as const
).map(([of, by, published]) => {
  const [{ uNow, uAfter }] = advise(pair, of, [candidate(by)], before)!;
  return {
    what: `variance that measuring ${by} takes off ${of}`,
    computed: uNow ** 2 - uAfter ** 2,
    published,
    tolerance: 6e-7,
    ...byHand,
    source: 'expected reduction (cᵀPHᵀ)²/(HPHᵀ + R), worked out by hand',
  };
});

const weighted = exampleModel({ inputs: { value: [10, null] }, outputs: { value: ([value]) => value } });
const mean = fitInputs({
  inputs: weighted.inputs,
  free: ['value'],
  observations: [
    [10.02, 0.02],
    [9.98, 0.01],
    [10.05, 0.04],
  ].map(([value, u], k) => ({ id: `${k}`, model: weighted, output: 'value', value, u })),
});
const weightedMean: Figure[] = (
  [
    ['value', mean.inputs[0].value, 9.990952, 6e-7],
    ['standard uncertainty', mean.inputs[0].u, 0.008729, 6e-7],
    ['chi-square, 2 degrees of freedom', mean.chiSquare, 5.488, 6e-4],
    ['Birge ratio', Math.sqrt(mean.chiSquare / mean.degreesOfFreedom), 1.6565, 6e-5],
  ] as const
).map(([what, computed, published, tolerance]) => ({
  what: `weighted mean of 10.02(2), 9.98(1), 10.05(4): ${what}`,
  computed,
  published,
  tolerance,
  why: 'half the last digit',
  source: 'Σwx/Σw with w = 1/u², R. T. Birge, Phys. Rev. 40 (1932) 207–227, worked out by hand',
  tier: 'C',
}));

export const topic: Topic = {
  title: 'Linear update and weighted mean',
  field: 'metrology',
  figures: [...heights, ...states, ...reductions, ...weightedMean],
};
