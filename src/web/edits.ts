import { signal } from '@preact/signals';
import { fetchStudy, studySource } from './study-source.ts';

/** A field's new value and where it comes from. */
export interface Change {
  readonly path: string;
  readonly value: string;
  readonly source: string;
}

/** Whether there is a change of this page that can be taken back. */
export const canUndo = signal(false);

/** Writes a change into the study's file, decided on the text this page shows: what to tell the person. */
export function changeStudy(change: Change): Promise<string> {
  return post('/api/edits', { edits: [change] }, `Written into ${change.path}.`);
}

/** Takes the last change of this page back, if the file hasn't been changed by other means since. */
export function undoChange(): Promise<string> {
  return post('/api/undo', {}, 'Taken back.');
}

async function post(path: string, body: object, done: string): Promise<string> {
  const source = studySource.peek();
  if (source.state !== 'here') return 'There is no study to change.';
  try {
    const answer = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...body, version: source.version }),
    });
    const content = await answer.json();
    if (!answer.ok) {
      const { found, remedy } = content.error;
      return [found, remedy].filter(Boolean).join('; ');
    }
    canUndo.value = content.undoable > 0;
    // The next change is decided on the new text: the page has to have it before anything else can be asked for.
    await fetchStudy();
    return done;
  } catch {
    return 'The server does not answer; nothing was written.';
  }
}
