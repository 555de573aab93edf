import { type Coordinates, naturalValue } from './coordinates.ts';
import { outputIndex, startValues } from './evaluate.ts';
import type { FitProblem } from './fit.ts';
import type { ScaledLimits } from './limits.ts';
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
  /** ∂prediction/∂coordinate by central differences, row by row: observations × free inputs. Never steps over a limit. */
  slopes(scaled: Float64Array, at: Prediction): Float64Array;
  /** ∂prediction/∂value of an input that the fit doesn't move, one number an observation [SI/SI]. */
  fixedSlopes(id: string, scaled: Float64Array, at: Prediction): Float64Array;
}

/** One model with the observations of its outputs, and where the free inputs sit in it. */
interface Part {
  readonly model: Model;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly links: readonly { readonly position: number; readonly free: number }[];
  readonly looks: readonly { readonly observation: number; readonly output: number }[];
}

export function predictionOf(problem: FitProblem, coordinates: Coordinates, limits: ScaledLimits): Predictor {
  const parts = [...new Set(problem.observations.map((each) => each.model))].map((model) =>
    partOf(model, problem, coordinates),
  );
  const m = problem.observations.length;
  const n = coordinates.ids.length;

  function place({ x, links }: Part, scaled: Float64Array): void {
    for (const { position, free } of links) x[position] = naturalValue(coordinates, free, scaled[free]);
  }

  function at(scaled: Float64Array): Prediction {
    const values = new Float64Array(m);
    for (const part of parts) {
      const { model, x, y, looks } = part;
      place(part, scaled);
      const { ending } = model.evaluate(x, y);
      if (ending !== 'solved') return { ending, failed: problem.observations[looks[0].observation].id, values };
      for (const { observation, output } of looks) values[observation] = y[output];
    }
    return { ending: 'solved', failed: null, values };
  }

  function slopes(scaled: Float64Array, here: Prediction): Float64Array {
    const result = new Float64Array(m * n);
    for (const part of parts) {
      place(part, scaled);
      for (const { position, free } of part.links) {
        const over = (h: number) => {
          const to = [1, -1].map((side) => scaled[free] + side * h);
          const values = to.map((coordinate) =>
            coordinate > limits.high[free] || coordinate < limits.low[free]
              ? null
              : naturalValue(coordinates, free, coordinate),
          );
          return slopeOver(part, position, values, h, here);
        };
        // A hundredth of the stated uncertainty. Where nothing is stated the step is a part of the value itself, and a second one of half
        // the length takes the error of the third derivative away.
        const stated = coordinates.stated[free];
        const h = stated ? 1e-2 : 4e-4 * Math.max(Math.abs(1 + scaled[free]), 1e-3);
        const whole = over(h);
        const half = stated ? null : over(h / 2);
        part.looks.forEach(({ observation }, k) => {
          result[observation * n + free] = half ? (4 * half[k] - whole[k]) / 3 : whole[k];
        });
      }
    }
    return result;
  }

  function fixedSlopes(id: string, scaled: Float64Array, here: Prediction): Float64Array {
    const result = new Float64Array(m);
    for (const part of parts) {
      const position = part.model.inputs.findIndex((input) => input.id === id);
      if (position < 0) continue;
      place(part, scaled);
      const value = part.x[position];
      const h = 1e-3 * Math.abs(value);
      if (h === 0) continue;
      const slope = slopeOver(part, position, [value + h, value - h], h, here);
      part.looks.forEach(({ observation }, k) => {
        result[observation] = slope[k];
      });
    }
    return result;
  }

  return { at, slopes, fixedSlopes };
}

/** Slope of each observed output over a step h to the values above and below; over one alone where the other is null or has no solution. */
function slopeOver(part: Part, position: number, to: readonly (number | null)[], h: number, here: Prediction) {
  const { model, x, y, looks } = part;
  const start = x[position];
  const slope = new Float64Array(looks.length);
  let reach = 0;
  to.forEach((value, k) => {
    if (value === null) return;
    x[position] = value;
    if (model.evaluate(x, y).ending !== 'solved') return;
    reach += h;
    const side = k === 0 ? 1 : -1;
    looks.forEach(({ observation, output }, o) => {
      slope[o] += side * (y[output] - here.values[observation]);
    });
  });
  x[position] = start;
  return reach > 0 ? slope.map((change) => change / reach) : slope;
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
