import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const serverWords = {
  'server/wrong-host': (d) => ({
    found: `the request names the host "${d.host}"`,
    expected: `one of ${(d.hosts as readonly string[]).join(', ')}`,
    remedy: 'open the address that `uprate open` printed; for another machine give --host with this machine’s address',
  }),
  'server/wrong-origin': (d) => ({
    found: `the request comes from a page of "${d.origin}"`,
    expected: 'only this server’s own page asks for the study',
    remedy: 'open the address that `uprate open` printed',
  }),
  'server/no-token': () => ({
    found: 'the request carries no token of this session',
    expected: 'the address with its token, as `uprate open` printed it',
    remedy: 'open that address again; every start of `uprate open` makes a new one',
  }),
  'server/wrong-method': (d) => ({
    found: `the request wants to ${d.method}`,
    expected: 'GET or HEAD, or a POST of the page itself',
  }),
  'server/nothing-there': (d) => ({
    found: `nothing is served at "${d.path}"`,
    expected: 'the page at / or the study at /api/study',
  }),
  'server/study-gone': (d) => ({
    found: `"${d.file}" is no longer there or can’t be read`,
    expected: 'the study that was opened',
    remedy: 'put the file back; the page follows by itself',
  }),
  'server/changed-meanwhile': (d) => ({
    found: `"${d.file}" has changed since the page read it; nothing was written`,
    expected: 'the text that this change was decided on',
    remedy: 'look at the page again, it follows the file; then make the change once more',
  }),
  'server/nothing-to-undo': () => ({
    found: 'there is no change of this page to take back, or the file has been changed by other means since',
    remedy: 'undo it in the editor that changed the file last',
  }),
  'server/no-edit': () => ({
    found: 'the request holds no change of a field',
    expected: 'a version, and at least one field with its new value',
  }),
  'server/no-page': (d) => ({
    found: `the page’s files are not in "${d.folder}"`,
    expected: 'index.html and its assets',
    remedy: 'run `npm run build`',
  }),
} satisfies Words;
