// Tries mutants of one file at a time: does any test of the laws notice?
import { readFileSync } from 'node:fs';
import { listFiles, Modules } from './mutate-modules.mjs';
import { Tests } from './mutate-tests.mjs';

const tests = new Tests();
const modules = new Modules({ vitest: tests.vitest });
const runner = 'validation/topics.test.ts';
const laws = [
  'validation',
  'validation/plates',
  ...['electrical', 'thermal', 'mechanics', 'chemistry', 'sensing'].map((field) => `src/physics/${field}`),
];
const examples = 'src/physics/catalogue.test.ts';

let suites = [];
let text = '';

process.on('message', async (message) => {
  if ('file' in message) process.send(await open(message.file));
  else process.send(await attempt(message.mutant));
});

/** Takes up a file: its tests, quickest first, those left out that fail on it as it is. */
async function open(file) {
  text = readFileSync(file, 'utf8');
  modules.change(file, null);
  const topics = new Set(listFiles('validation/topics').filter((path) => modules.needs(path).has(file)));
  const isRoot = file.split('/').length === 3;
  const folders = isRoot
    ? ['src/physics']
    : laws.filter((folder) => folder.startsWith('validation') || file.startsWith(folder));
  const found = folders
    .flatMap(listFiles)
    .filter(
      (path) =>
        path.endsWith('.test.ts') && path !== runner && path !== 'validation/results.test.ts' && path !== examples,
    );
  const related = found.filter((path) => modules.needs(path).has(file));
  const published = [...topics].map((topic) => ({ path: runner, only: new Set([topic]) }));
  const usesFormula = !isRoot || file.endsWith('formula.ts');
  const tried = [
    ...published,
    ...related.map((path) => ({ path })),
    ...(usesFormula ? [{ path: examples, named: 'worked example' }] : []),
  ];
  suites = [];
  const failing = [];
  for (const suite of tried) {
    const began = performance.now();
    const failure = await firstFailure(suite);
    if (failure === null) suites.push({ ...suite, took: performance.now() - began });
    else failing.push(`${suite.path}: ${failure}`);
  }
  suites.sort((one, other) => one.took - other.took);
  return { opened: file, failing, took: suites.reduce((sum, { took }) => sum + took, 0) };
}

async function attempt({ file, start, end, text: change }) {
  modules.change(file, text.slice(0, start) + change + text.slice(end));
  for (const suite of suites) if ((await firstFailure(suite)) !== null) return { killed: true };
  return { killed: false };
}

/** Why a suite fails, or null. A module that can't even be loaded fails it. */
async function firstFailure({ path, only, named = '' }) {
  modules.forget(path);
  tests.take();
  try {
    modules.load(path, only);
    for (const { name, run } of tests.take()) if (name.includes(named)) await run();
    return null;
  } catch (error) {
    return String(error.message ?? error).split('\n')[0];
  } finally {
    tests.take();
  }
}
