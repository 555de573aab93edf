import { type Fault, type FaultData, Refusal, refuse } from '../fault/fault.ts';
import { nearest } from '../fault/nearest.ts';
import { type KindName, kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { readQuantity } from '../quantity/read.ts';
import { canExist, existingRange, type Formula, type FormulaInput } from './formula.ts';

/** Values as a person writes them, by name. */
export type Assignments = Readonly<Record<string, string>>;

/** Reads `name=value` texts. Refuses `calc/bad-assignment` and `calc/given-twice`. */
export function readAssignments(texts: readonly string[]): Assignments {
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

/** Names that a formula doesn't know, results that were given as inputs, and inputs that are missing. */
export function faultsOfNames(formula: Formula, inputs: readonly FormulaInput[], assignments: Assignments): Fault[] {
  const known = inputs.map((input) => input.name);
  const faults = Object.keys(assignments)
    .filter((given) => !known.includes(given))
    .map((name) => {
      if (formula.outputs.some((output) => output.name === name))
        return refuse('calc/output-given', { formula: formula.name, name, known });
      return refuse('calc/unknown-input', { formula: formula.name, name, known, near: nearest(name, known) });
    });
  const missing = inputs.filter((input) => !(input.name in assignments));
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

/** Reads every input's text. Refuses with all that can't be read or can't exist. */
export function readInputs(inputs: readonly FormulaInput[], assignments: Assignments): Record<string, Quantity> {
  const quantities: Record<string, Quantity> = {};
  const faults: Fault[] = [];
  for (const input of inputs) {
    const text = assignments[input.name];
    const reading = readNamed(input.name, text, input.kind);
    if ('code' in reading) faults.push(reading);
    else if (!canExist(input, reading.value)) {
      const data: FaultData = { input: input.name, title: input.title, text, expected: existingRange(input) };
      faults.push(refuse('calc/cannot-exist', data, placeInside(input.name, text, 0, text.length)));
    } else quantities[input.name] = reading;
  }
  if (faults.length > 0) throw new Refusal(faults);
  return quantities;
}

/** One value, or why it can't be read. */
export function readNamed(name: string, text: string, kind: KindName): Quantity | Fault {
  const reading = readQuantity(text, kind);
  if (reading.ok) return reading.quantity;
  return { ...reading.fault, place: placeInside(name, text, reading.offset, reading.length) };
}

/** A place inside one `name=value` argument. */
function placeInside(name: string, value: string, offset: number, length: number): Fault['place'] {
  const before = `${name}=`;
  return { file: `input ${name}`, line: 1, column: before.length + offset + 1, length, text: `${before}${value}` };
}
