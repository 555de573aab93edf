import { type Fault, type FaultData, Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type Budget, budget } from '../metrology/budget.ts';
import { evaluateAt, startValues } from '../metrology/evaluate.ts';
import type { Model } from '../metrology/model.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import type { Sample } from '../metrology/sample.ts';
import { sensitivities } from '../metrology/sensitivity.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readQuantity } from '../quantity/read.ts';
import { catalogue } from './catalogue.ts';
import { asModel, canExist, type Formula, type FormulaInput } from './formula.ts';

/** One result of a calculation, with why it is uncertain. */
export interface CalculatedOutput {
  readonly name: string;
  readonly title: string;
  readonly kind: KindName;
  readonly unit: string;
  /** At the inputs' best values [SI]. */
  readonly value: number;
  /** Standard uncertainty [SI]; null when no input has one. */
  readonly u: number | null;
  /** 95 % coverage interval from Monte Carlo [SI]. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  readonly method: 'exact' | 'first-order' | 'monte-carlo';
  /** First-order budget; null when no input has an uncertainty, or there are no sensitivities. */
  readonly budget: Budget | null;
}

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
}

/** The formulas whose name, title, room or input names hold every word of `search`. */
export function listFormulas(search = ''): readonly Formula[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return catalogue.filter(({ name, title, room, inputs }) => {
    const text = [name, title, room, ...inputs.map((input) => input.name)].join(' ').toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** The formula of that name. Refuses `calc/unknown-formula`. */
export function findFormula(name: string): Formula {
  const found = catalogue.find((formula) => formula.name === name);
  if (found) return found;
  const known = catalogue.map((formula) => formula.name);
  const near = nearest(name, known) || (listFormulas(name.replaceAll('-', ' '))[0]?.name ?? '');
  throw new Refusal(refuse('calc/unknown-formula', { name, known, near }));
}

/** Reads `name=value` texts. Refuses `calc/bad-assignment` and `calc/given-twice`. */
export function readAssignments(texts: readonly string[]): Record<string, string> {
  const assignments: Record<string, string> = Object.create(null);
  const faults: Fault[] = [];
  for (const text of texts) {
    const found = /^\s*([A-Za-z][\w-]*)\s*=(.*)$/s.exec(text);
    if (!found || found[2].trim() === '') faults.push(refuse('calc/bad-assignment', { text }));
    else if (found[1] in assignments) faults.push(refuse('calc/given-twice', { name: found[1] }));
    else assignments[found[1]] = found[2].trim();
  }
  if (faults.length > 0) throw new Refusal(faults);
  return assignments;
}

/**
 * Evaluates a formula on values as a person writes them, with uncertainty to first order and by Monte Carlo.
 * Where the two disagree, Monte Carlo counts. Refuses with every fault of the names first, then with every fault of the values.
 */
export function calculate(
  name: string,
  assignments: Readonly<Record<string, string>>,
  { samples = 8192, seed = 1 }: CalculateOptions = {},
): Calculation {
  const formula = findFormula(name);
  const misnamed = faultsOfNames(formula, assignments);
  if (misnamed.length > 0) throw new Refusal(misnamed);
  const quantities = readInputs(formula, assignments);
  const model = asModel(formula, quantities);
  refuseImpossible(formula, model);

  const warnings = warningsAbout(formula, model);
  const uncertain = model.inputs.some(({ spread }) => spread !== null);
  const outputs = uncertain ? spreadOutputs(model, samples, seed, warnings) : exactOutputs(model);
  return { formula, quantities, outputs, warnings, samples: uncertain ? samples : 0, seed };
}

function faultsOfNames(formula: Formula, assignments: Readonly<Record<string, string>>): Fault[] {
  const known = formula.inputs.map((input) => input.name);
  const faults = Object.keys(assignments)
    .filter((given) => !known.includes(given))
    .map((given) =>
      refuse('calc/unknown-input', { formula: formula.name, name: given, known, near: nearest(given, known) }),
    );
  const missing = formula.inputs.filter((input) => !(input.name in assignments));
  if (missing.length > 0) {
    faults.push(
      refuse('calc/missing-inputs', {
        formula: formula.name,
        missing: missing.map((input) => input.name),
        expected: missing.map((input) => `${input.name}: ${kinds[input.kind].title}, ${input.title}`),
        example: missing.map((input) => `${input.name}='${formula.example.inputs[input.name]}'`),
      }),
    );
  }
  return faults;
}

function readInputs(formula: Formula, assignments: Readonly<Record<string, string>>): Record<string, Quantity> {
  const quantities: Record<string, Quantity> = {};
  const faults: Fault[] = [];
  for (const input of formula.inputs) {
    const text = assignments[input.name];
    const reading = readQuantity(text, input.kind);
    if (!reading.ok) {
      const { fault, offset, length } = reading;
      faults.push({ ...fault, place: placeInside(input.name, text, offset, length) });
    } else if (!canExist(input, reading.quantity.value)) {
      const data: FaultData = { input: input.name, title: input.title, text, expected: existingRange(input) };
      faults.push(refuse('calc/cannot-exist', data, placeInside(input.name, text, 0, text.length)));
    } else quantities[input.name] = reading.quantity;
  }
  if (faults.length > 0) throw new Refusal(faults);
  return quantities;
}

/** A place inside one `name=value` argument. */
function placeInside(name: string, value: string, offset: number, length: number): Fault['place'] {
  const before = `${name}=`;
  return { file: `input ${name}`, line: 1, column: before.length + offset + 1, length, text: `${before}${value}` };
}

function existingRange({ kind, low, high, lowOpen }: FormulaInput): string {
  const { siUnit } = kinds[kind];
  const withUnit = (value: number) => (siUnit === '1' ? `${value}` : `${value} ${siUnit}`);
  const parts: string[] = [];
  if (low !== undefined) parts.push(lowOpen ? `more than ${withUnit(low)}` : `${withUnit(low)} or more`);
  if (high !== undefined) parts.push(`up to ${withUnit(high)}`);
  return parts.join(', ');
}

function refuseImpossible(formula: Formula, model: Model): void {
  const x = startValues(model);
  const broken = formula.requires.filter((condition) => !condition.holds(x));
  if (broken.length > 0)
    throw new Refusal(broken.map(({ says }) => refuse('calc/requirement', { formula: formula.name, says })));
  if (evaluateAt(model).status.ending === 'runaway')
    throw new Refusal(refuse('calc/runaway', { formula: formula.name, equation: formula.equation }));
}

function warningsAbout(formula: Formula, model: Model): Fault[] {
  const x = startValues(model);
  const warnings = formula.valid
    .filter((condition) => !condition.holds(x))
    .map(
      ({ says }): Fault => ({
        code: 'calc/outside-valid-range',
        severity: 'warning',
        data: { formula: formula.name, says },
      }),
    );
  const bare = model.inputs.filter(({ kind, spread }) => spread === null && kind !== 'count').map(({ id }) => id);
  if (bare.length > 0) warnings.push({ code: 'calc/no-uncertainty', severity: 'open', data: { inputs: bare } });
  return warnings;
}

function exactOutputs(model: Model): CalculatedOutput[] {
  const { y } = evaluateAt(model);
  return model.outputs.map(({ id, title, kind, unit }, o) => ({
    name: id,
    title,
    kind,
    unit,
    value: y[o],
    u: null,
    interval: null,
    method: 'exact',
    budget: null,
  }));
}

function spreadOutputs(model: Model, samples: number, seed: number, warnings: Fault[]): CalculatedOutput[] {
  const sens = sensitivities(model);
  const run = monteCarlo(model, { samples, seed });
  const lost = run.samples - run.endings.solved;
  if (lost > 0) {
    const data = { lost, samples: run.samples, runaway: run.endings.runaway };
    // An interval of the smaller part would speak for nothing.
    if (lost > run.samples / 2) throw new Refusal(refuse('calc/draws-lost', data));
    warnings.push({ code: 'calc/draws-lost', severity: 'warning', data });
  }
  const outputs = model.outputs.map(({ id, title, kind, unit }, o): CalculatedOutput => {
    const value = evaluateAt(model).y[o];
    const rows = budget(model, id, sens);
    const sample = run.outputs.get(id)!;
    const agree = rows !== null && methodsAgree(value, rows.u, sample);
    return {
      name: id,
      title,
      kind,
      unit,
      value,
      u: agree ? rows.u : sample.u,
      interval: sample.interval(0.95),
      method: agree ? 'first-order' : 'monte-carlo',
      budget: rows,
    };
  });
  const disagreeing = outputs.filter(({ method }) => method === 'monte-carlo').map(({ title }) => title);
  if (disagreeing.length > 0)
    warnings.push({ code: 'calc/methods-disagree', severity: 'warning', data: { outputs: disagreeing } });
  return outputs;
}

/** The uncertainties within 5 %, and the mean within a fifth of the uncertainty from the best value (common practice, no source). */
function methodsAgree(value: number, u: number, sample: Sample): boolean {
  const rounding = 1e-12 * Math.abs(value);
  return (
    Math.abs(u - sample.u) <= 0.05 * sample.u + rounding && Math.abs(value - sample.mean) <= 0.2 * sample.u + rounding
  );
}
