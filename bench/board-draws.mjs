// The board that is timed, draws of its inputs, and the same as files for another program.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { assembleBoard } from '../dist/board/assemble.js';
import { drawsOf } from '../dist/metrology/draws.js';
import { readStudy } from '../dist/study/read.js';

/** A step of the study as a model. */
export function readBoard(file, step = 0) {
  if (!existsSync(file)) throw new Error(`${file}: no such study`);
  const reading = readStudy(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(`${file} is refused: ${JSON.stringify(reading.faults[0])}`);
  const assembly = assembleBoard(reading.study.steps[step]);
  if (!assembly.ok) throw new Error(`${file} is refused: ${JSON.stringify(assembly.faults[0])}`);
  return assembly.board;
}

/** Input vectors, one after the other: uncertain numbers from their distributions, the others at their best values. */
export function drawInputs(board, samples, seed) {
  const draws = drawsOf(board, { seed }, samples);
  draws.fill(0);
  const columns = board.inputs.length;
  const rows = new Float64Array(samples * columns);
  for (let s = 0; s < samples; s++) for (let k = 0; k < columns; k++) rows[s * columns + k] = board.inputs[k].value;
  draws.inputs.forEach((input, k) => {
    for (let s = 0; s < samples; s++) rows[s * columns + input] = draws.columns[k][s];
  });
  return rows;
}

/** Evaluates every draw; the outputs at `places` go to `results`, one column an output. Returns how many were not solved. */
export function solveDraws(board, rows, places, results) {
  const columns = board.inputs.length;
  const samples = rows.length / columns;
  const y = new Float64Array(board.outputs.length);
  let unsolved = 0;
  for (let s = 0; s < samples; s++) {
    const { ending } = board.evaluate(rows.subarray(s * columns, (s + 1) * columns), y);
    if (ending !== 'solved') unsolved++;
    for (let k = 0; k < places.length; k++) results[k * samples + s] = y[places[k]];
  }
  return unsolved;
}

/** Ids of the outputs that both sides work out. */
export function comparedOutputs(board) {
  const wanted =
    /^(scale|wall-power|heat\.nodes\..*\.temperature|limiters\.[^.]+\.(real|reads)|parts\.[^.]+\.(voltage|current|loss|phase-current|phase-ripple|inductor-rms|inductor-peak|junction-temperature|effective-resistance))$/;
  return board.outputs
    .map(({ id }) => id)
    .filter((id) => wanted.test(id) && id !== 'heat.nodes.ambient.temperature' && !isTemperatureReading(board, id));
}

/** What a temperature limiter reads is the node's temperature over again. */
function isTemperatureReading(board, id) {
  return id.startsWith('limiters.') && board.outputs[board.indexOfOutput(id)].kind === 'temperature';
}

/** Writes the board with every number replaced by its column, the draws, and where to start. */
export function exportBoard(board, rows, folder) {
  const column = new Map([...board.step.quantities].map(([quantity, id]) => [quantity, board.indexOfInput(id)]));
  const withColumns = (value) => {
    if (column.has(value)) return { slot: column.get(value) };
    if (Array.isArray(value)) return value.map(withColumns);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withColumns(inner)]));
  };
  const y = new Float64Array(board.outputs.length);
  board.evaluate(
    Float64Array.from(board.inputs, ({ value }) => value),
    y,
  );
  const figure = (id) => y[board.indexOfOutput(id)];
  const { parts, heat } = board.step.board;
  const start = {
    temperatures: Object.fromEntries(
      [...Object.keys(heat.nodes), 'ambient'].map((id) => [id, figure(`heat.nodes.${id}.temperature`)]),
    ),
    voltages: Object.fromEntries(Object.keys(parts).map((id) => [id, figure(`parts.${id}.voltage`)])),
    scale: figure('scale'),
    outputs: comparedOutputs(board),
  };
  const files = {
    board: join(folder, 'board.json'),
    rows: join(folder, 'inputs.f64'),
    start: join(folder, 'start.json'),
  };
  writeFileSync(files.board, JSON.stringify(withColumns(board.step.board)));
  writeFileSync(files.rows, new Uint8Array(rows.buffer));
  writeFileSync(files.start, JSON.stringify(start));
  return files;
}
