import { degreesOfFreedom } from '../quantity/spread.ts';
import type { Model } from './model.ts';
import { studentQuantile } from './student-t.ts';

/** Degrees of freedom of one input's standard uncertainty [1]; ∞ where it isn't in doubt itself. */
export type DegreesOfFreedom = (inputId: string) => number;

/** Degrees of freedom as the inputs' distributions state them. */
export function statedDegreesOfFreedom(model: Model): DegreesOfFreedom {
  const stated = new Map(model.inputs.map(({ id, spread }) => [id, spread ? degreesOfFreedom(spread) : Infinity]));
  return (inputId) => stated.get(inputId) ?? Infinity;
}

/** What a budget says of the inputs: what each alone would do to the output, and the combined standard uncertainty. */
interface Contributions {
  readonly u: number;
  readonly rows: readonly { readonly input: string; readonly contribution: number }[];
}

/**
 * Effective degrees of freedom of a combined standard uncertainty [1]: ν = u⁴ / Σ (cᵢuᵢ)⁴/νᵢ; ∞ where no input has few of them.
 *
 * uᵢ, cᵢ, νᵢ: standard uncertainty, sensitivity and degrees of freedom of an input; u: combined standard uncertainty. Holds for independent
 * inputs; those that a fit has correlated bring no degrees of freedom of their own.
 * Source: Welch–Satterthwaite formula, JCGM 100:2008 (GUM), G.4.1, equation (G.2b).
 */
export function effectiveDegreesOfFreedom({ u, rows }: Contributions, degreesOf: DegreesOfFreedom): number {
  if (u === 0) return Infinity;
  const doubt = rows.reduce((sum, { input, contribution }) => sum + (contribution / u) ** 4 / degreesOf(input), 0);
  return 1 / doubt;
}

/**
 * Coverage factor [1]: so many standard uncertainties to each side hold a value with the probability `coverage`, t₍₁₊ₚ₎⁄₂(ν).
 * Source: JCGM 100:2008 (GUM), G.3.4 and table G.2. Broken degrees of freedom are taken as they are, where G.4.1 also allows to truncate them.
 */
export function coverageFactor(coverage: number, degrees: number): number {
  return studentQuantile((1 + coverage) / 2, degrees);
}
