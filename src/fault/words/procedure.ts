import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) ? names.join(', ') : String(names));

export const procedureWords = {
  'procedure/nothing-to-do': (d) => ({
    found: d.first
      ? `"${d.step}" is the first step, the board as delivered: there is nothing to do`
      : `step "${d.step}" changes nothing: there is nothing to do`,
    expected: 'a step with changes',
    remedy: 'name a later step',
  }),
  'procedure/no-such-item': (d) => ({
    found: `the procedure of "${d.step}" has no item "${d.item}"`,
    expected: `a number from 1 to ${d.most}, or one of: ${list(d.known)}`,
    remedy: d.nearest ? `did you mean "${d.nearest}"?` : 'look at the list first',
  }),
  'procedure/bad-power': (d) => ({
    found: `"${d.text}" is no ${d.what}`,
    expected: 'a power above zero with its unit, such as 10 W',
  }),
  'procedure/no-such-form': (d) => ({
    found: `"${d.path}" says neither HTML nor Markdown`,
    expected: 'a file name that ends in .html or .md',
  }),
  'procedure/file-exists': (d) => ({
    found: `there is already a file "${d.path}", and it is not a printed procedure`,
    remedy: 'give another name; only a printed procedure is written over',
  }),
  'procedure/bad-ticks': (d) => ({
    found: `"${d.path}" is no record of ticks: ${d.what}`,
    expected: 'the file as `uprate procedure --tick` writes it',
    remedy: 'mend it, or move it away and tick again',
  }),
  'undo/not-before': (d) => ({
    found: `step "${d.to}" doesn't come before "${d.step}"`,
    expected: `one of: ${list(d.known)}`,
    remedy: 'name an earlier step with --to; left out, it is the board as delivered',
  }),
  'undo/nothing-to-undo': (d) => ({
    found: `from "${d.step}" there is no way back: it is the board as delivered`,
    expected: 'a step with changes',
    remedy: 'name a later step',
  }),
} satisfies Words;
