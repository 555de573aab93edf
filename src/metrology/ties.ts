import { standardUncertainty } from '../quantity/spread.ts';
import type { Input } from './model.ts';

/** One number that several inputs share, such as the calibration of the meter that measured them all. */
export interface Shared {
  readonly input: string;
  /** `factor`: each of them is multiplied by it; `offset`: it is added to each. */
  readonly enters: 'factor' | 'offset';
  readonly of: readonly string[];
}

/** Two inputs whose uncertainties go together, with their correlation coefficient, −1 to 1. */
export interface StatedCorrelation {
  readonly between: readonly [string, string];
  readonly coefficient: number;
}

/** What has to be known of an input to tie it. */
export type TiedInput = Pick<Input, 'id' | 'value' | 'spread'>;

/** What a model's inputs have in common. */
export interface Ties {
  /** The numbers that the model is to reckon with, made from independent ones [SI]; the array is reused by the next call. */
  apply(x: Float64Array): Float64Array;
}

interface Group {
  readonly inputs: readonly number[];
  readonly centre: Float64Array;
  readonly scale: Float64Array;
  readonly logarithmic: readonly boolean[];
  readonly factor: Float64Array;
}

/**
 * Makes numbers that depend on each other out of independent inputs, so that whoever moves or draws a model's inputs one by one gets their covariance:
 * a shared number is an input of its own, entering wherever it acts (GUM 5.2.4, F.1.2.3); of correlated inputs, the first named keeps its own value,
 * and each further one is its best value plus u times a row of the Cholesky factor of the correlation matrix times the distances of all so far from their
 * best values, in units of their u (for a log-normal one, of the logarithm). That gives the covariance exactly, whatever the shapes. Where the
 * first two are correlated by r, the second is partly the first: y₂ = x̂₂ + u₂·(r·z₁ + √(1 − r²)·z₂).
 *
 * Inputs that a model doesn't have are left out. null: nothing is tied. Throws when the coefficients of a group can't hold together.
 */
export function tiesOf(
  inputs: readonly TiedInput[],
  shared: readonly Shared[],
  correlations: readonly StatedCorrelation[],
): Ties | null {
  const places = new Map(inputs.map((input, i) => [input.id, i]));
  const here = (id: string) => places.has(id);
  const groups = correlatedGroups(correlations.filter(({ between }) => between.every(here))).map((ids): Group => {
    const factor = correlationFactor(ids, correlations);
    if (!factor) throw new Error(`no correlation matrix: ${ids.join(', ')}`);
    const members = ids.map((id) => inputs[places.get(id)!]);
    const logarithmic = members.map(({ spread }) => spread?.shape === 'log-normal');
    return {
      inputs: ids.map((id) => places.get(id)!),
      centre: Float64Array.from(members, ({ value }, k) => (logarithmic[k] ? Math.log(value) : value)),
      scale: Float64Array.from(members, ({ spread, value }) => {
        if (spread === null) return 0;
        return spread.shape === 'log-normal' ? spread.sigma : standardUncertainty(spread, value);
      }),
      logarithmic,
      factor,
    };
  });
  const entering = shared.flatMap(({ input, enters, of }) => {
    const targets = of.filter(here).map((id) => places.get(id)!);
    return here(input) && targets.length > 0 ? [{ input: places.get(input)!, enters, targets }] : [];
  });
  if (groups.length === 0 && entering.length === 0) return null;
  const tied = new Float64Array(inputs.length);
  return {
    apply(x) {
      tied.set(x);
      for (const group of groups) correlate(group, x, tied);
      for (const { input, enters, targets } of entering)
        for (const target of targets) {
          if (enters === 'factor') tied[target] *= tied[input];
          else tied[target] += tied[input];
        }
      return tied;
    },
  };
}

function correlate({ inputs, centre, scale, logarithmic, factor }: Group, x: Float64Array, tied: Float64Array): void {
  const n = inputs.length;
  for (let k = 1; k < n; k++) {
    let distance = 0;
    for (let j = 0; j <= k; j++) {
      const here = x[inputs[j]];
      if (scale[j] > 0)
        distance += (factor[k * n + j] * ((logarithmic[j] ? Math.log(here) : here) - centre[j])) / scale[j];
    }
    const coordinate = centre[k] + scale[k] * distance;
    tied[inputs[k]] = logarithmic[k] ? Math.exp(coordinate) : coordinate;
  }
}

/** Ids that hang together, in the order they are named. */
export function correlatedGroups(correlations: readonly StatedCorrelation[]): string[][] {
  const groups: string[][] = [];
  for (const { between } of correlations) {
    const touched = groups.filter((group) => between.some((id) => group.includes(id)));
    const merged = [...new Set([...touched.flat(), ...between])];
    for (const group of touched) groups.splice(groups.indexOf(group), 1);
    groups.push(merged);
  }
  return groups;
}

/**
 * Lower triangle L with L·Lᵀ the correlation matrix of the ids, row by row; pairs that aren't stated are uncorrelated. null: no numbers can be
 * correlated like that. A coefficient of ±1 is fine.
 */
export function correlationFactor(
  ids: readonly string[],
  correlations: readonly StatedCorrelation[],
): Float64Array | null {
  const n = ids.length;
  const factor = new Float64Array(n * n);
  const stated = (a: string, b: string) =>
    correlations.find(({ between }) => between.includes(a) && between.includes(b))?.coefficient ?? 0;
  const rounding = 1e-9;
  for (let k = 0; k < n; k++) {
    for (let j = 0; j <= k; j++) {
      let rest = j === k ? 1 : stated(ids[k], ids[j]);
      for (let i = 0; i < j; i++) rest -= factor[k * n + i] * factor[j * n + i];
      if (j === k) {
        if (rest < -rounding) return null;
        factor[k * n + k] = rest < rounding ? 0 : Math.sqrt(rest);
      } else if (factor[j * n + j] > 0) {
        factor[k * n + j] = rest / factor[j * n + j];
      } else if (Math.abs(rest) > Math.sqrt(rounding)) {
        return null;
      }
    }
  }
  return factor;
}
