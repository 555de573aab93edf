import type { Ending, Model, Status } from '../metrology/model.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';

/** A number that a formula asks for. */
export interface FormulaInput {
  /** Kebab-case; what is written in front of the equals sign. */
  readonly name: string;
  /** Its letter in the equation. */
  readonly symbol: string;
  readonly title: string;
  readonly kind: KindName;
  /** Unit it is usually given in. */
  readonly unit: string;
  /** Least and greatest value that can exist [SI]. */
  readonly low?: number;
  readonly high?: number;
  /** The least value itself can't exist either. */
  readonly lowOpen?: true;
}

/** A number that a formula gives. */
export interface FormulaOutput {
  readonly name: string;
  readonly title: string;
  readonly kind: KindName;
  readonly unit: string;
  /** Input whose unit the result is shown in, instead of `unit`. */
  readonly unitOf?: string;
}

/** Something that must hold of a formula's inputs [SI, in their order]. */
export interface Condition {
  readonly says: string;
  holds(x: Float64Array): boolean;
}

/** A published example, inputs and results as a person would write them. */
export interface Example {
  readonly inputs: Readonly<Record<string, string>>;
  /** Published results by output name. */
  readonly result: Readonly<Record<string, string>>;
  readonly source: string;
  /** Largest relative difference that the published digits allow [1]. */
  readonly tolerance: number;
}

/** One entry of the formula catalogue: a law with its symbols, its source and an example that runs. */
export interface Formula {
  /** Kebab-case. */
  readonly name: string;
  readonly title: string;
  readonly equation: string;
  /** Where it belongs: "power path", "heat path" … */
  readonly room: string;
  readonly inputs: readonly FormulaInput[];
  readonly outputs: readonly FormulaOutput[];
  readonly source: string;
  /** What must hold for there to be a result at all. */
  readonly requires: readonly Condition[];
  /** Where the law is known to hold; outside there is a result with a warning. */
  readonly valid: readonly Condition[];
  readonly example: Example;
  /** Reads `x`, writes `y` [SI, in the order of inputs and outputs]. No allocation. */
  compute(x: Float64Array, y: Float64Array): Extract<Ending, 'solved' | 'runaway'>;
}

/** The range a formula is known to hold in, in words. */
export function validRange(formula: Formula): string {
  return formula.valid.map((condition) => condition.says).join('; ');
}

/** Whether a value can exist [SI]. */
export function canExist(input: FormulaInput, value: number): boolean {
  if (!Number.isFinite(value)) return false;
  if (input.low !== undefined && (value < input.low || (input.lowOpen && value === input.low))) return false;
  return input.high === undefined || value <= input.high;
}

/** What can exist, in words: "more than 0 Ω, up to 1 MΩ". */
export function existingRange({ kind, low, high, lowOpen }: FormulaInput): string {
  const { siUnit } = kinds[kind];
  const withUnit = (value: number) => (siUnit === '1' ? `${value}` : `${value} ${siUnit}`);
  const parts: string[] = [];
  if (low !== undefined) parts.push(lowOpen ? `more than ${withUnit(low)}` : `${withUnit(low)} or more`);
  if (high !== undefined) parts.push(`up to ${withUnit(high)}`);
  return parts.join(', ');
}

/** A formula at given inputs, as a model: budget and Monte Carlo apply. An input that can't exist ends as `infeasible`. */
export function asModel(formula: Formula, quantities: Readonly<Record<string, Quantity>>): Model {
  const status: Status = { ending: 'solved', residual: 0, passes: 1 };
  const { inputs, requires } = formula;
  return {
    inputs: inputs.map(({ name, kind }) => {
      const { value, unit, spread, source = '' } = quantities[name];
      return { id: name, kind, unit, value, spread, source };
    }),
    outputs: formula.outputs.map(({ name, kind, unit, unitOf, title }) => ({
      id: name,
      kind,
      unit: unitOf === undefined ? unit : quantities[unitOf].unit,
      title,
    })),
    evaluate(x, y) {
      status.ending = 'solved';
      for (let i = 0; i < inputs.length; i++) if (!canExist(inputs[i], x[i])) status.ending = 'infeasible';
      for (let i = 0; i < requires.length; i++) if (!requires[i].holds(x)) status.ending = 'infeasible';
      if (status.ending === 'solved') status.ending = formula.compute(x, y);
      if (status.ending !== 'solved') y.fill(Number.NaN);
      return status;
    },
  };
}
