import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import { refuse } from '../fault/fault.ts';
import type { Asset } from './assets.ts';
import { addEdits } from './edits.ts';
import { type Access, answerFault, contentPolicy, guard } from './policy.ts';
import { readText, type StudyWatch } from './watch.ts';

/** What the server shows. */
export interface Shown {
  /** Path of study.yaml. */
  readonly path: string;
  /** The same path as people know it, for messages. */
  readonly file: string;
  readonly assets: ReadonlyMap<string, Asset>;
  readonly watch: StudyWatch;
}

/** The server's answers: the page, the study's text, word of its changes, and the person's edits. */
export function makeRoutes(access: Access, { path, file, assets, watch }: Shown): Hono {
  const app = new Hono();
  app.use(contentPolicy, guard(access));

  app.get('/api/study', (context) => {
    const study = readText(path);
    if (!study) return answerFault(context, 404, refuse('server/study-gone', { file }));
    return context.json({ file, ...study });
  });

  addEdits(app, path, file);

  app.get('/api/events', (context) =>
    streamSSE(context, async (stream) => {
      await new Promise<void>((ended) => {
        const stop = watch.subscribe((version) => {
          void stream.writeSSE({ event: 'changed', data: JSON.stringify({ version }) });
        });
        stream.onAbort(() => {
          stop();
          ended();
        });
        void stream.writeSSE({ event: 'ready', data: '{}' });
      });
    }),
  );

  app.get('*', (context) => {
    const asset = assets.get(context.req.path);
    if (!asset) return answerFault(context, 404, refuse('server/nothing-there', { path: context.req.path }));
    return context.body(asset.content, 200, { 'content-type': asset.type });
  });

  app.onError((error, context) => {
    console.error(error);
    return context.json({ error: { code: 'server/unexpected', found: 'the server could not answer' } }, 500);
  });
  return app;
}
