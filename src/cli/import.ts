import { Refusal, refuse } from '../fault/fault.ts';
import type { Detection } from '../runs/detect.ts';
import { importLog } from '../runs/import.ts';
import type { Run } from '../runs/run.ts';
import type { Outcome } from './envelope.ts';
import { locateStudy } from './load-study.ts';
import { writeTable } from './text-table.ts';

export interface ImportCommandOptions {
  readonly id?: string;
  readonly delimiter?: string;
  readonly time?: string;
  /** "heading=unit" each; nothing behind the equals sign takes a unit away. */
  readonly unit?: readonly string[];
  /** Headings of columns that hold words. */
  readonly text?: readonly string[];
  /** Leave out a last line that was cut off. */
  readonly allowCut?: boolean;
  /** Show what was found, store nothing. */
  readonly dry?: boolean;
  readonly progress?: (text: string) => void;
}

/** The `import` verb: each log into a run of its own. What was stored before a refusal stays; the refused log leaves nothing. */
export async function runImport(
  studyArgument: string,
  files: readonly string[],
  options: ImportCommandOptions,
): Promise<Outcome> {
  const { folder } = await locateStudy(studyArgument);
  if (options.id !== undefined && files.length > 1)
    throw new Refusal(refuse('run/one-id', { id: options.id, files: files.length }));
  const units = unitsGiven(options.unit ?? []);
  const texts: string[] = [];
  const runs: (Run | { found: Detection })[] = [];
  for (const file of files) {
    let found: Detection | undefined;
    const run = await importLog(folder, file, {
      ...options,
      units,
      delimiter: options.delimiter?.replace('\\t', '\t'),
      accept: (detection) => {
        found = detection;
        return options.dry !== true;
      },
    });
    texts.push(`${file}\n${describeDetection(found!)}`);
    if (run)
      texts.push(
        `stored as run "${run.id}": ${rowCount(run.rows)} over ${run.duration.toFixed(1)} s\n${run.notes.map((note) => `note: ${note}\n`).join('')}`,
      );
    else texts.push('nothing stored (--dry)\n');
    runs.push(run ?? { found: found! });
  }
  return { text: texts.join('\n'), json: { runs }, exit: 0 };
}

/** "power=W" as heading and unit; a heading may hold an equals sign, a unit none. */
function unitsGiven(assignments: readonly string[]): Record<string, string> {
  const pairs = assignments.map((text): [string, string] => {
    const [, heading, unit] = /^(.+)=([^=]*)$/.exec(text) ?? [];
    if (heading === undefined) throw new Refusal(refuse('run/bad-unit-assignment', { text }));
    return [heading, unit];
  });
  return Object.fromEntries(pairs);
}

/** "1 row", "60 rows" */
export function rowCount(rows: number): string {
  return `${rows} ${rows === 1 ? 'row' : 'rows'}`;
}

const delimiterNames = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' };

function describeDetection(detection: Detection): string {
  const { columns, time } = detection;
  const rows = columns.map(({ heading, type, unit }, c) => [
    heading,
    c === time ? `time, ${detection.timeFormat}` : type,
    unit?.unit ?? '',
    unit?.kind ?? '',
  ]);
  const table = writeTable(
    [{ heading: 'column' }, { heading: 'taken as' }, { heading: 'unit' }, { heading: 'kind' }],
    rows,
    '  ',
  );
  const mark = detection.decimal === ',' ? ', with decimal commas' : '';
  return `  separated by ${delimiterNames[detection.delimiter]}${mark}; give --delimiter, --time, --unit or --text to take it otherwise\n${table}`;
}
