import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { Refusal, refuse } from '../fault/fault.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
};

export interface Asset {
  readonly type: string;
  readonly content: Uint8Array<ArrayBuffer>;
}

/**
 * The page's files by the path they are served under, read once.
 * A request is looked up in this list and never touches the file system: there is no path that leads outside.
 */
export function readAssets(folder: string): ReadonlyMap<string, Asset> {
  if (!existsSync(join(folder, 'index.html'))) throw new Refusal(refuse('server/no-page', { folder }));
  const assets = new Map<string, Asset>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = TYPES[extname(entry.name)];
    if (!entry.isFile() || !type) continue;
    const file = join(entry.parentPath, entry.name);
    const path = `/${relative(folder, file).split(sep).join('/')}`;
    assets.set(path === '/index.html' ? '/' : path, { type, content: new Uint8Array(readFileSync(file)) });
  }
  return assets;
}
