import { signal } from '@preact/signals';

/** The study's text as the server last gave it. */
export type StudySource =
  | { readonly state: 'loading' }
  | { readonly state: 'here'; readonly file: string; readonly text: string; readonly version: string }
  | { readonly state: 'failed'; readonly found: string; readonly remedy: string };

export const studySource = signal<StudySource>({ state: 'loading' });

/** Whether the server can be reached: while it can't, the page shows what it last knew, and says so. */
export const connected = signal(true);

/** Asks for the study now and whenever it may have changed: on the server's word, and when the page comes to the front again. */
export function followStudy(): void {
  void fetchStudy();
  const events = new EventSource('/api/events');
  events.addEventListener('changed', () => void fetchStudy());
  events.addEventListener('open', () => {
    if (!connected.value) void fetchStudy();
    connected.value = true;
  });
  events.addEventListener('error', () => {
    connected.value = false;
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void fetchStudy();
  });
}

/** Fetches the study, and shows it if it is another one than before. */
export async function fetchStudy(): Promise<void> {
  const known = studySource.peek();
  try {
    const answer = await fetch('/api/study');
    const content = await answer.json();
    if (!answer.ok) {
      studySource.value = { state: 'failed', found: content.error.found, remedy: content.error.remedy ?? '' };
    } else if (known.state !== 'here' || known.version !== content.version) {
      studySource.value = { state: 'here', file: content.file, text: content.text, version: content.version };
    }
  } catch {
    connected.value = false;
    if (known.state === 'loading') {
      studySource.value = {
        state: 'failed',
        found: 'the server does not answer',
        remedy: 'start `uprate open` again and use the address it prints',
      };
    }
  }
}
