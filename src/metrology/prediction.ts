import { type Coordinates, naturalValue } from './coordinates.ts';
import { outputIndex, startValues } from './evaluate.ts';
import type { FitProblem } from './fit.ts';
import type { Ending, Model } from './model.ts';

/** What the models say the observations should be. */
export interface Prediction {
  readonly ending: Ending;
  /** Observation whose model has no solution; null when all have. */
  readonly failed: string | null;
  /** Predicted values [SI], in the order of the observations. */
  readonly values: Float64Array;
}

export interface Predictor {
  /** Prediction at scaled coordinates. */
  at(scaled: Float64Array): Prediction;
  /** ∂prediction/∂coordinate by central differences, row by row: observations × free inputs. */
  slopes(scaled: Float64Array, at: Prediction): Float64Array;
}

/** One model with the observations of its outputs, and where the free inputs sit in it. */
interface Part {
  readonly model: Model;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly links: readonly { readonly position: number; readonly free: number }[];
  readonly looks: readonly { readonly observation: number; readonly output: number }[];
}

export function predictionOf(problem: FitProblem, coordinates: Coordinates): Predictor {
  const parts = [...new Set(problem.observations.map((each) => each.model))].map((model) =>
    partOf(model, problem, coordinates),
  );
  const m = problem.observations.length;
  const n = coordinates.ids.length;

  function at(scaled: Float64Array): Prediction {
    const values = new Float64Array(m);
    for (const { model, x, y, links, looks } of parts) {
      for (const { position, free } of links) x[position] = naturalValue(coordinates, free, scaled[free]);
      const { ending } = model.evaluate(x, y);
      if (ending !== 'solved') return { ending, failed: problem.observations[looks[0].observation].id, values };
      for (const { observation, output } of looks) values[observation] = y[output];
    }
    return { ending: 'solved', failed: null, values };
  }

  function slopes(scaled: Float64Array, here: Prediction): Float64Array {
    const result = new Float64Array(m * n);
    for (const { model, x, y, links, looks } of parts) {
      for (const { position, free } of links) x[position] = naturalValue(coordinates, free, scaled[free]);
      for (const { position, free } of links) {
        // A hundredth of the stated uncertainty; where nothing is stated, a step that balances rounding against curvature.
        const h = coordinates.stated[free] ? 1e-2 : 1e-5 * Math.max(Math.abs(1 + scaled[free]), 1e-3);
        let reach = 0;
        for (const side of [1, -1]) {
          const start = x[position];
          x[position] = naturalValue(coordinates, free, scaled[free] + side * h);
          const solved = model.evaluate(x, y).ending === 'solved';
          x[position] = start;
          if (!solved) continue;
          reach += h;
          for (const { observation, output } of looks) {
            result[observation * n + free] += side * (y[output] - here.values[observation]);
          }
        }
        if (reach > 0) for (const { observation } of looks) result[observation * n + free] /= reach;
      }
    }
    return result;
  }

  return { at, slopes };
}

function partOf(model: Model, problem: FitProblem, coordinates: Coordinates): Part {
  const x = startValues(model);
  model.inputs.forEach((input, position) => {
    const known = problem.inputs.find((each) => each.id === input.id);
    if (known) x[position] = known.value;
  });
  return {
    model,
    x,
    y: new Float64Array(model.outputs.length),
    links: model.inputs.flatMap((input, position) => {
      const free = coordinates.ids.indexOf(input.id);
      return free < 0 ? [] : [{ position, free }];
    }),
    looks: problem.observations.flatMap((each, observation) =>
      each.model === model ? [{ observation, output: outputIndex(model, each.output) }] : [],
    ),
  };
}
