import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

const INSTALLED = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
/** Beside the package it comes from, so that a fresh install of the packages brings a fresh browser. */
const CACHE = fileURLToPath(new URL('../node_modules/.cache/', import.meta.url));

// The packaged list of font folders names a fixed place in /tmp; without this one every text would be invisible.
const fontList = (folder: string) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}/fonts/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${folder}/font-cache</cachedir>
</fontconfig>
`;

/** A headless Chromium: the one at CHROME_PATH, else one the system has, else the one inside the development packages. */
export async function launchBrowser(): Promise<Browser> {
  const installed = [process.env.CHROME_PATH, ...INSTALLED].find((path) => path && existsSync(path));
  if (installed) return chromium.launch({ executablePath: installed, args: ['--no-sandbox'] });

  const folder = await unpackBrowser();
  return chromium.launch({
    executablePath: join(folder, 'chromium'),
    // Only what a container needs: the package's own list also switches the browser's web security off.
    args: ['--no-sandbox', '--no-zygote', '--disable-gpu', '--font-render-hinting=none'],
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'),
      FONTCONFIG_PATH: join(folder, 'fonts'),
    },
  });
}

/**
 * The packaged browser with its libraries and fonts, unpacked on first use: the folder.
 * Unpacked aside and then renamed, so that test files running at the same time never see half a browser.
 */
async function unpackBrowser(): Promise<string> {
  const folder = join(CACHE, 'chromium');
  if (existsSync(folder)) return folder;

  mkdirSync(CACHE, { recursive: true });
  const aside = mkdtempSync(`${folder}-`);
  const before = { ...process.env };
  // The package unpacks into the temporary folder, and its system libraries only where it takes the machine for a bare one.
  process.env.TMPDIR = aside;
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs20.x';
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
    writeFileSync(join(aside, 'fonts', 'fonts.conf'), fontList(folder));
  } finally {
    for (const name of ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME']) {
      if (before[name] === undefined) delete process.env[name];
      else process.env[name] = before[name];
    }
  }
  try {
    renameSync(aside, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
    rmSync(aside, { recursive: true });
  }
  return folder;
}
