import { useSignal } from '@preact/signals';
import type { CalculatedOutput } from '../../physics/results.ts';
import type { Spread } from '../../quantity/spread.ts';
import { writeForFile } from '../../quantity/write-for-file.ts';
import { type Change, canUndo, changeStudy, undoChange } from '../edits.ts';
import { study } from '../plans.ts';

/** Puts a result into a field of the study that holds the same kind of quantity, with its source; and takes it back. */
export function TakeIntoStudy({ output, source }: { output: CalculatedOutput; source: string }) {
  const field = useSignal('');
  const said = useSignal('');
  const read = study.value;
  if (!read) return null;
  const fields = fieldsOf(output.kind);
  if (fields.length === 0) return null;
  const now = fields.find(({ path }) => path === field.value);
  const take = async () => {
    const change: Change = { path: field.value, value: textOf(output), source };
    said.value = await changeStudy(change);
  };
  return (
    <details class="take">
      <summary>Take into the study</summary>
      <label class="field">
        <span>Field</span>
        <select
          value={field.value}
          onChange={(event) => {
            field.value = event.currentTarget.value;
            said.value = '';
          }}
        >
          <option value="">choose one</option>
          {fields.map(({ path }) => (
            <option key={path} value={path}>
              {path}
            </option>
          ))}
        </select>
      </label>
      {now && (
        <p class="about">
          {now.text} becomes {textOf(output)}, source “{source}”. Comments and everything else in the file stay.
        </p>
      )}
      <p class="take-buttons">
        <button type="button" disabled={!now} onClick={take}>
          Put it in
        </button>
        {canUndo.value && (
          <button
            type="button"
            class="quiet"
            onClick={async () => {
              said.value = await undoChange();
            }}
          >
            Take the last change back
          </button>
        )}
      </p>
      <p role="status" class="about">
        {said.value}
      </p>
    </details>
  );
}

function fieldsOf(kind: CalculatedOutput['kind']): { path: string; text: string }[] {
  const found = new Map<string, string>();
  for (const step of study.value?.steps ?? [])
    for (const [quantity, path] of step.quantities) if (quantity.kind === kind) found.set(path, quantity.text);
  return [...found].map(([path, text]) => ({ path, text }));
}

/** The result as a study would say it, with the digits its uncertainty deserves. */
function textOf({ value, u, unit, kind }: CalculatedOutput): string {
  const spread: Spread | null = u !== null && u > 0 ? { shape: 'normal', u: Number(u.toPrecision(2)) } : null;
  return writeForFile(Number(value.toPrecision(6)), spread, unit, kind);
}
