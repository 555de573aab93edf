// A whole ladder: 100 000 draws of each of four steps on two cores, beside the same draws solved with NumPy in one process and in two.
//   npm run build && node bench/ladder.mjs [DRAWS [ROUNDS]]
// Ours draws and keeps every value within the time; NumPy is given its draws. Both sides must agree before their times count; rounds alternate.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { comparedOutputs, drawInputs, exportBoard, readBoard } from './board-draws.mjs';
import { startNumpy } from './numpy-side.mjs';

const WHOLE = 100_000;
const SAMPLES = Number(process.argv[2] ?? WHOLE);
const STEPS = 4;
const ROUNDS = Number(process.argv[3] ?? 5);
const SEED = 20_261_125;
const AGREEMENT = 1e-6;

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
const study = 'examples/mini-pc/study.yaml';
const steps = Array.from({ length: STEPS }, (_, k) => k);
const folder = mkdtempSync(join(tmpdir(), 'uprate-ladder-'));
const halves = [steps.filter((k) => k % 3 === 0), steps.filter((k) => k % 3 !== 0)];

const numpy = [];
for (const step of steps) {
  const own = join(folder, String(step));
  mkdirSync(own);
  const board = readBoard(study, step);
  const side = await startNumpy(exportBoard(board, drawInputs(board, SAMPLES, SEED), own), board.inputs.length);
  if (!side) throw new Error('Python 3 with NumPy was not found');
  numpy.push({ ...side, own });
}
const alone = await startWorker(steps);
const pair = [await startWorker(halves[0]), await startWorker(halves[1])];

const last = [];
const outputs = comparedOutputs(readBoard(study, 0)).length;
const worst = await agree();
const times = { numpy: [], numpyPair: [], ours: [], oursPair: [], oursProcessor: [], numpyProcessor: [] };
let unsolved = 0;
for (let round = 0; round < ROUNDS; round++) {
  times.oursPair.push(
    await timed(async () => {
      const answers = await Promise.all(pair.map((worker) => ask(worker, {})));
      unsolved = answers.reduce((sum, answer) => sum + answer.unsolved, 0);
    }),
  );
  times.numpyPair.push(await timed(() => Promise.all(halves.map(solveInTurn))));
  const before = process.cpuUsage();
  times.ours.push(await timed(() => ask(alone, {})));
  const { user, system } = process.cpuUsage(before);
  times.oursProcessor.push((user + system) / 1000);
  times.numpy.push(await timed(() => solveInTurn(steps)));
  times.numpyProcessor.push(last.reduce((sum, { processor }) => sum + processor, 0));
  console.error(`round ${round + 1} of ${ROUNDS}`);
}
for (const worker of [alone, ...pair]) await worker.terminate();
for (const side of numpy) side.stop();
rmSync(folder, { recursive: true, force: true });
report();

async function startWorker(own) {
  const worker = new Worker(new URL('./ladder-worker.mjs', import.meta.url), {
    workerData: { study, samples: SAMPLES, seed: SEED, steps: own },
  });
  await answerOf(worker);
  return worker;
}

function answerOf(worker) {
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

function ask(worker, question) {
  worker.postMessage(question);
  return answerOf(worker);
}

async function solveInTurn(own) {
  for (const step of own) last[step] = await numpy[step].solve();
}

async function timed(work) {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

/** Largest relative difference of any output of any draw; stops when the two sides differ: a wrong answer has no speed. */
async function agree() {
  let largest = 0;
  await solveInTurn(steps);
  for (const step of steps) {
    const { columns } = await ask(alone, { wanted: step });
    const theirs = await numpy[step].results(numpy[step].own);
    columns.forEach((values, k) => {
      for (let s = 0; s < SAMPLES; s++) {
        const [a, b] = [values[s], theirs[k * SAMPLES + s]];
        if (Number.isNaN(a) && Number.isNaN(b)) continue;
        const error = Math.abs(a - b) / Math.max(1e-9, Math.abs(a));
        if (!(error <= largest)) largest = error;
      }
    });
  }
  if (!(largest < AGREEMENT)) throw new Error(`NumPy differs by ${largest}`);
  return largest;
}

function report() {
  const ratio = (theirs, ours) => theirs.map((time, k) => time / ours[k]);
  const { versions } = numpy[0];
  const text = [
    '# Speed of a ladder',
    '',
    `Made by \`node bench/ladder.mjs\` on ${new Date().toISOString().slice(0, 10)}. ${SAMPLES} draws (seed ${SEED}) of each of the ${STEPS} steps of \`${study}\`, ${outputs} outputs kept, ${ROUNDS} rounds, the sides in turn.`,
    `Machine: ${cpus()[0].model.trim()}, ${cpus().length} cores; Node.js ${process.versions.node}, Python ${versions.python}, NumPy ${versions.numpy}. Load average at the end: ${loadavg()[0].toFixed(1)}; above 2, other work has stretched times on both sides.`,
    '',
    '| | lowest | median | highest |',
    '|---|---|---|---|',
    row('ours, two threads: drawing, evaluating, keeping, statistics', times.oursPair, 'ms', 0),
    row('ours, one thread', times.ours, 'ms', 0),
    row('NumPy, one process: evaluating draws that it is given', times.numpy, 'ms', 0),
    row('NumPy, two processes', times.numpyPair, 'ms', 0),
    row('ours, one thread: processor time', times.oursProcessor, 'ms', 0),
    row('NumPy, one process: processor time', times.numpyProcessor, 'ms', 0),
    row('NumPy’s processor time over ours', ratio(times.numpyProcessor, times.oursProcessor), '', 2),
    row('NumPy’s time on one core over ours on two', ratio(times.numpy, times.oursPair), '', 2),
    row('NumPy’s time on two cores over ours on two', ratio(times.numpyPair, times.oursPair), '', 2),
    row('NumPy’s time on one core over ours on one', ratio(times.numpy, times.ours), '', 2),
    '',
    `Before the timing the two agreed in all outputs of all draws to ${worst.toExponential(1)}. Draws without a solution: ${unsolved} here, ${last.reduce((sum, each) => sum + each.unsolved, 0)} there. Ours settles to 1e-11 of a pass at a draw, NumPy to ${Math.max(...last.map((each) => each.residual)).toExponential(1)}.`,
    '',
  ].join('\n');
  console.log(text);
  if (SAMPLES === WHOLE) writeFileSync('bench/LADDER.md', text);
}

function row(name, values, unit, digits) {
  const sorted = [...values].sort((a, b) => a - b);
  const shown = [sorted[0], sorted[sorted.length >> 1], sorted[sorted.length - 1]];
  return `| ${name} | ${shown.map((value) => `${value.toFixed(digits)} ${unit}`.trim()).join(' | ')} |`;
}
