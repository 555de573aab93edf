import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** A folder without anything of the project in or above it: what somebody has who only installs the package. */
const folder = mkdtempSync(join(tmpdir(), 'uprate-package-'));
const installed = join(folder, 'node_modules/uprate');

function run(program: string, args: string[], cwd = folder): string {
  return execFileSync(program, args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
}

describe('the packed package', () => {
  beforeAll(() => {
    const packed = JSON.parse(run('npm', ['pack', '--json', '--silent', '--pack-destination', folder], root));
    run('npm', ['init', '--yes', '--silent']);
    const quiet = ['--prefer-offline', '--no-audit', '--no-fund', '--silent'];
    run('npm', ['install', '--omit=dev', ...quiet, join(folder, packed[0].filename)]);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('runs by its name and says its version', () => {
    expect(run('npx', ['--no-install', 'uprate', '--version'])).toBe(`${manifest.version}\n`);
  });

  test('computes a published formula', () => {
    // 5 mΩ and 20 mΩ side by side: 5·20/(5 + 20) = 4 mΩ, by hand.
    const answer = run('npx', ['--no-install', 'uprate', 'calc', 'parallel-resistance', 'a=5 mΩ', 'b=20 mΩ', '--json']);
    const { uprate, result } = JSON.parse(answer);
    expect(uprate).toBe(manifest.version);
    expect(result.outputs[0].value).toBeCloseTo(0.004, 12);
  });

  test('imports nothing but Node and its own run-time dependencies', () => {
    const allowed = new Set([...Object.keys(manifest.dependencies), ...builtinModules.map((name) => `node:${name}`)]);
    const imports = listScripts().flatMap(listPackages);
    expect(imports.length).toBeGreaterThan(0);
    expect(imports.filter(({ name }) => !allowed.has(name))).toEqual([]);
  });

  test('holds no tests', () => {
    expect(listScripts().filter((file) => file.includes('.test'))).toEqual([]);
  });
});

/** The scripts that Node runs; those of the page are bundled and import nothing. */
function listScripts(): string[] {
  const files = readdirSync(join(installed, 'dist'), { recursive: true, encoding: 'utf8' });
  return files.filter((file) => file.endsWith('.js') && !file.startsWith('web/'));
}

function listPackages(file: string): { file: string; name: string }[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(join(installed, 'dist', file), 'utf8'), true, true);
  const packages = importedFiles.map(({ fileName }) => fileName).filter((specifier) => !specifier.startsWith('.'));
  return packages.map((specifier) => ({
    file,
    name: specifier.startsWith('node:') ? specifier : packageOf(specifier),
  }));
}

function packageOf(specifier: string): string {
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}
