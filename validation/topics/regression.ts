import { exampleModel } from '../../src/metrology/example.test-data.ts';
import { fit as fitInputs } from '../../src/metrology/fit.ts';
import { type RegressionSet, regressionSets } from '../tables/regression.ts';
import type { Figure, Topic } from '../topic.ts';

/** Parameters and their deviations from one start. Nothing is known beforehand, and the observations scale their own uncertainty, as certified. */
function estimate({ curve, x, y, residualSquares }: RegressionSet, start: readonly number[]) {
  const model = exampleModel({
    inputs: Object.fromEntries(start.map((value, k) => [`b${k + 1}`, [value, null]])),
    outputs: Object.fromEntries(x.map((at, k) => [`y${k}`, (b: Float64Array) => curve(at, b)])),
  });
  const u = Math.sqrt(residualSquares / x.length);
  const result = fitInputs({
    inputs: model.inputs,
    free: model.inputs.map(({ id }) => id),
    observations: y.map((value, k) => ({ id: `${k}`, model, output: `y${k}`, value, u })),
    maxPasses: 1000,
    tolerance: 1e-8,
  });
  if (result.ending !== 'converged') throw new Error(result.ending);
  const scale = Math.sqrt(result.chiSquare / (x.length - start.length));
  return {
    residualSquares: result.chiSquare * u ** 2,
    parameters: result.inputs.map(({ value }) => value),
    deviations: result.inputs.map((each) => each.u * scale),
  };
}

const source =
  'NIST Statistical Reference Datasets, nonlinear regression, certified values, read in copies of the data files';

export const topic: Topic = {
  title: 'Nonlinear regression',
  field: 'metrology',
  figures: regressionSets.flatMap((set) =>
    set.starts.flatMap((start, s) => {
      const found = estimate(set, start);
      const figure = (what: string, computed: number, published: number, digits: number): Figure => ({
        what: `${set.name} from start ${s + 1}, ${what}`,
        computed,
        published,
        tolerance: Math.abs(published) * 10 ** -digits,
        why: `${digits} digits by difference quotients in double precision`,
        source,
        tier: 'A',
      });
      return [
        figure('residual sum of squares', found.residualSquares, set.residualSquares, 9),
        ...set.parameters.map((each, k) => figure(`b${k + 1}`, found.parameters[k], each, 7)),
        ...set.deviations.map((each, k) => figure(`deviation of b${k + 1}`, found.deviations[k], each, 6)),
      ];
    }),
  ),
};
