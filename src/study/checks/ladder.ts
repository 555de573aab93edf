import { type Fault, refuse } from '../../fault/fault.ts';
import type { Lines } from '../lines.ts';
import { keysAt, textAt } from '../outline.ts';
import { type Raw, rawAt, spanAt } from '../raw.ts';

/** The steps' names differ; changes in the first step are worth a word, for it is the board as delivered. */
export function checkLadder(file: Raw, lines: Lines): Fault[] {
  const faults: Fault[] = [];
  const seen = new Map<string, number>();
  for (const index of keysAt(file, ['steps']).map(Number)) {
    const path = ['steps', index, 'id'];
    const id = textAt(file, path);
    if (id === undefined) continue;
    const place = lines.place(spanAt(file, path));
    const first = seen.get(id);
    if (first !== undefined) faults.push(refuse('study/duplicate-step', { id, line: first }, place));
    else seen.set(id, place.line);
  }
  const changes = rawAt(file, ['steps', 0, 'changes']);
  if (changes?.shape === 'list' && changes.items.length > 0) {
    const place = lines.place(spanAt(file, ['steps', 0, 'changes'], 'key'));
    faults.push({ code: 'study/changed-at-first', severity: 'warning', data: {}, place });
  }
  return faults;
}
