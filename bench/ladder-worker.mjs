// One core's share of the ladder: Monte Carlo runs of some steps of a study, asked for one at a time.
import { parentPort, workerData } from 'node:worker_threads';
import { monteCarlo } from '../dist/metrology/monte-carlo.js';
import { comparedOutputs, readBoard } from './board-draws.mjs';

const { study, samples, seed, steps } = workerData;
const boards = steps.map((step) => readBoard(study, step));

parentPort.on('message', ({ wanted }) => {
  const began = performance.now();
  const runs = boards.map((board) => monteCarlo(board, { samples, seed, outputs: comparedOutputs(board) }));
  const milliseconds = performance.now() - began;
  const unsolved = runs.reduce((sum, run) => sum + run.samples - run.endings.solved, 0);
  // For the comparison only: one step's values, a column an output.
  const columns = wanted === undefined ? [] : [...runs[wanted].outputs.values()].map(({ values }) => values);
  parentPort.postMessage({ milliseconds, unsolved, columns });
});
parentPort.postMessage('ready');
