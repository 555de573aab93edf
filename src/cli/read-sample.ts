import { readFile } from 'node:fs/promises';
import { type Fault, Refusal, refuse } from '../fault/fault.ts';

/** Numbers in the order they were taken, with the name they go by. */
export interface NamedSample {
  readonly name: string;
  readonly values: readonly number[];
}

const most = 100_000;

/** A file with one number a line; empty lines and those that begin with # are left out. */
export async function readSampleFile(path: string): Promise<NamedSample> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR')
      throw new Refusal(refuse('command/no-file', { path }));
    throw error;
  }
  const lines = text.replace(/^\ufeff/, '').split(/\r?\n/);
  const fields = lines.flatMap((line, i) => {
    const field = line.trim();
    if (field === '' || field.startsWith('#')) return [];
    return [{ field, place: { file: path, line: i + 1, column: line.indexOf(field) + 1, text: line } }];
  });
  return toSample(path, fields);
}

/** Numbers as given to an option, separated by commas or spaces. */
export function readSampleList(option: string, text: string): NamedSample {
  const fields = [...text.matchAll(/[^,;\s]+/g)].map(({ 0: field, index }) => ({
    field,
    place: { file: option, line: 1, column: index + 1, text },
  }));
  return toSample(option.replace(/^--/, ''), fields);
}

interface Field {
  readonly field: string;
  readonly place: { readonly file: string; readonly line: number; readonly column: number; readonly text: string };
}

function toSample(name: string, fields: readonly Field[]): NamedSample {
  if (fields.length > most) throw new Refusal(refuse('compare/too-many', { name, most }));
  const faults: Fault[] = [];
  const values = fields.map(({ field, place }) => {
    const value = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(field) ? Number(field) : Number.NaN;
    if (!Number.isFinite(value)) {
      const comma = /^[+-]?\d*,\d+$/.test(field) ? 1 : 0;
      const at = { ...place, length: field.length };
      if (faults.length < 5) faults.push(refuse('compare/not-a-number', { text: field.slice(0, 40), comma }, at));
    }
    return value;
  });
  if (faults.length > 0) throw new Refusal(faults);
  if (values.length < 2) throw new Refusal(refuse('compare/one-value', { name, count: values.length }));
  return { name, values };
}
