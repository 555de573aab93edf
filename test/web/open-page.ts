import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { build } from 'vite';
import { type RunningServer, startServer } from '../../src/server/server.ts';
import { launchBrowser } from '../browser.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A browser, the page as built from its present source, and a study of its own to change. */
export interface Bench {
  /** Path of the copied study.yaml. */
  readonly study: string;
  readonly server: RunningServer;
  open(options?: BrowserContextOptions): Promise<OpenedPage>;
  close(): Promise<void>;
}

export interface OpenedPage {
  readonly page: Page;
  /** What went wrong on the page: errors on its console, refusals of the content policy, requests to elsewhere. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

export async function setUpBench(example = 'mini-pc'): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const webRoot = join(folder, 'web');
  await build({
    configFile: join(root, 'vite.config.ts'),
    build: { outDir: webRoot, emptyOutDir: true },
    logLevel: 'error',
  });
  cpSync(join(root, 'examples', example, 'study.yaml'), join(folder, 'study.yaml'));
  const study = join(folder, 'study.yaml');
  const server = await startServer({ path: study, file: 'study.yaml', webRoot });
  const browser = await launchBrowser();
  return {
    study,
    server,
    open: (options) => openPage(browser, server.url, options),
    async close() {
      await browser.close();
      await server.close();
      rmSync(folder, { recursive: true });
    },
  };
}

async function openPage(browser: Browser, url: string, options?: BrowserContextOptions): Promise<OpenedPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  const { origin } = new URL(url);
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('request', (request) => {
    if (!request.url().startsWith(origin)) complaints.push(`request: ${request.url()}`);
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  await page.goto(url);
  return { page, complaints, close: () => context.close() };
}
