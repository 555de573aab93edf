import { endsOf, standardUncertainty } from '../quantity/spread.ts';
import { evaluateAt, startValues } from './evaluate.ts';
import type { Ending, Input, Model } from './model.ts';

/** How a model's outputs follow its uncertain inputs around one point. */
export interface Sensitivities {
  /** How the evaluation at the point itself ended. */
  readonly start: Ending;
  /** `solved`, or how the evaluation ended that left no sensitivities; then `c` holds NaN. */
  readonly ending: Ending;
  /** The point [SI], inputs in the model's order. */
  readonly x0: Float64Array;
  /** Outputs at the point [SI], in the model's order. */
  readonly y0: Float64Array;
  /** Standard uncertainty of each input [SI]; 0 for an exact one. */
  readonly u: Float64Array;
  /** ∂output/∂input [SI/SI]: `c[output][input]`; 0 for an exact input. */
  readonly c: readonly Float64Array[];
  /** For each output, the inputs along which it bends within half a standard uncertainty: its first-order budget isn't to be trusted. */
  readonly bent: readonly (readonly number[])[];
}

/**
 * Sensitivities of every output to every uncertain input by central differences, as GUM 5.1.3 note 2 allows.
 *
 * Each input is moved by ± u/2 and ± u/8, inside its bounds; the slope over the shorter step is used. Where it and the slopes over
 * the longer step, both ways and to each side alone, differ by so much that it makes a tenth of the output's combined uncertainty
 * (for a smooth function: where the second-order term of the mean does), the output is `bent`: a kink, a clamp, strong curvature, or a
 * side on which the model has no solution.
 */
export function sensitivities(model: Model, x0: Float64Array = startValues(model)): Sensitivities {
  const start = evaluateAt(model, x0);
  const y0 = start.y;
  const u = Float64Array.from(model.inputs, (input, i) =>
    input.spread === null ? 0 : standardUncertainty(input.spread, x0[i]),
  );
  const c = model.outputs.map(() => new Float64Array(u.length));
  const change = model.outputs.map(() => new Float64Array(u.length));
  let { ending } = start.status;
  const x = x0.slice();
  const points = Array.from({ length: 4 }, () => ({ x: 0, y: y0.slice(), ending }));

  for (let i = 0; i < u.length && ending === 'solved'; i++) {
    if (u[i] === 0) continue;
    const steps = [-1 / 2, -1 / 8, 1 / 8, 1 / 2];
    steps.forEach((share, k) => {
      const point = points[k];
      point.x = x[i] = moved(model.inputs[i], x0[i], u[i], share);
      point.ending = model.evaluate(x, point.y).ending;
    });
    x[i] = x0[i];
    const [farBelow, below, above, farAbove] = points;
    if (below.ending !== 'solved' && above.ending !== 'solved') {
      ending = below.ending;
      break;
    }
    const here = { x: x0[i], y: y0, ending };
    for (let o = 0; o < c.length; o++) {
      const near = slope(below, above, o);
      c[o][i] = near ?? slope(here, above, o) ?? slope(below, here, o) ?? 0;
      const others = [slope(farBelow, farAbove, o), slope(farBelow, here, o), slope(here, farAbove, o)];
      const lost = points.some((point) => point.ending !== 'solved');
      change[o][i] = lost ? Number.POSITIVE_INFINITY : spreadOf([near, ...others]) * u[i];
    }
  }

  if (ending !== 'solved') for (const row of c) row.fill(Number.NaN);
  const bent = c.map((row, o) => {
    const combined = Math.sqrt(row.reduce((sum, slopeOf, i) => sum + (slopeOf * u[i]) ** 2, 0));
    const noise = 1e-9 * Math.abs(y0[o]);
    return [...change[o].keys()].filter((i) => change[o][i] > 0.1 * combined + noise);
  });
  return { start: start.status.ending, ending, x0, y0, u, c, bent };
}

interface Point {
  x: number;
  y: Float64Array;
  ending: Ending;
}

/** Slope of one output between two points; null where there is no solution or no distance. */
function slope(a: Point, b: Point, output: number): number | null {
  if (a.ending !== 'solved' || b.ending !== 'solved' || b.x === a.x) return null;
  return (b.y[output] - a.y[output]) / (b.x - a.x);
}

/** An input's value moved by a share of its uncertainty: by a factor for a log-normal one, and never beyond ends that it has. */
function moved(input: Input, value: number, u: number, share: number): number {
  const { spread } = input;
  if (spread?.shape === 'log-normal') return value * Math.exp(share * spread.sigma);
  const ends = spread && endsOf(spread);
  if (!ends) return value + share * u;
  return Math.min(Math.max(value + share * u, Math.min(ends.low, value)), Math.max(ends.high, value));
}

/** Distance between the smallest and the largest of the slopes that exist. */
function spreadOf(slopes: readonly (number | null)[]): number {
  const known = slopes.filter((each) => each !== null);
  return Math.max(...known) - Math.min(...known);
}
