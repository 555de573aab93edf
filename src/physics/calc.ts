import { type Fault, Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { catalogue } from './catalogue.ts';
import { asModel, type Formula } from './formula.ts';
import { type Assignments, faultsOfNames, readInputs } from './read-inputs.ts';
import { type CalculatedOutput, resultsOf } from './results.ts';

/** What a formula says about the numbers it was given. */
export interface Calculation {
  readonly formula: Formula;
  readonly quantities: Readonly<Record<string, Quantity>>;
  readonly outputs: readonly CalculatedOutput[];
  /** Warnings and open points; they belong to the result. */
  readonly warnings: readonly Fault[];
  readonly samples: number;
  readonly seed: number;
}

export interface CalculateOptions {
  /** Draws of the Monte Carlo run. */
  readonly samples?: number;
  readonly seed?: number;
  /** Asked between draws; true ends the Monte Carlo run with those that there are. */
  readonly enough?: () => boolean;
}

/** The formulas whose name, title, room, inputs or results hold every word of `search`. */
export function listFormulas(search = ''): readonly Formula[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return catalogue.filter(({ name, title, room, inputs, outputs }) => {
    const text = [name, title, room, ...[...inputs, ...outputs].map((each) => each.name)].join(' ').toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** The formula of that name. Refuses `calc/unknown-formula`, with the names that come near. */
export function findFormula(name: string): Formula {
  const found = catalogue.find((formula) => formula.name === name);
  if (found) return found;
  throw new Refusal(refuse('calc/unknown-formula', { name, near: namesNear(name) }));
}

/** Up to five: the one spelled alike first, then those that hold one of its words, the most words first. */
function namesNear(name: string): string[] {
  const spelled = nearest(
    name,
    catalogue.map((formula) => formula.name),
  );
  const counts = new Map<string, number>();
  for (const word of name.split(/[-\s]+/).filter(({ length }) => length > 2))
    for (const formula of listFormulas(word)) counts.set(formula.name, (counts.get(formula.name) ?? 0) + 1);
  const meant = [...counts].sort(([, one], [, other]) => other - one).map(([formula]) => formula);
  return [...new Set([spelled, ...meant])].filter(Boolean).slice(0, 5);
}

/**
 * Evaluates a formula on values as a person writes them, with uncertainty. Refuses with every fault of the names first, then with
 * every fault of the values.
 */
export function calculate(
  name: string,
  assignments: Assignments,
  { samples = 8192, seed = 1, enough }: CalculateOptions = {},
): Calculation {
  const formula = findFormula(name);
  const misnamed = faultsOfNames(formula, formula.inputs, assignments);
  if (misnamed.length > 0) throw new Refusal(misnamed);
  const quantities = readInputs(formula.inputs, assignments);
  const model = asModel(formula, quantities);
  const x = startValues(model);
  refuseImpossible(formula, x, evaluateAt(model).status.ending);
  const results = resultsOf(model, { samples, seed, enough });
  const warnings = [...outsideValid(formula, x), ...results.warnings];
  return { formula, quantities, outputs: results.outputs, warnings, samples: results.samples, seed };
}

function refuseImpossible(formula: Formula, x: Float64Array, ending: string): void {
  const broken = formula.requires.filter((condition) => !condition.holds(x));
  if (broken.length > 0)
    throw new Refusal(broken.map(({ says }) => refuse('calc/requirement', { formula: formula.name, says })));
  if (ending === 'runaway')
    throw new Refusal(refuse('calc/runaway', { formula: formula.name, equation: formula.equation }));
}

/** A warning for each condition of the valid range that the inputs [SI] don't meet. */
export function outsideValid(formula: Formula, x: Float64Array): Fault[] {
  return formula.valid
    .filter((condition) => !condition.holds(x))
    .map(({ says }) => ({
      code: 'calc/outside-valid-range',
      severity: 'warning',
      data: { formula: formula.name, says },
    }));
}
