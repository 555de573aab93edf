// Changes every operator and every constant of the laws, one at a time, and sees whether a test fails. Writes validation/MUTANTS.md.
// `npm run mutate -- src/physics/thermal` tries only files whose path begins so, and writes nothing.
import { fork } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { findMutants } from './mutate-mutants.mjs';
import { writeReport } from './mutate-report.mjs';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
/** Least time that a mutant has [ms]; it has ten times what its tests take without a change. */
const patience = 4000;
const only = process.argv.slice(2);

const files = readdirSync('src/physics', { recursive: true })
  .map((name) => `src/physics/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.ts') && !/\.test(-data)?\.ts$/.test(path) && !/^src\/physics\/formulas/.test(path))
  .filter((path) => only.length === 0 || only.some((start) => path.startsWith(start)))
  .sort();
const mutants = group(findMutants(files));
// Laws before the machinery of the catalogue, whose tests draw at random and take longest.
const waiting = [...mutants.keys()].sort(
  (one, other) =>
    other.split('/').length - one.split('/').length || mutants.get(one).length - mutants.get(other).length,
);
const results = [];
const began = performance.now();

process.on('SIGINT', () => {
  finish();
  process.exit(1);
});
await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, work));
finish();

/** Tells what was found; after an interruption of what there is. */
function finish() {
  results.sort((one, other) => (one.file < other.file ? -1 : 1));
  const reasons = JSON.parse(readFileSync('validation/mutant-reasons.json', 'utf8'));
  const missing = files.filter((file) => mutants.has(file) && !results.some((result) => result.file === file));
  const { text, lines } = writeReport(results, missing, reasons);
  console.log(lines.join('\n'));
  console.log(`${((performance.now() - began) / 1000).toFixed(0)} s`);
  if (only.length === 0) writeFileSync('validation/MUTANTS.md', text);
  else for (const { survivors } of results) for (const { line, key } of survivors) console.log(`${line}: ${key}`);
}

/** One worker's way through the files that wait. */
async function work() {
  let worker = null;
  for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
    worker ??= start();
    const opened = await ask(worker, { file }, 60 * patience);
    if (opened === null) throw new Error(`${file}: its tests as they are do not end`);
    for (const failure of opened.failing) console.log(`${file}: left out, fails without a change: ${failure}`);
    const survivors = [];
    for (const mutant of mutants.get(file)) {
      if (worker === null) {
        worker = start();
        await ask(worker, { file }, 60 * patience);
      }
      const answer = await ask(worker, { mutant }, Math.max(patience, 10 * opened.took));
      if (answer === null) {
        // A change that never ends is noticed by whoever waits.
        worker.kill('SIGKILL');
        worker = null;
      } else if (!answer.killed) survivors.push(mutant);
    }
    results.push({ file, mutants: mutants.get(file).length, survivors });
    const killed = mutants.get(file).length - survivors.length;
    console.log(`${killed} of ${mutants.get(file).length}  ${file}, ${waiting.length} files wait`);
  }
  worker?.kill();
}

function start() {
  return fork(new URL('./mutate-worker.mjs', import.meta.url), { stdio: 'ignore' });
}

/** The worker's answer; null when it breaks down, or works at it for longer than `longest` [ms]. */
function ask(worker, message, longest) {
  return new Promise((resolve) => {
    const began = timeUsed(worker.pid);
    const finish = (answer) => {
      clearInterval(timer);
      worker.off('message', finish);
      worker.off('exit', onExit);
      resolve(answer);
    };
    const onExit = () => finish(null);
    const timer = setInterval(() => {
      if (timeUsed(worker.pid) - began > longest) finish(null);
    }, 500);
    worker.on('message', finish);
    worker.on('exit', onExit);
    worker.send(message);
  });
}

/** Time a process has worked [ms], where the system tells: on a busy machine a slow answer is not an endless one. Elsewhere the clock. */
function timeUsed(pid) {
  try {
    const [, rest] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ');
    const [user, system] = rest.split(' ').slice(11, 13).map(Number);
    return 10 * (user + system);
  } catch {
    return performance.now();
  }
}

function group(all) {
  const byFile = new Map();
  for (const mutant of all) byFile.set(mutant.file, [...(byFile.get(mutant.file) ?? []), mutant]);
  return byFile;
}
