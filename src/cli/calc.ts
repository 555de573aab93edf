import { sayFault } from '../fault/fault.ts';
import {
  type CalculatedOutput,
  type Calculation,
  calculate,
  findFormula,
  listFormulas,
  readAssignments,
} from '../physics/calc.ts';
import { type Formula, validRange } from '../physics/formula.ts';
import { kinds } from '../quantity/kind.ts';
import { writeValue } from '../quantity/write.ts';
import type { Outcome } from './envelope.ts';
import { writeTable } from './text-table.ts';

/** The `calc` verb: the list of formulas, one formula explained, or its result. Refuses as `physics/calc` does. */
export function runCalc(name: string | undefined, assignments: readonly string[]): Outcome {
  if (name === undefined) return listOutcome(listFormulas());
  const formula = findFormula(name);
  if (assignments.length === 0) return explainOutcome(formula);
  return resultOutcome(calculate(name, readAssignments(assignments)));
}

function listOutcome(formulas: readonly Formula[]): Outcome {
  const rows = formulas.map(({ name, title, room }) => [name, title, room]);
  const table = writeTable([{ heading: 'formula' }, { heading: 'gives' }, { heading: 'room' }], rows);
  const text = `${table}\n\n\`uprate calc NAME\` explains a formula and shows an example.`;
  return { text, json: { formulas: formulas.map(describe) }, exit: 0 };
}

function explainOutcome(formula: Formula): Outcome {
  const inputs = formula.inputs.map(({ symbol, name, title }) => [symbol, name, title, formula.example.inputs[name]]);
  const outputs = formula.outputs.map(({ name, title, unit }) => [name, title, unit === '1' ? '' : unit]);
  const { example } = formula;
  const lines = [
    `${formula.title}`,
    '',
    `  ${formula.equation}`,
    '',
    writeTable(
      [{ heading: 'symbol' }, { heading: 'input' }, { heading: 'meaning' }, { heading: 'written as' }],
      inputs,
      '  ',
    ),
    '',
    writeTable([{ heading: 'gives' }, { heading: 'meaning' }, { heading: 'unit' }], outputs, '  '),
    '',
    `valid:   ${validRange(formula)}`,
    `source:  ${formula.source}`,
    '',
    'example:',
    `  ${exampleCommand(formula)}`,
    ...Object.entries(example.result).map(([name, text]) => `  published: ${name} ${text} (${example.source})`),
  ];
  return { text: lines.join('\n'), json: { formula: describe(formula) }, exit: 0 };
}

/** A command line that gives the example's result. */
export function exampleCommand({ name, example }: Formula): string {
  const inputs = Object.entries(example.inputs).map(([input, text]) => `${input}=${quoted(text)}`);
  return ['uprate calc', name, ...inputs].join(' ');
}

function quoted(text: string): string {
  return /^[\w.]+$/.test(text) ? text : `'${text}'`;
}

function describe(formula: Formula): object {
  const { name, title, equation, room, inputs, outputs, source, example } = formula;
  const conditions = { requires: formula.requires.map(({ says }) => says), valid: validRange(formula) };
  return {
    name,
    title,
    equation,
    room,
    inputs,
    outputs,
    source,
    ...conditions,
    example,
    command: exampleCommand(formula),
  };
}

function resultOutcome(calculation: Calculation): Outcome {
  const { formula, outputs, warnings, quantities, samples, seed } = calculation;
  const said = warnings.map((fault) => ({ ...fault, ...sayFault(fault) }));
  const lines = [
    formula.title,
    '',
    writeTable(
      [{ heading: 'result' }, { heading: 'value', align: 'right' }, { heading: '95 %' }, { heading: '' }],
      outputs.map((output) => [output.title, valueText(output), intervalText(output), methodText(output)]),
      '  ',
    ),
    ...outputs.slice(0, 1).flatMap((output) => budgetLines(output, calculation)),
    '',
    ...said.map(({ severity, found, expected }) => `${severity}: ${found}${expected ? ` (${expected})` : ''}`),
    ...(samples > 0 ? [`± is one standard uncertainty; 95 % from ${samples} draws, seed ${seed}`] : []),
    `equation: ${formula.equation}`,
    `source: ${formula.source}`,
  ];
  const json = {
    formula: formula.name,
    inputs: Object.entries(quantities).map(([name, { kind, value, unit, spread, text }]) => {
      return { name, kind, value, siUnit: kinds[kind].siUnit, unit, spread, text };
    }),
    outputs: outputs.map((output) => ({
      ...output,
      siUnit: kinds[output.kind].siUnit,
      text: valueText(output),
    })),
    warnings: said,
    equation: formula.equation,
    source: formula.source,
    samples,
    seed,
  };
  return { text: lines.join('\n'), json, exit: 0 };
}

function valueText({ value, u, unit, kind }: CalculatedOutput): string {
  return writeValue(value, u, unit, kind);
}

function intervalText({ interval, u, unit, kind }: CalculatedOutput): string {
  if (!interval || !u) return '';
  const ends = [interval.low, interval.high].map((end) => writeValue(end, u, unit, kind).split(' ± ')[0]);
  return ends.join(' to ');
}

function methodText({ method }: CalculatedOutput): string {
  return method === 'monte-carlo' ? 'by Monte Carlo; first order disagrees' : '';
}

/** What the first result's uncertainty is made of; the others' budgets are in the JSON. */
function budgetLines({ budget, title, unit, kind }: CalculatedOutput, { quantities }: Calculation): string[] {
  if (!budget || budget.rows.length === 0) return [];
  const differenceUnit = kind === 'temperature' ? 'K' : unit;
  const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
  const rows = budget.rows.map(({ input, contribution, share }) => [
    input,
    quantities[input].text,
    writeValue(Math.abs(contribution), null, differenceUnit, differenceKind),
    `${(100 * share).toFixed(1)} %`,
  ]);
  return [
    '',
    `what makes it uncertain: ${title}`,
    writeTable(
      [
        { heading: 'input' },
        { heading: 'given' },
        { heading: 'alone gives', align: 'right' },
        { heading: 'share', align: 'right' },
      ],
      rows,
      '  ',
    ),
  ];
}
