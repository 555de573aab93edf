import { runCalc } from '../src/cli/calc.ts';
import { exampleCommand } from '../src/cli/formula-text.ts';
import { existingRange, type Formula, validRange } from '../src/physics/formula.ts';

/** The catalogue as a chapter of the documentation, a section a room, each formula with its example and what it prints. */
export function writeFormulaChapter(formulas: readonly Formula[]): string {
  const rooms = [...new Set(formulas.map(({ room }) => room))];
  const parts = [
    '# The formulas',
    'Written from the catalogue by `npm run results`. Each formula is a calculator: `uprate calc NAME` explains it, `uprate calc NAME input=value …` evaluates it with the uncertainty of its inputs, `--solve INPUT` turns it round. Every input can carry an uncertainty; [quantities.md](quantities.md) says how it is written.',
    rooms
      .map((room) => {
        const names = formulas.filter((formula) => formula.room === room).map(({ name }) => `[${name}](#${name})`);
        return `- ${room}: ${names.join(', ')}`;
      })
      .join('\n'),
    ...rooms.flatMap((room) => [`## ${capital(room)}`, ...formulas.filter((it) => it.room === room).map(writeFormula)]),
  ];
  return `${parts.join('\n\n')}\n`;
}

function writeFormula(formula: Formula): string {
  const { name, title, equation, inputs, outputs, requires, source, example } = formula;
  const symbols = [
    ...inputs.map((input) => [code(input.name), input.symbol, input.title, unitText(input.unit), existingRange(input)]),
    ...outputs.map((output) => [code(output.name), '', `result: ${output.title}`, unitText(output.unit), '']),
  ];
  const published = Object.entries(example.result).map(([output, text]) => `${output} ${text}`);
  return [
    `### ${name}`,
    `${capital(title)}.`,
    `    ${equation}`,
    table(['name', 'symbol', 'meaning', 'unit', 'can be'], symbols),
    [
      ...(requires.length > 0
        ? [`- There is a result only when: ${requires.map(({ says }) => says).join('; ')}.`]
        : []),
      `- Valid: ${validRange(formula)}.`,
      `- Source: ${source}.`,
      `- Example: published ${published.join(', ')} (${example.source}).`,
    ].join('\n'),
    `\`\`\`\n$ ${exampleCommand(formula)}\n${exampleOutput(formula)}\n\`\`\``,
  ].join('\n\n');
}

/** What the example prints, down to its results. */
function exampleOutput({ name, example }: Formula): string {
  const { text } = runCalc(
    name,
    Object.entries(example.inputs).map(([input, value]) => `${input}=${value}`),
  );
  return text.split('\n\n').slice(0, 2).join('\n\n');
}

function unitText(unit: string): string {
  return unit === '1' ? '' : unit;
}

function code(text: string): string {
  return `\`${text}\``;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(headings), line(headings.map(() => '---')), ...rows.map(line)].join('\n');
}
