import { type Fault, sayFault } from '../fault/fault.ts';
import type { Calculation } from '../physics/calc.ts';
import type { CalculatedOutput } from '../physics/results.ts';
import type { Solution } from '../physics/solve-for.ts';
import { kinds } from '../quantity/kind.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { writeValue } from '../quantity/write.ts';
import type { Outcome } from './envelope.ts';
import { writeTable } from './text-table.ts';

type Given = Readonly<Record<string, Quantity>>;

/** A formula's results as text and as data. */
export function resultOutcome(calculation: Calculation): Outcome {
  const { formula, outputs, warnings, quantities, samples, seed } = calculation;
  const lines = [
    formula.title,
    '',
    resultTable('result', outputs),
    ...outputs.flatMap((output) => budgetLines(output, quantities)),
    '',
    ...warningLines(warnings),
    ...closingLines(calculation),
  ];
  const json = {
    formula: formula.name,
    inputs: inputsJson(quantities),
    outputs: outputs.map(outputJson),
    warnings: warnings.map(spoken),
    equation: formula.equation,
    source: formula.source,
    samples,
    seed,
  };
  return { text: lines.join('\n'), json, exit: 0 };
}

/** What an input must be, once for each value found. */
export function solutionOutcome(solution: Solution): Outcome {
  const { formula, unknown, target, quantities, roots, samples, seed } = solution;
  const question = `${unknown.name} for ${target.name} ${quantities[target.name].text}`;
  const several = roots.length > 1 ? [`${roots.length} values of ${unknown.name} give it:`, ''] : [];
  const lines = [
    `${formula.title}: ${question}`,
    '',
    ...several,
    ...roots.flatMap(({ solved, outputs, warnings }, i) => [
      ...(i > 0 ? [''] : []),
      resultTable('solved', [{ ...solved, title: `${unknown.name}: ${unknown.title}` }]),
      ...(outputs.length > 0 ? ['', resultTable('then', outputs)] : []),
      ...budgetLines({ ...solved, title: unknown.name }, quantities),
      '',
      ...warningLines(warnings),
    ]),
    ...closingLines(solution),
  ];
  const json = {
    formula: formula.name,
    solvedFor: unknown.name,
    inputs: inputsJson(quantities),
    roots: roots.map(({ solved, outputs, warnings }) => ({
      ...outputJson(solved),
      outputs: outputs.map(outputJson),
      warnings: warnings.map(spoken),
    })),
    equation: formula.equation,
    source: formula.source,
    samples,
    seed,
  };
  return { text: lines.join('\n'), json, exit: 0 };
}

function resultTable(heading: string, outputs: readonly CalculatedOutput[]): string {
  const rows = outputs.map((output) => [output.title, valueText(output), intervalText(output), methodText(output)]);
  const columns = [{ heading }, { heading: 'value', align: 'right' }, { heading: '95 %' }, { heading: '' }] as const;
  const used = rows.some(([, , interval]) => interval !== '') ? columns.length : 2;
  return writeTable(
    columns.slice(0, used),
    rows.map((row) => row.slice(0, used)),
    '  ',
  );
}

function closingLines({ formula, samples, seed }: Pick<Calculation, 'formula' | 'samples' | 'seed'>): string[] {
  return [
    ...(samples > 0 ? [`± is one standard uncertainty; 95 % from ${samples} draws, seed ${seed}`] : []),
    `equation: ${formula.equation}`,
    `source: ${formula.source}`,
  ];
}

function warningLines(warnings: readonly Fault[]): string[] {
  return warnings
    .map(spoken)
    .map(({ severity, found, expected }) => `${severity}: ${found}${expected ? ` (${expected})` : ''}`);
}

function spoken(fault: Fault) {
  return { ...fault, ...sayFault(fault) };
}

function inputsJson(quantities: Given): object[] {
  return Object.entries(quantities).map(([name, { kind, value, unit, spread, text }]) => {
    return { name, kind, value, siUnit: kinds[kind].siUnit, unit, spread, text };
  });
}

function outputJson(output: CalculatedOutput): object {
  return { ...output, siUnit: kinds[output.kind].siUnit, text: valueText(output) };
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

/** What a result's uncertainty is made of. */
function budgetLines({ budget, title, unit, kind }: CalculatedOutput, quantities: Given): string[] {
  if (!budget || budget.u === 0) return [];
  const differenceUnit = kind === 'temperature' ? 'K' : unit;
  const differenceKind = kind === 'temperature' ? 'temperature-difference' : kind;
  const rows = budget.rows
    .filter(({ contribution }) => contribution !== 0)
    .map(({ input, contribution, share }) => [
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
