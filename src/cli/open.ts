import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { writeFault } from '../fault/fault.ts';
import { startServer } from '../server/server.ts';
import { readStudy } from '../study/read.ts';
import type { Outcome } from './envelope.ts';
import { locateStudy } from './load-study.ts';

export interface OpenOptions {
  readonly host: string;
  readonly port: number;
  readonly browser: boolean;
}

/**
 * The `open` verb: serves the study's page; the program lives until it is interrupted.
 * A study with faults is served as well: the page shows them, and follows when the file is corrected.
 */
export async function runOpen(studyArgument: string, { host, port, browser }: OpenOptions): Promise<Outcome> {
  const { text, path } = await locateStudy(studyArgument);
  const reading = readStudy(text, path);
  const server = await startServer({
    path,
    file: path,
    webRoot: fileURLToPath(new URL('../web', import.meta.url)),
    host,
    port,
  });
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void server.close());
  if (!reading.ok) process.stderr.write(`${reading.faults.map(writeFault).join('\n\n')}\n\n`);
  if (browser)
    void openBrowser(server.url).then((opened) => {
      if (!opened) process.stderr.write('No browser could be opened here: open the address by hand.\n');
    });
  const title = reading.ok ? reading.study.title : path;
  return {
    text: `Ladder of "${title}": ${server.url}`,
    json: { title, url: server.url },
    exit: 0,
    notes: ['Ctrl-C ends it'],
  };
}

/** Asks the system to open its browser: false where there is none to ask, or it refuses. */
function openBrowser(url: string): Promise<boolean> {
  const [program, ...before] = {
    darwin: ['open'],
    win32: ['rundll32', 'url.dll,FileProtocolHandler'],
  }[process.platform as string] ?? ['xdg-open'];
  return new Promise((resolve) => {
    const child = spawn(program!, [...before, url], { stdio: 'ignore', detached: true });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
    // A program that is still running is a browser at work: it stays when this one ends.
    child.once('spawn', () => {
      child.unref();
      setTimeout(() => resolve(true), 2000).unref();
    });
  });
}
