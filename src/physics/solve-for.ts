import { type Fault, Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { startValues } from '../metrology/evaluate.ts';
import type { Input, Model, Status } from '../metrology/model.ts';
import { kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { writeValue } from '../quantity/write.ts';
import { type CalculateOptions, findFormula, outsideValid } from './calc.ts';
import { asModel, type Formula, type FormulaInput, type FormulaOutput } from './formula.ts';
import { followRoot, invert, searchPoints } from './invert.ts';
import { type Assignments, faultsOfNames, readInputs, readNamed } from './read-inputs.ts';
import { type CalculatedOutput, exactOutputs, resultsOf } from './results.ts';

/** One value of the unknown input that gives the result asked for. */
export interface SolvedInput {
  readonly solved: CalculatedOutput;
  /** The formula's other results there. */
  readonly outputs: readonly CalculatedOutput[];
  /** Warnings and open points; they belong to the result. */
  readonly warnings: readonly Fault[];
}

/** What an input has to be for a formula to give a certain result. */
export interface Solution {
  readonly formula: Formula;
  readonly unknown: FormulaInput;
  readonly target: FormulaOutput;
  /** The inputs given, and the result asked for. */
  readonly quantities: Readonly<Record<string, Quantity>>;
  /** All that were found, rising; at least one. */
  readonly roots: readonly SolvedInput[];
  readonly samples: number;
  readonly seed: number;
}

/**
 * Solves a formula for one of its inputs: `assignments` hold every other input and exactly one result. The uncertainty of all of them goes
 * into the answer. Refuses with every fault of the names, then of the values, then `calc/no-root`, `calc/independent` or `calc/plateau`.
 */
export function solveFor(
  name: string,
  unknownName: string,
  assignments: Assignments,
  { samples = 8192, seed = 1, enough }: CalculateOptions = {},
): Solution {
  const formula = findFormula(name);
  const { unknown, target, given } = readQuestion(formula, unknownName, assignments);
  const goal = readNamed(target.name, assignments[target.name], target.kind);
  if ('code' in goal) throw new Refusal(goal);
  const model = modelWith(formula, unknown, target, given, goal);
  const u = formula.inputs.indexOf(unknown);
  const o = formula.outputs.indexOf(target);
  const { roots, reached, plateau } = inputsFor(model, unknown, u, o, goal.value);

  const shown = (value: number, { kind, unit }: { kind: FormulaInput['kind']; unit: string }) =>
    writeValue(value, null, unit, kind);
  const data = { formula: formula.name, input: unknown.name, output: target.name, given: goal.text };
  if (!reached) throw new Refusal(refuse('calc/no-root', { ...data, low: '', high: '' }));
  const unit = { kind: target.kind, unit: model.outputs[o].unit };
  const range = { low: shown(reached.low, unit), high: shown(reached.high, unit) };
  if (reached.high - reached.low <= 1e-12 * Math.max(Math.abs(reached.low), Math.abs(reached.high)))
    throw new Refusal(refuse('calc/independent', { ...data, ...range }));
  if (plateau) {
    const [from, to] = [shown(plateau.from, unknown), shown(plateau.to, unknown)];
    throw new Refusal(refuse('calc/plateau', { ...data, from, to }));
  }
  if (roots.length === 0) throw new Refusal(refuse('calc/no-root', { ...data, ...range }));

  let drawn = 0;
  const solutions = roots.map((root): SolvedInput => {
    const inverse = inverseModel(model, unknown, u, o, goal, root);
    // A whole number has no neighbours to be uncertain among.
    const results =
      unknown.kind === 'count'
        ? { outputs: exactOutputs(inverse), warnings: [], samples: 0 }
        : resultsOf(inverse, { samples, seed, enough });
    drawn = Math.max(drawn, results.samples);
    const x = startValues(model);
    x[u] = root;
    const [solved, ...outputs] = results.outputs;
    return { solved, outputs, warnings: [...outsideValid(formula, x), ...results.warnings] };
  });
  const quantities = { ...given, [target.name]: goal };
  return { formula, unknown, target, quantities, roots: solutions, samples: drawn, seed };
}

/** Every value of input `u` of a formula's model for which output `o` is `goal` [SI]; the other inputs at their best values. */
export function inputsFor(model: Model, unknown: FormulaInput, u: number, o: number, goal: number) {
  const x = startValues(model);
  const points = searchPoints(unknown, model.inputs[u].value);
  return invert(curveOf(model, x, u, o), points, goal);
}

/** Which input is asked for, and by which result. */
function readQuestion(formula: Formula, unknownName: string, assignments: Assignments) {
  const names = formula.inputs.map((input) => input.name);
  const unknown = formula.inputs.find((input) => input.name === unknownName);
  if (!unknown) {
    const data = { formula: formula.name, name: unknownName, known: names, near: nearest(unknownName, names) };
    throw new Refusal(refuse('calc/unknown-unknown', data));
  }
  const targets = formula.outputs.filter(({ name }) => name in assignments);
  const faults: Fault[] = [];
  if (unknownName in assignments) faults.push(refuse('calc/unknown-given', { name: unknownName }));
  if (targets.length !== 1) {
    const known = formula.outputs.map(({ name }) => name);
    const example = formula.outputs.map(({ name, kind }) => `${name}='${kinds[kind].example}'`)[0];
    const given = targets.map(({ name }) => name);
    faults.push(refuse('calc/one-target', { formula: formula.name, known, given, example }));
  }
  const others = formula.inputs.filter((input) => input !== unknown);
  const inputs = Object.fromEntries(
    Object.entries(assignments).filter(([name]) => name !== unknownName && !targets.some((it) => it.name === name)),
  );
  faults.push(...faultsOfNames(formula, others, inputs));
  if (faults.length > 0) throw new Refusal(faults);
  return { unknown, target: targets[0], given: readInputs(others, inputs) };
}

/** The formula's model with the example's value in the place of the unknown: its size says where to look. */
function modelWith(
  formula: Formula,
  unknown: FormulaInput,
  target: FormulaOutput,
  given: Readonly<Record<string, Quantity>>,
  goal: Quantity,
): Model {
  const example = readNamed(unknown.name, formula.example.inputs[unknown.name], unknown.kind);
  if ('code' in example) throw new Error(`the example of ${formula.name} can't be read: ${unknown.name}`);
  const unit = target.unitOf === unknown.name ? goal.unit : unknown.unit;
  return asModel(formula, { ...given, [unknown.name]: { ...example, unit, spread: null } });
}

/** Output `o` as input `u` moves; `x` holds the others. */
function curveOf(model: Model, x: Float64Array, u: number, o: number) {
  const y = new Float64Array(model.outputs.length);
  return (value: number) => {
    x[u] = value;
    return model.evaluate(x, y).ending === 'solved' ? y[o] : Number.NaN;
  };
}

/**
 * A formula's model turned round: the result asked for is an input, the unknown input is the first output, the other results follow.
 * It keeps to the branch of `root`. Its sensitivities are those of the implicit function, −(∂y/∂p)/(∂y/∂x).
 */
export function inverseModel(
  model: Model,
  unknown: FormulaInput,
  u: number,
  o: number,
  goal: Quantity,
  root: number,
): Model {
  const status: Status = { ending: 'solved', residual: 0, passes: 1 };
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = unknown;
  const full = startValues(model);
  const results = new Float64Array(model.outputs.length);
  const curve = curveOf(model, full, u, o);
  const { id, kind, unit } = model.outputs[o];
  const asked: Input = { id, kind, unit, value: goal.value, spread: goal.spread, source: goal.source ?? '' };
  return {
    inputs: [...model.inputs.filter((_, i) => i !== u), asked],
    outputs: [
      { id: unknown.name, kind: unknown.kind, unit: model.inputs[u].unit, title: unknown.title },
      ...model.outputs.filter((_, i) => i !== o),
    ],
    evaluate(x, y) {
      let next = 0;
      for (let i = 0; i < full.length; i++) if (i !== u) full[i] = x[next++];
      const solved = followRoot(curve, root, x[next], low, high);
      full[u] = solved;
      status.ending = model.evaluate(full, results).ending;
      if (status.ending !== 'solved') y.fill(Number.NaN);
      else {
        y[0] = solved;
        for (let i = 0, k = 1; i < results.length; i++) if (i !== o) y[k++] = results[i];
      }
      return status;
    },
  };
}
