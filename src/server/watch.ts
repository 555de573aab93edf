import { createHash } from 'node:crypto';
import { readFileSync, watch } from 'node:fs';
import { basename, dirname } from 'node:path';

/** An editor writes in several goes; one change is told when it has been quiet this long [ms]. */
const QUIET = 80;

export interface StudyText {
  readonly text: string;
  /** SHA-256 of the text. */
  readonly version: string;
}

/** The study's text and version; null when the file is gone or can't be read. */
export function readText(path: string): StudyText | null {
  try {
    const text = readFileSync(path, 'utf8');
    return { text, version: createHash('sha256').update(text).digest('hex') };
  } catch {
    return null;
  }
}

export interface StudyWatch {
  /** Calls `tell` with the new version (null: gone) whenever the content has changed; returns what ends it. */
  subscribe(tell: (version: string | null) => void): () => void;
  close(): void;
}

/**
 * Tells when the study's content has changed, by whatever program and in whatever way.
 * The folder is watched, not the file: many editors write a new file and rename it over the old one.
 */
export function watchStudy(path: string): StudyWatch {
  const listeners = new Set<(version: string | null) => void>();
  let known = readText(path)?.version ?? null;
  let timer: NodeJS.Timeout | undefined;

  const look = () => {
    const version = readText(path)?.version ?? null;
    if (version === known) return;
    known = version;
    for (const tell of listeners) tell(version);
  };
  const watcher = watch(dirname(path), (_, name) => {
    if (name !== null && name !== basename(path)) return;
    clearTimeout(timer);
    timer = setTimeout(look, QUIET);
  });
  // A folder that can no longer be watched (moved, unmounted): the page still asks again whenever it comes to the front.
  watcher.on('error', () => watcher.close());

  return {
    subscribe(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    close() {
      clearTimeout(timer);
      watcher.close();
      listeners.clear();
    },
  };
}
