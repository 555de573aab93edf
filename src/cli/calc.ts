import { type CalculateOptions, calculate, findFormula, listFormulas } from '../physics/calc.ts';
import { readAssignments } from '../physics/read-inputs.ts';
import { solveFor } from '../physics/solve-for.ts';
import { resultOutcome, solutionOutcome } from './calc-result.ts';
import type { Outcome } from './envelope.ts';
import { explainOutcome, listOutcome } from './formula-text.ts';

export interface CalcOptions extends Pick<CalculateOptions, 'samples' | 'seed'> {
  /** Words that a formula must have to be listed. */
  readonly search?: string;
  /** The input that is the unknown; a result is given in its place. */
  readonly solve?: string;
}

/** How long a slow formula may draw [ms]. */
const patience = 1000;

/** The `calc` verb: the list of formulas, one formula explained, its results, or one of its inputs. Refuses as `physics/calc` does. */
export function runCalc(
  name: string | undefined,
  texts: readonly string[],
  { search, solve, samples, seed }: CalcOptions = {},
): Outcome {
  if (name === undefined || search !== undefined) return listOutcome(listFormulas(search), search ?? '');
  const formula = findFormula(name);
  const ends = performance.now() + patience;
  // Who asks for a number of draws waits for them.
  const enough = () => samples === undefined && performance.now() > ends;
  const options = { samples, seed, enough };
  if (solve !== undefined) return solutionOutcome(solveFor(name, solve, readAssignments(texts), options));
  if (texts.length === 0) return explainOutcome(formula);
  return resultOutcome(calculate(name, readAssignments(texts), options));
}
