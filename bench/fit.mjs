// Speed of the fit and of the advice on the invented mini-PC.
//   npm run build && npm run bench:fit
// The fit stands beside SciPy's least_squares on the same problem: both must find the same values before their times count; rounds alternate.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, release, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { assembleBoard } from '../dist/board/assemble.js';
import { advise } from '../dist/metrology/advice.js';
import { drawsOf } from '../dist/metrology/draws.js';
import { fit as fitInputs } from '../dist/metrology/fit.js';
import { sensitivities } from '../dist/metrology/sensitivity.js';
import { randomStream } from '../dist/numeric/random.js';
import { adviseStep } from '../dist/steps/advise.js';
import { measuredBoard } from '../dist/steps/measured-board.js';
import { readStudy } from '../dist/study/read.js';
import { exportBoard } from './board-draws.mjs';

const SEED = 20_261_125;
const ROUNDS = 15;
const FREE = 60;

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
const file = 'examples/mini-pc/study.yaml';
const { study } = readStudy(readFileSync(file, 'utf8'), file);
const boards = study.steps.map((step) => assembleBoard(step).board);
const noise = randomStream(SEED);

// Four steps, ten outputs of each read with noise from one true board that was drawn from what is stated.
const nodes = ['die', 'plate', 'fins', 'stages', 'board', 'memory', 'case', 'drive'];
const outputs = [...nodes.map((id) => `heat.nodes.${id}.temperature`), 'wall-power', 'limiters.package-limit.real'];
const inputs = [...new Map(boards.flatMap((board) => board.inputs.map((input) => [input.id, input]))).values()];
const truth = drawTruth(boards, inputs);
const observations = boards.flatMap((board, k) => readings(board, outputs, `step ${k + 1}`));
const problem = { inputs, observations, free: strongest(boards, outputs, FREE) };
const first = fitInputs(problem);
if (first.ending !== 'converged') throw new Error(first.ending);

// Ten windows of one step, as `uprate fit` sees them: each has its own measured power, the instruments' errors are shared.
const windows = windowsOf(10);
const windowsFit = fitInputs(windows);
if (windowsFit.ending !== 'converged') throw new Error(windowsFit.ending);

const [board] = boards;
const { marginOutput } = board.limits.find(({ id }) => id === 'limits.skin');
const candidates = problem.free
  .map((input) => ({
    id: input,
    what: { input },
    u: board.inputs[Math.max(0, board.indexOfInput(input))].value * 0.01 || 0.01,
    effort: 1,
  }))
  .filter(({ id }) => board.indexOfInput(id) >= 0);

const scipy = await startScipy();
if (scipy) agree(await scipy.run());
const times = { fit: [], windows: [], scipy: [], advise: [], step: [] };
for (let round = 0; round < ROUNDS; round++) {
  times.fit.push(timed(() => fitInputs(problem)));
  if (scipy) times.scipy.push((await scipy.run()).milliseconds);
  times.windows.push(timed(() => fitInputs(windows)));
  times.advise.push(timed(() => advise(board, board.outputs[marginOutput].id, candidates, sensitivities(board))));
  times.step.push(timed(() => adviseStep(study, 'stacked-12')));
}
scipy?.stop();
report();

function timed(work) {
  const began = performance.now();
  work();
  return performance.now() - began;
}

function drawTruth(models, all) {
  const union = { inputs: all, outputs: [], evaluate: () => ({ ending: 'solved', residual: 0, passes: 0 }) };
  const draws = drawsOf(union, { seed: SEED }, 8);
  for (let from = 0; ; from += 8) {
    draws.fill(from);
    for (let s = 0; s < 8; s++) {
      const values = new Map(all.map(({ id, value }) => [id, value]));
      for (const [k, input] of draws.inputs.entries()) values.set(all[input].id, draws.columns[k][s]);
      const solved = models.every((model) => {
        const x = Float64Array.from(model.inputs, ({ id }) => values.get(id));
        return model.evaluate(x, new Float64Array(model.outputs.length)).ending === 'solved';
      });
      if (solved) return values;
    }
  }
}

function readings(model, ids, name) {
  const x = Float64Array.from(model.inputs, ({ id, value }) => truth.get(id) ?? value);
  const y = new Float64Array(model.outputs.length);
  model.evaluate(x, y);
  return ids.map((output) => {
    const u = output.startsWith('heat') || !output.includes('p') ? 0.5 : 0.3;
    const value = y[model.outputs.findIndex(({ id }) => id === output)] + u * noise.normal();
    return { id: `${name}: ${output}`, model, output, value, u };
  });
}

/** Inputs that move the observed outputs most. */
function strongest(models, ids, count) {
  const effect = new Map();
  for (const model of models) {
    const { c, u } = sensitivities(model);
    model.inputs.forEach(({ id }, i) => {
      const sum = ids.reduce((all, output) => {
        const o = model.outputs.findIndex((each) => each.id === output);
        return all + (c[o][i] * u[i]) ** 2;
      }, effect.get(id) ?? 0);
      effect.set(id, sum);
    });
  }
  return [...effect]
    .sort((a, b) => b[1] - a[1])
    .slice(0, count)
    .map(([id]) => id);
}

function windowsOf(count) {
  const instruments = Object.entries(study.instruments).map(([id, { shows, channel, uncertainty }]) => {
    return { id, title: id, channel, shows, u: Number.parseFloat(uncertainty), repeatability: 0 };
  });
  const all = new Map();
  const list = Array.from({ length: count }, (_, k) => {
    const watts = 20 + 4 * k;
    const realPower = { kind: 'power', value: watts, unit: 'W', spread: null, text: '' };
    const dialled = assembleBoard(study.steps[0], { limiter: 'package-limit', realPower }).board;
    const id = `windows.${k}.power`;
    const input = { id, kind: 'power', unit: 'W', value: watts, spread: { shape: 'normal', u: 0.2 }, source: '' };
    const model = measuredBoard(dialled, instruments, { instrument: 'processor-power', input }, null);
    for (const each of model.inputs) all.set(each.id, each);
    const read = instruments.filter(({ id: own }) => own !== 'processor-power').map(({ id: own }) => own);
    return readings(model, read, `window ${k}`);
  });
  const own = [...all.keys()].filter((id) => id.startsWith('windows.') || id.startsWith('instruments.'));
  const free = [...own, ...problem.free.filter((id) => all.has(id))].slice(0, FREE);
  return { inputs: [...all.values()], observations: list.flat(), free };
}

/** Starts Python with SciPy on the same problem; null where there is none. */
async function startScipy() {
  const folder = mkdtempSync(join(tmpdir(), 'uprate-bench-'));
  const places = new Map(problem.free.map((id) => [id, inputs.find((input) => input.id === id)]));
  const logarithmic = [...places.values()].map(({ spread }) => spread.shape === 'log-normal');
  const entries = boards.map((each, k) => {
    const own = join(folder, String(k));
    mkdirSync(own);
    const files = exportBoard(each, new Float64Array(0), own);
    const values = each.inputs.map(({ value }) => value);
    return { ...files, values, columns: problem.free.map((id) => each.indexOfInput(id)), outputs };
  });
  const centre = first.inputs.map(({ prior }, i) => (logarithmic[i] ? Math.log(prior.value) : prior.value));
  const scale = first.inputs.map(({ prior }, i) => (logarithmic[i] ? prior.u / prior.value : prior.u));
  const measured = observations.map(({ value }) => value);
  const path = join(folder, 'problem.json');
  const u = observations.map((each) => each.u);
  writeFileSync(path, JSON.stringify({ boards: entries, centre, scale, logarithmic, measured, u }));
  const env = { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1', MKL_NUM_THREADS: '1' };
  const child = spawn('python3', ['bench/fit_scipy.py', path], { env, stdio: ['pipe', 'pipe', 'pipe'] });
  let complaint = '';
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  const missing = new Promise((resolve) => child.on('error', () => resolve({ done: true })));
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const answer = async () => {
    const { value, done } = await Promise.race([lines.next(), missing]);
    if (!done) return JSON.parse(value);
    if (complaint === '' || /No module named '(numpy|scipy)'/.test(complaint)) return null;
    throw new Error(complaint);
  };
  const versions = await answer();
  if (!versions) return null;
  return {
    versions,
    run: () => {
      child.stdin.write('run\n');
      return answer();
    },
    stop: () => {
      child.stdin.end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Stops when the two sides differ: a wrong answer has no speed. */
function agree({ point, deviations, evaluations }) {
  let [values, spreads] = [0, 0];
  first.inputs.forEach(({ prior, value, spread }, i) => {
    const [scaled, u] =
      spread.shape === 'log-normal'
        ? [Math.log(value / prior.value) / (prior.u / prior.value), spread.sigma / (prior.u / prior.value)]
        : [(value - prior.value) / prior.u, spread.u / prior.u];
    values = Math.max(values, Math.abs(scaled - point[i]) / deviations[i]);
    spreads = Math.max(spreads, Math.abs(u / deviations[i] - 1));
  });
  if (!(values < 1e-2 && spreads < 1e-3))
    throw new Error(`SciPy differs by ${values} of u in a value, ${spreads} in a u`);
  scipy.differs = { values, spreads, evaluations };
}

function report() {
  const lines = [
    '# Speed of the fit and of the advice',
    '',
    `Made by \`npm run bench:fit\` on ${new Date().toISOString().slice(0, 10)}. Board: \`${file}\`, one true board drawn with seed ${SEED}.`,
    `Machine: ${cpus()[0].model.trim()}, ${cpus().length} cores, ${type()} ${release()}; Node.js ${process.versions.node}${scipy ? `, Python ${scipy.versions.python}, SciPy ${scipy.versions.scipy}, NumPy ${scipy.versions.numpy}` : ''}.`,
    `One core, ${ROUNDS} rounds, the sides in turn. Load average of the machine at the end: ${loadavg()[0].toFixed(1)}; above the number of cores, other work has stretched the medians and the highest.`,
    '',
    '| | lowest | median | highest |',
    '|---|---|---|---|',
    row(`fit of ${problem.free.length} inputs to ${observations.length} observations at four steps`, times.fit),
    ...(scipy ? [row('SciPy least_squares with NumPy: the same fit', times.scipy)] : []),
    row(
      `fit of ${windows.free.length} inputs to ${windows.observations.length} observations in ten windows`,
      times.windows,
    ),
    row(`advice on ${candidates.length} measurements of one board, sensitivities included`, times.advise),
    row(
      `\`uprate advise --step stacked-12\` without reading the study: ${adviseStep(study, 'stacked-12').considered} measurements, two boards`,
      times.step,
    ),
    '',
    scipy
      ? `Before the timing both had found the same: values to ${scipy.differs.values.toExponential(1)} of their uncertainties, uncertainties to ${scipy.differs.spreads.toExponential(1)}. SciPy (Levenberg–Marquardt, slopes by central differences over the same step, all points of a Jacobian solved in one block) solved a board ${scipy.differs.evaluations} times.`
      : 'Python 3 with SciPy was not found: only our own figures.',
    '',
  ];
  console.log(lines.join('\n'));
  writeFileSync('bench/FIT.md', lines.join('\n'));
}

function row(name, values) {
  const sorted = [...values].sort((a, b) => a - b);
  const shown = [sorted[0], sorted[sorted.length >> 1], sorted[sorted.length - 1]];
  return `| ${name} | ${shown.map((value) => `${value.toFixed(1)} ms`).join(' | ')} |`;
}
