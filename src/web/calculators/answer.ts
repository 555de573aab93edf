import { type Fault, Refusal } from '../../fault/fault.ts';
import { calculate } from '../../physics/calc.ts';
import type { Formula } from '../../physics/formula.ts';
import type { CalculatedOutput } from '../../physics/results.ts';
import { solveFor } from '../../physics/solve-for.ts';

/** What a formula says about what stands in its fields. */
export type Answer =
  | { readonly state: 'waiting'; readonly missing: readonly string[] }
  | { readonly state: 'refused'; readonly faults: readonly Fault[] }
  | { readonly state: 'done'; readonly results: readonly Result[] };

/** One set of results: a formula has one, an inverse may have several. */
export interface Result {
  readonly outputs: readonly CalculatedOutput[];
  readonly warnings: readonly Fault[];
}

/** Draws of a calculation that is made anew at every key. */
const samples = 4096;
/** How long a slow formula may draw [ms]; those that it has made by then are enough. */
const patience = 300;

/**
 * The answer to what is written in the fields. `unknown` is the input that is looked for; then `goal` names the result that is given instead.
 * Fields that are still empty make it wait, not refuse.
 */
export function answerTo(
  formula: Formula,
  written: Readonly<Record<string, string>>,
  unknown: string | null,
  goal: string,
): Answer {
  const asked = formula.inputs.map(({ name }) => name).filter((name) => name !== unknown);
  if (unknown) asked.push(goal);
  const missing = asked.filter((name) => (written[name] ?? '').trim() === '');
  if (missing.length > 0) return { state: 'waiting', missing };
  const given = Object.fromEntries(asked.map((name) => [name, written[name]]));
  const ends = performance.now() + patience;
  const enough = () => performance.now() > ends;
  try {
    if (!unknown) {
      const { outputs, warnings } = calculate(formula.name, given, { samples, enough });
      return { state: 'done', results: [{ outputs, warnings }] };
    }
    const { roots } = solveFor(formula.name, unknown, given, { samples: 512 });
    return {
      state: 'done',
      results: roots.map(({ solved, outputs, warnings }) => ({ outputs: [solved, ...outputs], warnings })),
    };
  } catch (error) {
    if (error instanceof Refusal) return { state: 'refused', faults: error.faults };
    throw error;
  }
}
