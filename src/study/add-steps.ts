import { refuse } from '../fault/fault.ts';
import type { Edited } from './edit.ts';
import { textAt } from './outline.ts';
import { rawAt } from './raw.ts';
import { readStudy } from './read.ts';
import { readText } from './yaml-text.ts';

/**
 * The study's text with steps behind its last one, everything else as it was. `written`: the steps as a block list, two spaces in.
 * Refused: steps that stand on another one than the last, a ladder in brackets, and a text that would no longer read as a study.
 */
export function addSteps(text: string, file: string, behind: string, written: string): Edited {
  const reading = readText(text, file);
  if (!reading.ok) return reading;
  const { raw, lines } = reading;
  const list = rawAt(raw, ['steps']);
  const last = list?.shape === 'list' ? list.items.at(-1) : undefined;
  if (!list || !last) return { ok: false, faults: [refuse('study/not-a-study', {}, lines.place({ from: 0, to: 1 }))] };
  const id = textAt(last, ['id']) ?? '';
  if (id !== behind)
    return {
      ok: false,
      faults: [refuse('study/not-the-last-step', { step: behind, last: id }, lines.place(last.span))],
    };
  if (text[list.span.from] !== '-')
    return { ok: false, faults: [refuse('study/steps-in-brackets', {}, lines.place(list.span))] };

  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const indent = ' '.repeat(list.span.from - (text.lastIndexOf('\n', list.span.from - 1) + 1));
  const block = written
    .split('\n')
    .map((line) => (line === '' ? '' : indent + line.slice(2)))
    .join(newline);
  // The end of a block lies behind its last line break, where it has one; comments behind it stay behind the new steps.
  const end = last.span.to;
  const lineEnd = text[end - 1] === '\n' ? end : text.indexOf('\n', end) + 1 || text.length;
  const before = text.slice(0, lineEnd);
  const added = `${before}${before.endsWith('\n') ? '' : newline}${newline}${block}${newline}${text.slice(lineEnd)}`;
  const check = readStudy(added, file);
  return check.ok ? { ok: true, text: added } : { ok: false, faults: check.faults };
}
