import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import type { Hono } from 'hono';
import { readAssets } from './assets.ts';
import { allowedHosts, shownHost } from './hosts.ts';
import { makeRoutes } from './routes.ts';
import { makeToken } from './token.ts';
import { watchStudy } from './watch.ts';

export interface ServerOptions {
  /** Path of study.yaml. */
  readonly path: string;
  /** The same path as people know it, for messages. */
  readonly file: string;
  /** Folder of the built page. */
  readonly webRoot: string;
  /** Address to listen at; the loopback address unless the person says otherwise. */
  readonly host?: string;
  /** 0 takes a free one. */
  readonly port?: number;
}

export interface RunningServer {
  /** The address with the session's token. */
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves the page for one study.
 * @throws Refusal when the page isn't built; the system's own error when the address can't be listened at.
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { path, file, webRoot, host = '127.0.0.1', port: wantedPort = 0 } = options;
  const assets = readAssets(webRoot);

  // The port is known only once it listens, and the rules need the port.
  let app: Hono | undefined;
  const server = createAdaptorServer({ fetch: (request, env) => app!.fetch(request, env) }) as Server;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(wantedPort, host, resolve);
  });
  const { port } = server.address() as AddressInfo;
  const token = makeToken();
  const watch = watchStudy(path);
  app = makeRoutes({ hosts: allowedHosts(host, port), token, port }, { path, file, assets, watch });

  return {
    url: `http://${shownHost(host)}:${port}/?token=${token}`,
    close: () => {
      watch.close();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      return closed;
    },
  };
}
