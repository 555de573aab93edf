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
 * The `open` verb: serves the study's page until it is interrupted.
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
  if (!reading.ok) process.stderr.write(`${reading.faults.map(writeFault).join('\n\n')}\n\n`);
  process.stdout.write(`Ladder of "${reading.ok ? reading.study.title : path}": ${server.url}\n`);
  if (browser && !(await openBrowser(server.url))) {
    process.stderr.write('No browser could be opened here: open the address above by hand.\n');
  }
  process.stderr.write('Ctrl-C ends it.\n');
  await interrupted();
  await server.close();
  return { text: 'Ended.', json: { url: server.url.replace(/\?.*/, '') }, exit: 0 };
}

/** Resolves at the first Ctrl-C or request to end; a second Ctrl-C ends the program at once. */
function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
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
