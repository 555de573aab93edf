import { sobol } from '../numeric/sobol.ts';
import { budget } from './budget.ts';
import { outputIndex, startValues } from './evaluate.ts';
import type { Joint } from './joint.ts';
import type { Model } from './model.ts';
import { normalQuantile } from './normal-quantile.ts';
import { normalSpace } from './normal-space.ts';
import type { Sensitivities } from './sensitivity.ts';

/** Inputs whose part in the variance is looked at as one. */
export interface IndexGroup {
  readonly name: string;
  readonly inputs: readonly string[];
}

/** Part of an output's variance that one group of inputs accounts for. */
export interface SobolIndex extends IndexGroup {
  /** Part that the group accounts for by itself: what the variance would lose on average if the group were known [1]. */
  readonly first: number;
  readonly firstU: number;
  /** Part in which the group has a hand, alone or together with others: what would be left of the variance if all others were known [1]. */
  readonly total: number;
  readonly totalU: number;
}

export interface SobolIndices {
  readonly output: string;
  /** Largest total first. */
  readonly rows: readonly SobolIndex[];
  /** What no group accounts for by itself: 1 − Σ first [1]. */
  readonly interaction: number;
  readonly interactionU: number;
  /** Standard deviation of the output [SI]. */
  readonly u: number;
  readonly evaluations: number;
  /** Evaluations without a solution; the indices speak of the others only. */
  readonly lost: number;
}

export interface SobolOptions {
  /** Names the scrambling; null takes the published sequence once, without scrambling and without errors. */
  readonly seed: number | null;
  /** Points of each replicate, a power of two; 256 by default. */
  readonly points?: number;
  /** Independent scramblings, from which the errors come; 8 by default. */
  readonly replicates?: number;
  readonly joint?: Joint;
}

/** Name of the group of inputs that a joint distribution correlates: their parts can't be told apart. */
export const CORRELATED = 'correlated inputs';
/** Name of the group of inputs that hardly matter. */
export const REST = 'all other inputs';

/**
 * Inputs that matter to an output, each in a group of its own: a thousandth of the variance to first order, or a bend. All others are one group, and
 * so are correlated ones. Null where there are no sensitivities.
 */
export function indexGroups(
  model: Model,
  outputId: string,
  sens: Sensitivities,
  joint?: Joint,
): readonly IndexGroup[] | null {
  const rows = budget(model, outputId, sens, joint)?.rows;
  if (!rows) return null;
  const bent = sens.bent[outputIndex(model, outputId)].map((i) => model.inputs[i].id);
  const correlated = rows.map(({ input }) => input).filter((id) => joint?.ids.includes(id));
  const single = rows.filter(({ input }) => !correlated.includes(input));
  const own = single.filter(({ input, share }) => share >= 0.001 || bent.includes(input)).map(({ input }) => input);
  const rest = single.map(({ input }) => input).filter((id) => !own.includes(id));
  return [
    ...own.map((id) => ({ name: id, inputs: [id] })),
    ...[
      { name: CORRELATED, inputs: correlated },
      { name: REST, inputs: rest },
    ].filter(({ inputs }) => inputs.length > 0),
  ];
}

/**
 * Sobol indices of one output: how much of its variance each group of inputs accounts for, alone and together with others, over the inputs' whole
 * distributions. Two independent sets of points A and B, and for each group the points A with that group's columns from B:
 * first = ⟨f(B)·(f(AB) − f(A))⟩/V, total = ⟨(f(A) − f(AB))²⟩/(2V).
 *
 * Sources: A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259–270, table 2 (b) and (f); the total is M. J. W. Jansen's (ibid. 117 (1999)
 * 35–43). Errors by independent scramblings of the Sobol sequence: A. B. Owen, J. Complexity 14 (1998) 466–489.
 */
export function sobolIndices(
  model: Model,
  outputId: string,
  groups: readonly IndexGroup[],
  options: SobolOptions,
): SobolIndices {
  const { seed, points = 256, joint } = options;
  const replicates = seed === null ? 1 : (options.replicates ?? 8);
  const space = normalSpace(model, joint);
  const ordered = groups.flatMap(({ inputs }) => inputs);
  const missing = space.ids.filter((id) => !ordered.includes(id));
  const dimensions = space.ids.length;
  // The first dimensions of the sequence are the best ones: they go to the groups that come first.
  const place = space.ids.map((id) => [...ordered, ...missing].indexOf(id));
  const members = groups.map(({ inputs }) => inputs.map((id) => space.ids.indexOf(id)).filter((d) => d >= 0));
  const evaluate = evaluatorOf(model, outputId, space.place);
  const runs = Array.from({ length: replicates }, (_, r) => {
    const sequence = sobol(2 * dimensions, seed === null ? null : (seed + Math.imul(r, 0x9e3779b9)) >>> 0);
    const column = (d: number) => {
      const out = new Float64Array(points);
      sequence.column(d, 0, out);
      return out.map((probability) => normalQuantile(probability));
    };
    const a = place.map((d) => column(d));
    const b = place.map((d) => column(dimensions + d));
    return {
      a: evaluate(a, points),
      b: evaluate(b, points),
      mixed: members.map((inside) =>
        evaluate(
          a.map((each, d) => (inside.includes(d) ? b[d] : each)),
          points,
        ),
      ),
    };
  });
  const all = runs.flatMap(({ a, b }) => [...a, ...b]).filter((value) => !Number.isNaN(value));
  const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
  const variance = all.reduce((sum, value) => sum + (value - mean) ** 2, 0) / all.length;
  const own = runs.map(({ a, b }) =>
    meanOver(a.length * 2, (s) => ((s < a.length ? a[s] : b[s - a.length]) - mean) ** 2),
  );
  const share = (of: (run: (typeof runs)[number]) => number) => ratioOf(runs.map(of), own, variance);
  const firstOf = (k: number) => (run: (typeof runs)[number]) =>
    meanOver(points, (s) => (run.b[s] - mean) * (run.mixed[k][s] - run.a[s]));
  const rows = groups.map((group, k) => {
    const first = share(firstOf(k));
    const total = share((run) => meanOver(points, (s) => (run.a[s] - run.mixed[k][s]) ** 2 / 2));
    return { ...group, first: first.value, firstU: first.u, total: total.value, totalU: total.u };
  });
  const together = share((run) => groups.reduce((sum, _, k) => sum + firstOf(k)(run), 0));
  const lost = runs.reduce(
    (sum, { a, b, mixed }) => sum + [a, b, ...mixed].flatMap((f) => [...f.filter(Number.isNaN)]).length,
    0,
  );
  return {
    output: outputId,
    rows: rows.sort((one, other) => other.total - one.total),
    interaction: 1 - together.value,
    interactionU: together.u,
    u: Math.sqrt(variance),
    evaluations: replicates * points * (groups.length + 2),
    lost,
  };
}

function evaluatorOf(model: Model, outputId: string, place: (z: Float64Array, x: Float64Array) => void) {
  const index = outputIndex(model, outputId);
  const x = startValues(model);
  const y = new Float64Array(model.outputs.length);
  return (columns: readonly Float64Array[], points: number): Float64Array => {
    const z = new Float64Array(columns.length);
    return Float64Array.from({ length: points }, (_, s) => {
      for (let d = 0; d < z.length; d++) z[d] = columns[d][s];
      place(z, x);
      return model.evaluate(x, y).ending === 'solved' ? y[index] : Number.NaN;
    });
  };
}

/** Mean over the points at which all evaluations had a solution. */
function meanOver(points: number, at: (s: number) => number): number {
  let sum = 0;
  let count = 0;
  for (let s = 0; s < points; s++) {
    const value = at(s);
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count > 0 ? sum / count : 0;
}

/** A ratio of means over replicates and its standard uncertainty: how the numerators scatter around what their own denominators promise. */
function ratioOf(tops: readonly number[], bottoms: readonly number[], bottom: number): { value: number; u: number } {
  const n = tops.length;
  if (!(bottom > 0)) return { value: 0, u: 0 };
  const value = tops.reduce((sum, each) => sum + each, 0) / n / bottom;
  const squares = tops.reduce((sum, each, r) => sum + (each - value * bottoms[r]) ** 2, 0);
  return { value, u: n > 1 ? Math.sqrt(squares / (n - 1) / n) / bottom : 0 };
}
