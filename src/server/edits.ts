import { randomUUID } from 'node:crypto';
import { renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { refuse } from '../fault/fault.ts';
import { type Edit, editStudy } from '../study/edit.ts';
import { answerFault } from './policy.ts';
import { readText, type StudyText } from './watch.ts';

/** Fields to change, and the version of the text that the person saw when deciding so. */
interface EditRequest {
  readonly version: string;
  readonly edits: readonly Edit[];
}

/** A body larger than this holds no edit of a few fields [bytes]. */
const largestBody = 64 * 1024;

/** Texts that can be gone back to. */
const mostUndone = 50;

/**
 * `POST /api/edits` changes fields of the study in place, `POST /api/undo` takes the last such change back.
 * Both name the version they were decided on, and refuse when the file is another one by now: nothing is overwritten that nobody has seen.
 */
export function addEdits(app: Hono, path: string, file: string): void {
  const before: { readonly text: string; readonly version: string }[] = [];
  app.use('/api/edits', bodyLimit({ maxSize: largestBody }));
  app.use('/api/undo', bodyLimit({ maxSize: largestBody }));

  app.post('/api/edits', async (context) => {
    const request = asEdits(await context.req.json().catch(() => null));
    if (!request) return answerFault(context, 400, refuse('server/no-edit'));
    const now = unchanged(context, request.version);
    if (now instanceof Response) return now;
    const edited = editStudy(now.text, file, request.edits);
    if (!edited.ok) return answerFault(context, 422, edited.faults[0]);
    const version = write(edited.text);
    before.push({ text: now.text, version });
    if (before.length > mostUndone) before.shift();
    return context.json({ version, undoable: before.length });
  });

  app.post('/api/undo', async (context) => {
    const request = (await context.req.json().catch(() => null)) as { version?: unknown } | null;
    const now = unchanged(context, String(request?.version));
    if (now instanceof Response) return now;
    const last = before.at(-1);
    // The text may be the same version again only by way of our own changes: anything else has ended the way back.
    if (!last || last.version !== now.version) return answerFault(context, 409, refuse('server/nothing-to-undo'));
    before.pop();
    return context.json({ version: write(last.text), undoable: before.length });
  });

  function unchanged(context: Context, version: string): StudyText | Response {
    const now = readText(path);
    if (!now) return answerFault(context, 404, refuse('server/study-gone', { file }));
    return now.version === version ? now : answerFault(context, 409, refuse('server/changed-meanwhile', { file }));
  }

  /** All of the new text or none of it: written beside, then renamed over. */
  function write(text: string): string {
    const beside = `${path}.${randomUUID()}.tmp`;
    try {
      writeFileSync(beside, text, { mode: statSync(path).mode });
      renameSync(beside, path);
    } catch (error) {
      rmSync(beside, { force: true });
      throw error;
    }
    return readText(path)!.version;
  }
}

function asEdits(body: unknown): EditRequest | null {
  const { version, edits } = (body ?? {}) as Partial<EditRequest>;
  if (typeof version !== 'string' || !Array.isArray(edits) || edits.length === 0) return null;
  const sound = edits.every(
    ({ path, value, source }: Partial<Edit>) =>
      typeof path === 'string' && typeof value === 'string' && (source === undefined || typeof source === 'string'),
  );
  return sound ? { version, edits } : null;
}
