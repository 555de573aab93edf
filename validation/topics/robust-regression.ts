import { exampleModel } from '../../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../../src/metrology/fit.ts';
import type { Topic } from '../topic.ts';

/** Stack loss of a plant in 21 runs: air flow, water temperature, acid concentration, loss. K. A. Brownlee, "Statistical Theory and Methodology" (Wiley 1965), 454. */
const runs = [
  [80, 27, 89, 42],
  [80, 27, 88, 37],
  [75, 25, 90, 37],
  [62, 24, 87, 28],
  [62, 22, 87, 18],
  [62, 23, 87, 18],
  [62, 24, 93, 19],
  [62, 24, 93, 20],
  [58, 23, 87, 15],
  [58, 18, 80, 14],
  [58, 18, 89, 14],
  [58, 17, 88, 13],
  [58, 18, 82, 11],
  [58, 19, 93, 12],
  [50, 18, 89, 8],
  [50, 18, 86, 7],
  [50, 19, 72, 8],
  [50, 19, 79, 8],
  [50, 20, 80, 9],
  [56, 20, 82, 15],
  [70, 20, 91, 15],
];
const model = exampleModel({
  inputs: { constant: [1, null], air: [1, null], water: [1, null], acid: [1, null] },
  outputs: Object.fromEntries(
    runs.map(([air, water, acid], k) => [`${k}`, (b: Float64Array) => b[0] + b[1] * air + b[2] * water + b[3] * acid]),
  ),
});

function estimate(u: number, robust: boolean) {
  const observations = runs.map(([, , , value], k) => ({ id: `${k}`, model, output: `${k}`, value, u }));
  const free = model.inputs.map(({ id }) => id);
  const result = fitInputs({ inputs: model.inputs, free, observations, robust, maxPasses: 1000, tolerance: 1e-9 });
  if (result.ending !== 'converged') throw new Error(result.ending);
  return result;
}

/** The published fit scales its own uncertainty: the median of the residuals' sizes over 0.6745, until it no longer moves. */
function robustEstimate() {
  let u = 3;
  for (let pass = 0; pass < 60; pass++) {
    const sizes = estimate(u, true).residuals.map(({ difference }) => Math.abs(difference));
    u = sizes.sort((a, b) => a - b)[10] / 0.6744897501960817;
  }
  return estimate(u, true).inputs;
}

const figures = (what: string, found: readonly { value: number }[], published: readonly number[], source: string) =>
  published.map((each, k) => ({
    what: `${what}: ${model.inputs[k].id}`,
    computed: found[k].value,
    published: each,
    tolerance: 2e-6,
    why: 'two units of the last printed digit: both iterations end somewhere',
    source,
    tier: 'C' as const,
  }));

export const topic: Topic = {
  title: 'Regression with outliers',
  field: 'metrology',
  figures: figures(
    "stack loss by Huber's loss, k = 1.345",
    robustEstimate(),
    [-41.026498, 0.829384, 0.926066, -0.127847],
    'statsmodels 0.15 documentation, Robust Linear Models, HuberT with median absolute deviation',
  ),
};
