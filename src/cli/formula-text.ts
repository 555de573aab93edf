import { type Formula, validRange } from '../physics/formula.ts';
import type { Outcome } from './envelope.ts';
import { writeTable } from './text-table.ts';

/** The list of formulas, a table a room. */
export function listOutcome(formulas: readonly Formula[], search: string): Outcome {
  const json = { formulas: formulas.map(describe) };
  if (formulas.length === 0) {
    const text = `no formula has "${search}" in its name, title, inputs or results\n\n\`uprate calc\` lists all of them.`;
    return { text, json, exit: 0 };
  }
  const width = Math.max(...formulas.map(({ name }) => name.length));
  const rooms = [...new Set(formulas.map(({ room }) => room))].map((room) => {
    const rows = formulas
      .filter((formula) => formula.room === room)
      .map(({ name, title }) => [name.padEnd(width), title]);
    return writeTable([{ heading: room }, { heading: 'gives' }], rows);
  });
  const text = `${rooms.join('\n\n')}\n\n\`uprate calc NAME\` explains a formula and shows an example.`;
  return { text, json, exit: 0 };
}

/** One formula explained: equation, inputs, results, range, source, and an example that runs. */
export function explainOutcome(formula: Formula): Outcome {
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
    '',
    'any input can be the unknown: leave it out, give one result instead, and name it with --solve',
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
  const command = exampleCommand(formula);
  return { name, title, equation, room, inputs, outputs, source, ...conditions, example, command };
}
