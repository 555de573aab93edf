// Builds dist/: the command line and server by the TypeScript compiler, the page by Vite. Does nothing when nothing changed.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const dist = join(root, 'dist');
const stamp = join(dist, '.stamp');
const configs = [
  'package-lock.json',
  'package.json',
  'tools/build.mjs',
  'tsconfig.base.json',
  'tsconfig.node.json',
  'vite.config.ts',
];

const sources = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && !/\.test(-data)?\.tsx?$/.test(entry.name))
  .map((entry) => relative(root, join(entry.parentPath, entry.name)))
  .sort();

/** Changes with any file's name, time or size, so that a deleted file counts as well. */
function fingerprint() {
  const hash = createHash('sha256');
  for (const file of [...configs, ...sources]) {
    const { mtimeMs, size } = statSync(join(root, file));
    hash.update(`${file} ${mtimeMs} ${size}\n`);
  }
  return hash.digest('hex');
}

async function build(target) {
  execFileSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.node.json', '--outDir', target], {
    cwd: root,
    stdio: 'inherit',
  });
  chmodSync(join(target, 'cli/main.js'), 0o755);

  const assets = sources.filter((file) => !/\.tsx?$/.test(file) && !file.startsWith(join('src', 'web')));
  for (const file of assets) {
    const to = join(target, relative('src', file));
    mkdirSync(dirname(to), { recursive: true });
    cpSync(join(root, file), to);
  }

  const hasPage = existsSync(join(root, 'src/web/index.html'));
  if (hasPage) {
    const vite = await import('vite');
    await vite.build({
      configFile: join(root, 'vite.config.ts'),
      build: { outDir: join(target, 'web'), emptyOutDir: true },
      logLevel: 'warn',
    });
  }
  return `${sources.length} files, ${assets.length} copied, ${hasPage ? 'page bundled' : 'no page'}`;
}

const began = performance.now();
const current = fingerprint();
if (existsSync(stamp) && readFileSync(stamp, 'utf8') === current) {
  console.error(`build: nothing changed in ${sources.length} files`);
} else {
  // Built aside and then renamed: whoever runs dist/ meanwhile sees the old one or the new one, never half of it.
  const aside = join(root, 'tmp', `build-${process.pid}`);
  rmSync(aside, { recursive: true, force: true });
  try {
    const done = await build(aside);
    writeFileSync(join(aside, '.stamp'), current);
    rmSync(dist, { recursive: true, force: true });
    renameSync(aside, dist);
    console.error(`build: ${done}, ${((performance.now() - began) / 1000).toFixed(1)} s`);
  } catch (error) {
    // The compiler has printed its own lines; anything else speaks for itself.
    console.error(error.status === undefined ? error : 'build: type errors, dist/ left as it was');
    process.exitCode = 1;
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
