// Checks of the source: it builds; types, format, rooms, unused code, the size of files.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compare, findImports } from '../rooms.mjs';
import { run, runTool } from './run.mjs';

const PROJECTS = ['pure', 'node', 'web', 'test'];
const MOST_LINES = 400;
const FOLDERS = ['src', 'test', 'validation', 'tools', 'bench'];

export async function checkBuild() {
  const { code, output } = await run(process.execPath, ['tools/build.mjs']);
  const lines = output.trim().split('\n');
  return { said: code === 0 ? lines.at(-1).replace('build: ', '') : 'failed', faults: code === 0 ? [] : lines };
}

export async function checkTypes() {
  const faults = [];
  for (const project of PROJECTS) {
    const { code, output } = await runTool('tsc', ['-p', `tsconfig.${project}.json`, '--noEmit', '--pretty', 'false']);
    if (code !== 0) faults.push(...output.trim().split('\n'));
  }
  const errors = faults.filter((line) => line.includes('error TS')).length;
  return { said: `${PROJECTS.length} projects, ${errors} errors`, faults };
}

export async function checkFormat() {
  const { code, output } = await runTool('biome', [
    'check',
    '--colors=off',
    '--error-on-warnings',
    '--max-diagnostics=50',
  ]);
  const files = output.match(/Checked (\d+) files/)?.[1] ?? 0;
  const found = output.match(/Found (\d+) (?:errors?|warnings?)/g) ?? [];
  return {
    said: `${files} files, ${found.join(', ') || '0 faults'}`,
    faults: code === 0 ? [] : output.trim().split('\n'),
  };
}

export async function checkRooms() {
  const declared = JSON.parse(readFileSync('tools/rooms.json', 'utf8'));
  const { faults, edges, packages } = compare(declared, await findImports());
  return {
    said: `${edges} edges and ${packages} packages${faults.length === 0 ? ' as declared' : `, ${faults.length} faults`}`,
    faults,
  };
}

export async function checkUnused() {
  const { code, output } = await runTool('knip', ['--no-config-hints', '--no-progress']);
  const lines = output.trim() === '' ? [] : output.trim().split('\n');
  const faults = code === 0 && lines.length === 0 ? [] : lines;
  return { said: faults.length === 0 ? '0 files, exports or packages' : `${faults.length} lines`, faults };
}

export async function checkSize() {
  const sizes = FOLDERS.filter((folder) => existsSync(folder))
    .flatMap(listSource)
    .map((file) => ({ file, lines: readFileSync(file, 'utf8').split('\n').length - 1 }))
    .sort((one, other) => other.lines - one.lines);
  const tooLong = sizes.filter(({ lines }) => lines > MOST_LINES);
  const median = sizes[sizes.length >> 1].lines;
  return {
    said: `${sizes.length} files, ${tooLong.length} over ${MOST_LINES} lines; median ${median}, longest ${sizes[0].lines}`,
    faults: tooLong.map(({ file, lines }) => `${file}: ${lines} lines`),
  };
}

function listSource(folder) {
  return readdirSync(folder, { recursive: true })
    .map((name) => join(folder, name))
    .filter((file) => /\.(ts|tsx|mjs|css)$/.test(file));
}
