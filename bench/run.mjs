// Speed of the board solver: one evaluation, and 20 000 draws on one core beside the same draws solved with NumPy.
//   npm run build && npm run bench [-- STUDY.yaml]
// Both sides must agree before their times count; rounds alternate; every figure is shown with its spread.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, release, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { monteCarlo } from '../dist/metrology/monte-carlo.js';
import { comparedOutputs, drawInputs, exportBoard, readBoard, solveDraws } from './board-draws.mjs';
import { startNumpy } from './numpy-side.mjs';

const SAMPLES = 20_000;
const ROUNDS = 9;
const SEED = 20_261_125;
const AGREEMENT = 1e-6;

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
const study = process.argv[2] ?? 'examples/mini-pc/study.yaml';
const board = readBoard(study);
const rows = drawInputs(board, SAMPLES, SEED);
const ids = comparedOutputs(board);
const places = ids.map((id) => board.indexOfOutput(id));
const ours = new Float64Array(ids.length * SAMPLES);

const folder = mkdtempSync(join(tmpdir(), 'uprate-bench-'));
const numpy = await startNumpy(exportBoard(board, rows, folder), board.inputs.length);

const times = { single: [], draws: [], whole: [], numpy: [] };
let last = null;
const unsolved = solveDraws(board, rows, places, ours);
if (numpy) {
  last = await numpy.solve();
  agree(await numpy.results(folder));
}
for (let round = 0; round < ROUNDS; round++) {
  const draws = timed(() => solveDraws(board, rows, places, ours));
  times.draws.push(draws);
  times.single.push((1000 * draws) / SAMPLES);
  if (numpy) {
    last = await numpy.solve();
    times.numpy.push(last.milliseconds);
  }
  times.whole.push(timed(() => monteCarlo(board, { samples: SAMPLES, seed: SEED })));
}
const megabytes = process.resourceUsage().maxRSS / 1024;
numpy?.stop();
rmSync(folder, { recursive: true, force: true });
report();

function timed(work) {
  const began = performance.now();
  work();
  return performance.now() - began;
}

/** Stops when the two sides differ: a wrong answer has no speed. */
function agree(theirs) {
  let worst = { error: 0, id: '' };
  ids.forEach((id, k) => {
    for (let s = k * SAMPLES; s < (k + 1) * SAMPLES; s++) {
      if (Number.isNaN(ours[s]) && Number.isNaN(theirs[s])) continue;
      const error = Math.abs(ours[s] - theirs[s]) / Math.max(1e-9, Math.abs(ours[s]));
      if (!(error <= worst.error)) worst = { error, id };
    }
  });
  if (!(worst.error < AGREEMENT)) throw new Error(`NumPy differs by ${worst.error} in ${worst.id}`);
  last.difference = worst.error;
}

function report() {
  const difference = numpy ? times.numpy.map((time, k) => time / times.draws[k]) : [];
  const lines = [
    '# Speed of the board solver',
    '',
    `Made by \`npm run bench\` on ${new Date().toISOString().slice(0, 10)}. Board: \`${study}\`, first step: ${board.inputs.length} inputs, ${board.outputs.length} outputs.`,
    `Machine: ${cpus()[0].model.trim()}, ${cpus().length} cores, ${type()} ${release()}; Node.js ${process.versions.node}${numpy ? `, Python ${numpy.versions.python}, NumPy ${numpy.versions.numpy}` : ''}.`,
    `${SAMPLES} draws (seed ${SEED}), one core, ${ROUNDS} rounds, the sides in turn. Draws without a solution: ${unsolved}. Load average of the machine at the end: ${loadavg()[0].toFixed(1)}; above 1, other work has stretched the medians and the highest.`,
    '',
    '| | lowest | median | highest |',
    '|---|---|---|---|',
    row('one evaluation at a draw, all outputs', times.single, 'µs', 2),
    row(`${SAMPLES} draws evaluated, all outputs`, times.draws, 'ms', 0),
    row('a Monte Carlo run of as many: drawing, evaluating, keeping', times.whole, 'ms', 0),
    ...(numpy
      ? [
          row(`NumPy: the same ${SAMPLES} draws, ${ids.length} outputs`, times.numpy, 'ms', 0),
          row('NumPy’s time over ours; above 1, ours is faster', difference, '', 2),
        ]
      : []),
    '',
    ...(numpy
      ? [
          `NumPy solves in blocks of ${numpy.versions.block} draws with Anderson's acceleration, to the same tolerance: largest residual ${last.residual.toExponential(1)}, ${last.passes} passes, ${last.unsolved} draws unsolved. Before the timing the two agreed in all ${ids.length} outputs of all draws to 1e-6.`,
          `Peak memory: ${megabytes.toFixed(0)} MB here (with the draws and every Monte Carlo value), ${last.megabytes.toFixed(0)} MB in Python.`,
        ]
      : ['Python 3 with NumPy was not found: only our own figures.', '', `Peak memory: ${megabytes.toFixed(0)} MB.`]),
    '',
  ];
  console.log(lines.join('\n'));
  if (study === 'examples/mini-pc/study.yaml') writeFileSync('bench/RESULTS.md', lines.join('\n'));
}

function row(name, values, unit, digits) {
  const sorted = [...values].sort((a, b) => a - b);
  const shown = [sorted[0], sorted[sorted.length >> 1], sorted[sorted.length - 1]];
  return `| ${name} | ${shown.map((value) => `${value.toFixed(digits)} ${unit}`.trim()).join(' | ')} |`;
}
