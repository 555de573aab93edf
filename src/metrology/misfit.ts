import { type Coordinates, naturalValue } from './coordinates.ts';
import type { Fit, FitProblem } from './fit.ts';
import type { Found } from './minimise.ts';
import { normalQuantile } from './normal-quantile.ts';
import { chiSquareAbove } from './probability.ts';

/** What would take most off chi-square if it were allowed for. */
export interface Explanation {
  /**
   * `observation`: it is wrong, and left out; `stated`: the stated value of an input is wrong, and forgotten;
   * `exact`: a number taken as exact isn't.
   */
  readonly kind: 'observation' | 'stated' | 'exact';
  /** Observation or input. */
  readonly id: string;
  /** What it takes off chi-square [1]. */
  readonly takes: number;
  /** The value it would have instead [SI]: what the rest predicts for an observation, what the observations alone say about an input. */
  readonly instead: number;
  /** Probability of a larger chi-square by chance once it is allowed for [1]; null without degrees of freedom. */
  readonly chance: number | null;
}

/** Model and observations disagree by more than noise explains. */
export interface Misfit {
  /** What tells: chi-square as a whole (below 1 % by chance), single residuals or pulls (beyond `farFor` the number of observations). */
  readonly because: readonly ('chi-square' | 'residual' | 'pull')[];
  /** Observations by their part of chi-square, largest first, as far as they make nine tenths of it. */
  readonly observations: readonly { readonly id: string; readonly part: number }[];
  /** Single changes, the one that takes most off chi-square first; those that take less than 4 (two standard uncertainties) aren't listed. */
  readonly explanations: readonly Explanation[];
}

/**
 * How far out a residual or a pull must lie [standard uncertainties] to be more than the worst of so many by chance: one false alarm in a hundred fits
 * (Bonferroni), never less than 3. Pulls say nothing that the observations don't say, so that there are no more of them to count.
 */
export function farFor(observations: number): number {
  return Math.max(3, -normalQuantile(0.005 / Math.max(1, observations)));
}

/**
 * Whether chi-square, a residual or a pull is more than noise, and which single change would explain most of it, to first order around the fit.
 * Leaving out an observation takes off its squared size, forgetting a stated value its squared pull; freeing an exact number z takes off
 * (sᵀr)²/(sᵀs − sᵀHP⁺Hᵀs), r: residuals, s: ∂f/∂z, H: ∂f/∂θ, all over u.
 *
 * Source: score test, C. R. Rao, Proc. Cambridge Phil. Soc. 44 (1948) 50–57; deleted residuals, R. D. Cook, S. Weisberg, "Residuals and
 * Influence in Regression" (Chapman & Hall 1982), section 2.2; from memory.
 */
export function misfitOf(
  problem: FitProblem,
  coordinates: Coordinates,
  found: Found,
  fit: Omit<Fit, 'misfit' | 'faults'>,
): Misfit | null {
  const { residuals, inputs, chance, chiSquareParts } = fit;
  const far = farFor(residuals.length);
  const because = [
    ...(chance !== null && chance < 0.01 ? (['chi-square'] as const) : []),
    ...(residuals.some(({ size }) => size !== null && Math.abs(size) > far) ? (['residual'] as const) : []),
    ...(inputs.some(({ pull }) => pull !== null && Math.abs(pull) > far) ? (['pull'] as const) : []),
  ];
  if (because.length === 0) return null;

  const chanceWithout = (takes: number) =>
    fit.degreesOfFreedom > 1 ? chiSquareAbove(Math.max(0, fit.chiSquare - takes), fit.degreesOfFreedom - 1) : null;
  const explanation = (kind: Explanation['kind'], id: string, takes: number, instead: number): Explanation => ({
    kind,
    id,
    takes,
    instead,
    chance: chanceWithout(takes),
  });

  const wrongReadings = residuals.flatMap(({ observation, size, difference, leverage }, k) =>
    size === null
      ? []
      : [
          explanation(
            'observation',
            observation,
            size ** 2,
            problem.observations[k].value - difference / (1 - leverage),
          ),
        ],
  );
  const wrongStatements = inputs.flatMap(({ id, pull, held }, i) => {
    if (pull === null || held !== null) return [];
    const alone = found.scaled[i] / (1 - found.covariance[i * (inputs.length + 1)]);
    return [explanation('stated', id, pull ** 2, naturalValue(coordinates, i, alone))];
  });
  const explanations = [...wrongReadings, ...wrongStatements, ...inexact(problem, coordinates, found, explanation)]
    .filter(({ takes }) => takes >= 4)
    .sort((a, b) => b.takes - a.takes);

  const parts = residuals
    .map(({ observation, difference }, k) => ({ id: observation, part: (difference / problem.observations[k].u) ** 2 }))
    .sort((a, b) => b.part - a.part);
  let sum = 0;
  const observations = parts.filter(({ part }) => {
    const needed = sum < 0.9 * chiSquareParts.observations;
    sum += part;
    return needed;
  });
  return { because, observations, explanations };
}

/** Numbers that the fit takes as exact, such as a count or a value that nobody gave an uncertainty. */
function inexact(
  problem: FitProblem,
  coordinates: Coordinates,
  found: Found,
  explanation: (kind: 'exact', id: string, takes: number, instead: number) => Explanation,
): Explanation[] {
  const { slopes, covariance, here, scaled, predictor } = found;
  const n = scaled.length;
  const exact = new Map(
    problem.observations.flatMap(({ model }) => model.inputs.map((input) => [input.id, input.value] as const)),
  );
  for (const { id, value } of problem.inputs) if (exact.has(id)) exact.set(id, value);
  for (const id of coordinates.ids) exact.delete(id);
  return [...exact].flatMap(([id, value]) => {
    const natural = predictor.fixedSlopes(id, scaled, here);
    const along = new Float64Array(n);
    let score = 0;
    let own = 0;
    problem.observations.forEach(({ value: measured, u }, k) => {
      const slope = natural[k] / u;
      score += (slope * (measured - here.values[k])) / u;
      own += slope ** 2;
      for (let i = 0; i < n; i++) along[i] += slope * slopes[k * n + i];
    });
    let shared = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) shared += along[i] * covariance[i * n + j] * along[j];
    // What the fitted inputs can do as well is no explanation of its own.
    const left = own - shared;
    return left > 1e-9 * own ? [explanation('exact', id, score ** 2 / left, value + score / left)] : [];
  });
}
